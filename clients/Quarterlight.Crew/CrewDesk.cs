using Grpc.Core;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Topics;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew;

/// <summary>
/// Answers what the crew asks. Knows no transport and no planner but the gRPC contract; remembers nothing itself, so that
/// one desk serves every conversation at once.
/// </summary>
public sealed class CrewDesk
{
    private readonly PlannerClients planner;
    private readonly CrewDeskOptions options;

    /// <summary>A desk that asks the planner behind the invoker.</summary>
    /// <param name="invoker">Where calls go; carries the team's key, if any.</param>
    /// <param name="options">Deadline, clock and the planner's address as the crew knows it.</param>
    public CrewDesk(CallInvoker invoker, CrewDeskOptions options)
    {
        ArgumentNullException.ThrowIfNull(invoker);
        ArgumentNullException.ThrowIfNull(options);
        (planner, this.options) = (new PlannerClients(invoker, options), options);
    }

    /// <summary>Answers one question. Bad questions and a planner that refuses or is away come back as answers, never as exceptions.</summary>
    /// <exception cref="OperationCanceledException">The cancellation was asked for.</exception>
    public Task<CrewAnswer> AskAsync(CrewQuestion question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        string text = CrewText.Clean(question.Text);
        return AnswerAsync(question, (vocabulary, memory, units) => Task.FromResult(new CommandReading(RequestReader.Read(text, vocabulary, memory, units, question.Attachment is not null), null)), cancellation);
    }

    /// <summary>Answers what a reader makes of the team's vocabulary, what is remembered and the units a bare number is in: from words or from a command.</summary>
    /// <exception cref="OperationCanceledException">The cancellation was asked for.</exception>
    internal async Task<CrewAnswer> AnswerAsync(CrewQuestion question, Func<CrewVocabulary, CrewMemory, UnitPreference, Task<CommandReading>> read, CancellationToken cancellation)
    {
        CrewMemory memory = question.Memory;
        UnitPreference units = question.UnitsInForce;
        var request = new CrewRequest();
        try
        {
            CrewVocabulary vocabulary = await planner.VocabularyAsync(cancellation).ConfigureAwait(false);
            if (question.Scene is { } wanted && memory.SceneName is null)
            {
                if (Find(wanted, vocabulary) is not { } scene)
                {
                    return SceneTopic.NoSuch(wanted, vocabulary, memory);
                }

                memory = memory with { SceneName = scene.Name };
            }

            CommandReading reading = await read(vocabulary, memory, units).ConfigureAwait(false);
            if (reading.Refusal is { } refusal)
            {
                return refusal;
            }

            request = reading.Request!;

            memory = request.SceneName == memory.SceneName ? memory : memory.At(memory.SceneName);
            memory = TurnsFromRadio(request.Intent) || IsForecast(request.Intent) ? memory with { LastRadio = null } : memory;
            memory = TurnsFromRadio(request.Intent) || IsRadio(request.Intent) ? memory with { LastForecast = null } : memory;
            memory = TurnsFromClip(request.Intent) && memory.LastClip is { Current: true } clip ? memory with { LastClip = clip with { Current = false } } : memory;
            var asked = new Asked(planner, request, vocabulary, memory, request.Units ?? units, question.IncludePicture, cancellation) { Attachment = question.Attachment, Progress = question.Progress, TeamCountry = question.Team.CountryCode ?? "" };
            return await AnswerAsync(asked, CrewText.Clean(question.Text)).ConfigureAwait(false);
        }
        catch (RpcException) when (cancellation.IsCancellationRequested)
        {
            throw new OperationCanceledException(cancellation);
        }
        catch (RpcException problem)
        {
            return ErrorText.Of(problem, request, memory, units, options.PlannerAddress);
        }
    }

    /// <summary>Writes the invented demo data, what is there already aside; true when the team kept nothing before.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public async Task<bool> LoadDemoIfEmptyAsync(CancellationToken cancellation)
    {
        if ((await planner.AllScenesAsync(cancellation).ConfigureAwait(false)).Count > 0)
        {
            return false;
        }

        await DemoData.LoadAsync(planner, cancellation).ConfigureAwait(false);
        return true;
    }

    // What is about the microphones ends the talk about the radio; help, units and the like do not.
    private static bool TurnsFromRadio(CrewIntent intent) => intent is CrewIntent.Plan or CrewIntent.WhySite or CrewIntent.WhatIf or CrewIntent.Details or CrewIntent.RunnerUp
        or CrewIntent.ListSites or CrewIntent.Show or CrewIntent.UseScene or CrewIntent.LoadDemo;

    // What is about anything that is planned ends the talk about a clip, which stays remembered.
    private static bool TurnsFromClip(CrewIntent intent) => TurnsFromRadio(intent) || IsRadio(intent) || IsForecast(intent);

    private static bool IsRadio(CrewIntent intent) => intent is CrewIntent.LinkCheck or CrewIntent.LinkLaw or CrewIntent.QuietChannel or CrewIntent.Channels or CrewIntent.CheckChannels;

