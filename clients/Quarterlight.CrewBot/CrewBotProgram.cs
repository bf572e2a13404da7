using System.CommandLine;
using Grpc.Core;
using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Keeping;
using Quarterlight.CrewBot.Discord;

namespace Quarterlight.CrewBot;

/// <summary>The command line: <c>crewbot</c>, <c>crewbot ask</c>, <c>crewbot run</c>, <c>crewbot demo</c>, <c>crewbot serve</c>.</summary>
public static class CrewBotProgram
{
    /// <summary>Exit code: answered.</summary>
    public const int Answered = 0;

    /// <summary>Exit code: not understood, or understood and refused.</summary>
    public const int NotAnswered = 1;

    /// <summary>Exit code: the command line is wrong.</summary>
    public const int WrongUsage = 2;

    /// <summary>Exit code: the planner cannot be reached or started.</summary>
    public const int PlannerUnreachable = 3;

    /// <summary>Exit code: the chat platform refuses this bot, so that starting it again would not help.</summary>
    public const int PlatformRefused = 4;

    /// <summary>Environment variable that holds the team's key when <c>--key</c> does not.</summary>
    public const string KeyVariable = "QUARTERLIGHT_KEY";

    // Finishing what is under way, telling the rest, and closing.
    private static readonly TimeSpan LongestStop = TimeSpan.FromSeconds(25);

    private const string MainQuestion = "where do the mics go?";

    /// <summary>Runs the program.</summary>
    /// <param name="args">Command line.</param>
    /// <param name="surroundings">Console, environment and folders.</param>
    /// <param name="cancellation">Ends the program.</param>
    /// <returns>Exit code.</returns>
    public static async Task<int> RunAsync(string[] args, CrewBotSurroundings surroundings, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(surroundings);
        var options = new CrewBotOptions();
        var root = new RootCommand("Plans microphone placement in cars. Without a command, questions are asked one line at a time.");
        options.AddTo(root);
        root.SetAction((parsed, c) => WithDeskAsync(options.Read(parsed, surroundings), surroundings, (desk, settings) => TalkAsync(desk, settings, surroundings, c), c));

        var text = new Argument<string>("question") { Description = "The question, in plain words." };
        var ask = new Command("ask", "Answers one question and ends.") { text };
        options.AddTo(ask);
        options.AddClipTo(ask);
        ask.SetAction((parsed, c) => WithDeskAsync(options.Read(parsed, surroundings), surroundings, (desk, settings) => AskAsync(desk, parsed.GetValue(text) ?? "", settings, surroundings, c), c));
        root.Add(ask);

        var line = new Argument<string>("command") { Description = "The command, such as \"link distance: 300 m\"; \"help\" lists them." };
        var fields = new Option<string[]>("--field") { Description = "Fills in one field of the form a command opens, as name=value; the others keep what is shown.", AllowMultipleArgumentsPerToken = false };
        var run = new Command("run", "Does one command and ends.") { line, fields };
        options.AddTo(run);
        options.AddClipTo(run);
        run.SetAction((parsed, c) => WithDeskAsync(options.Read(parsed, surroundings), surroundings, (desk, settings) => RunOneAsync(desk, parsed.GetValue(line) ?? "", parsed.GetValue(fields) ?? [], settings, surroundings, c), c));
        root.Add(run);

        var demo = new Command("demo", "Answers \"where do the mics go?\" for an invented scene with three talkers in a moving car.");
        options.AddTo(demo);
        demo.SetAction((parsed, c) => WithDeskAsync(options.Read(parsed, surroundings), surroundings, (desk, settings) => AskAsync(desk, MainQuestion, settings with { Scene = settings.Scene ?? DemoData.MainScene }, surroundings, c), c));
        root.Add(demo);

        root.Add(ServeCommand.Make(surroundings));

        // A question may start with @, which must not open a file of that name.
        ParseResult result = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (result.Errors.Count > 0)
        {
            foreach (System.CommandLine.Parsing.ParseError error in result.Errors)
            {
                await surroundings.Error.WriteLineAsync(error.Message).ConfigureAwait(false);
            }

            await surroundings.Error.WriteLineAsync("Try: crewbot ask \"where do the mics go?\"  or  crewbot --help").ConfigureAwait(false);
            return WrongUsage;
        }

        return await result.InvokeAsync(new InvocationConfiguration { Output = surroundings.Output, Error = surroundings.Error, ProcessTerminationTimeout = LongestStop }, cancellation).ConfigureAwait(false);
    }