    private static bool IsForecast(CrewIntent intent) => intent is CrewIntent.HeatForecast or CrewIntent.RunTime or CrewIntent.Levels or CrewIntent.NoiseForecast or CrewIntent.QuietStretches;

    private static Scene? Find(string wanted, CrewVocabulary vocabulary) =>
        vocabulary.Scenes.FirstOrDefault(s => s.Name == wanted || s.Name == $"scenes/{wanted}" || string.Equals(s.DisplayName, wanted, StringComparison.OrdinalIgnoreCase))
        ?? vocabulary.Scenes.FirstOrDefault(s => s.Name == vocabulary.SceneNames.FindOne(vocabulary.Read(CrewText.Clean(wanted)))?.Id);

    private static async Task<CrewAnswer> AnswerAsync(Asked asked, string text) => asked.Request.Intent switch
    {
        _ when asked.Request.UnknownScene is { } unknown => SceneTopic.NoSuch(unknown, asked.Vocabulary, asked.Memory),
        CrewIntent.Plan => await PlanTopic.PlanAsync(asked).ConfigureAwait(false),
        CrewIntent.Details => await PlanTopic.DetailsAsync(asked).ConfigureAwait(false),
        CrewIntent.RunnerUp => await PlanTopic.RunnerUpAsync(asked).ConfigureAwait(false),
        CrewIntent.WhySite => await WhySiteTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.WhatIf => await WhatIfTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.ListSites => await ListTopic.SitesAsync(asked).ConfigureAwait(false),
        CrewIntent.ListScenes => ListTopic.Scenes(asked),
        CrewIntent.ListCabins => ListTopic.Cabins(asked),
        CrewIntent.ListKits => ListTopic.Kits(asked),
        CrewIntent.Show => ListTopic.Show(asked),
        CrewIntent.UseScene => ListTopic.Use(asked),
        CrewIntent.SetUnits => Units(asked),
        CrewIntent.LoadDemo => await DemoAsync(asked).ConfigureAwait(false),
        CrewIntent.LinkCheck => await LinkTopic.CheckAsync(asked).ConfigureAwait(false),
        CrewIntent.QuietChannel => await LinkTopic.QuietAsync(asked).ConfigureAwait(false),
        CrewIntent.LinkLaw => await LawTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.Channels => await ChannelTopic.FindAsync(asked).ConfigureAwait(false),
        CrewIntent.CheckChannels => await ChannelTopic.CheckAsync(asked).ConfigureAwait(false),
        CrewIntent.JudgeClip => await ClipTopic.JudgeAsync(asked).ConfigureAwait(false),
        CrewIntent.ClipQuestion => ClipQuestionTopic.Answer(asked),
        CrewIntent.ClipPicture => await ClipTopic.PictureAsync(asked).ConfigureAwait(false),
        CrewIntent.ClipReplan => await ClipReplanTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.ClipLimits => await ClipLimitTopic.ShowAsync(asked).ConfigureAwait(false),
        CrewIntent.SetClipLimits => await ClipLimitTopic.SetAsync(asked).ConfigureAwait(false),
        CrewIntent.HeatForecast => await HeatTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.RunTime => await RunTimeTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.Levels => await LevelTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.NoiseForecast => await NoiseTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.QuietStretches => await RouteTopic.AnswerAsync(asked).ConfigureAwait(false),
        CrewIntent.Help => HelpTopic.Help(asked),
        _ => HelpTopic.NotUnderstood(asked, text),
    };

    private static CrewAnswer Units(Asked asked) => asked.Answer(asked.Units == UnitPreference.Imperial ? "Inches, feet and mph from now on." : "Centimetres, metres and km/h from now on.", []) with
    {
        Understood = "units",
        Private = true,
        FollowUps = ["where do the mics go?"],
        Memory = asked.Memory with { Units = asked.Units },
    };

    private static async Task<CrewAnswer> DemoAsync(Asked asked)
    {
        int written = await DemoData.LoadAsync(asked.Planner, asked.Cancellation).ConfigureAwait(false);
        return asked.Answer(
            written == 0 ? "The demo data is there already; nothing was changed." : Wordings.Say($"Demo data loaded: {DemoData.Scenes.Count} scenes, {DemoData.Cabins.Count} cars, {DemoData.Kits.Count} kits, all invented."),
            [.. DemoData.Scenes.Reverse().Select(s => new CrewLine(CrewLineKind.Plain, Wordings.Say($"{s.DisplayName}: {s.Talkers.Count} talkers, {DriveText.Whole(s.DriveConditions, asked.Units)}")))]) with
        {
            Understood = "load the invented demo data",
            FollowUps = ["where do the mics go?", "list scenes"],
            Memory = asked.Memory with { SceneName = DemoData.MainScene, Plan = null, LastChanges = null },
        };
    }
}