    private static async Task<int> WithDeskAsync(CrewBotSettings settings, CrewBotSurroundings surroundings, Func<TeamDesk, CrewBotSettings, Task<int>> use, CancellationToken cancellation)
    {
        IPlanner planner;
        try
        {
            planner = settings.Server is { } server ? new RemotePlanner(server, settings.Key) : await surroundings.StartEmbedded(settings.DataFolder, cancellation).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            await surroundings.Error.WriteLineAsync($"The planner could not be started with its data in {settings.DataFolder}. Check that the folder can be written and that no other planner uses it.").ConfigureAwait(false);
            return PlannerUnreachable;
        }

        await using (planner.ConfigureAwait(false))
        {
            var desk = new TeamDesk(planner.Invoker, new CrewDeskOptions { PlannerAddress = planner.Address }, new RecentConversations(1));
            if (settings.Server is null)
            {
                try
                {
                    await desk.LoadDemoIfEmptyAsync(cancellation).ConfigureAwait(false);
                }
                catch (RpcException)
                {
                    await surroundings.Error.WriteLineAsync("The demo data could not be written; the store may be damaged. Name another folder with --data.").ConfigureAwait(false);
                    return PlannerUnreachable;
                }
            }

            return await use(desk, settings).ConfigureAwait(false);
        }
    }

    private static async Task<int> TalkAsync(TeamDesk desk, CrewBotSettings settings, CrewBotSurroundings surroundings, CancellationToken cancellation)
    {
        var terminal = new TerminalTransport(surroundings, new PictureFolder(settings.PictureFolder), settings.Question(""));
        await terminal.RunAsync(desk, cancellation).ConfigureAwait(false);
        return Answered;
    }

    private static async Task<int> AskAsync(TeamDesk desk, string text, CrewBotSettings settings, CrewBotSurroundings surroundings, CancellationToken cancellation)
    {
        CrewAnswer answer = await new TerminalDesk(desk, surroundings).AskAsync(settings.Question(""), text, settings.Clip, cancellation).ConfigureAwait(false);
        return await GiveAsync(answer, settings, surroundings, cancellation).ConfigureAwait(false);
    }

    private static async Task<int> RunOneAsync(TeamDesk desk, string line, string[] fields, CrewBotSettings settings, CrewBotSurroundings surroundings, CancellationToken cancellation)
    {
        var terminal = new TerminalDesk(desk, surroundings);
        CrewOutput output = await terminal.RunAsync(settings.Question(""), line, settings.Clip, cancellation).ConfigureAwait(false);
        if (output.Form is not { } form)
        {
            return await GiveAsync(output.Answer!, settings, surroundings, cancellation).ConfigureAwait(false);
        }

        if (fields.FirstOrDefault(f => form.Fields.All(k => !f.StartsWith(k.Id + "=", StringComparison.Ordinal))) is not null)
        {
            await surroundings.Error.WriteLineAsync($"--field takes name=value; the form has {string.Join(", ", form.Fields.Select(f => f.Id))}.").ConfigureAwait(false);
            return WrongUsage;
        }

        if (fields.Length == 0 && settings.Json)
        {
            await surroundings.Output.WriteLineAsync(CrewAnswerJson.Write(form)).ConfigureAwait(false);
            return Answered;
        }

        CrewFormEntry? entry = fields.Length > 0 ? Filled(form, fields) : await FormFiller.FillAsync(form, surroundings.Input, surroundings.Output, cancellation).ConfigureAwait(false);
        if (entry is null)
        {
            await surroundings.Output.WriteLineAsync("Left as it was.").ConfigureAwait(false);
            return NotAnswered;
        }

        return await GiveAsync(await terminal.SubmitAsync(entry, cancellation).ConfigureAwait(false), settings, surroundings, cancellation).ConfigureAwait(false);
    }

    private static CrewFormEntry Filled(CrewForm form, string[] fields) => new(form.Id,
        form.Fields.ToDictionary(f => f.Id, f => fields.LastOrDefault(w => w.StartsWith(f.Id + "=", StringComparison.Ordinal)) is { } written ? written[(f.Id.Length + 1)..] : f.Value));

    private static async Task<int> GiveAsync(CrewAnswer answer, CrewBotSettings settings, CrewBotSurroundings surroundings, CancellationToken cancellation)
    {
        var folder = new PictureFolder(settings.PictureFolder);
        IReadOnlyList<string?> pictures = await folder.WriteAsync(answer, cancellation).ConfigureAwait(false), files = await folder.WriteFilesAsync(answer, cancellation).ConfigureAwait(false);
        if (settings.Json)
        {
            await surroundings.Output.WriteLineAsync(CrewAnswerJson.Write(answer, pictures, files)).ConfigureAwait(false);
        }
        else
        {
            AnswerPrinter.Print(answer, pictures, files, surroundings.Output);
        }

        return answer.Outcome switch
        {
            CrewOutcome.Answered => Answered,
            CrewOutcome.PlannerUnreachable => PlannerUnreachable,
            _ => NotAnswered,
        };
    }
}
