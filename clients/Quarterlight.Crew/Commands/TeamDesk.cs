using Grpc.Core;
using Quarterlight.Crew.Keeping;
using Quarterlight.Crew.Language;
using Quarterlight.V1;
using TeamSettings = Quarterlight.Crew.Keeping.TeamSettings;

namespace Quarterlight.Crew.Commands;

/// <summary>
/// One team's desk: its conversations, commands, forms and completion. What is asked in one conversation is answered in order; conversations run
/// beside each other. It holds nothing of a conversation but what its store does.
/// </summary>
public sealed class TeamDesk : ICrewDesk
{
    private static readonly TimeSpan SettingsPatience = TimeSpan.FromSeconds(2);

    private readonly PlannerClients planner;
    private readonly CrewDesk desk;
    private readonly IConversationStore store;
    private readonly Keeper keeper;
    private readonly TeamWords words;
    private readonly Completion completion;
    private readonly ConversationOrder order = new();
    private readonly TeamSettingsClient settings;

    /// <summary>A desk that asks the planner behind the invoker.</summary>
    /// <param name="invoker">Where calls go; carries the team's key and name, if any.</param>
    /// <param name="options">Deadline, clock and the planner's address as the crew knows it.</param>
    /// <param name="store">Where conversations are remembered.</param>
    public TeamDesk(CallInvoker invoker, CrewDeskOptions options, IConversationStore store)
    {
        ArgumentNullException.ThrowIfNull(invoker);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(store);
        planner = new PlannerClients(invoker, options);
        desk = new CrewDesk(invoker, options);
        this.store = store;
        keeper = new Keeper(planner);
        settings = new TeamSettingsClient(planner);
        words = new TeamWords(planner);
        completion = new Completion(words);
    }

    /// <summary>Answers a question in plain words. A question that brings a memory of its own goes on from that one, not from what the conversation remembers.</summary>
    /// <inheritdoc/>
    public Task<CrewAnswer> AskAsync(string conversationId, CrewQuestion question, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(question);
        return InOrderAsync(conversationId, question, async ready => new CrewOutput(await desk.AskAsync(ready, cancellation).ConfigureAwait(false), null), Answered, cancellation);
    }

    /// <inheritdoc/>
    public Task<CrewOutput> RunAsync(string conversationId, CrewCommandCall call, CancellationToken cancellation) =>
        RunAsync(conversationId, call, new CrewQuestion { Text = "" }, cancellation);

    /// <summary>Does what a command says, starting from a question without text: its units, scene, memory, picture and progress hold for the command.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public Task<CrewOutput> RunAsync(string conversationId, CrewCommandCall call, CrewQuestion pattern, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(call);
        ArgumentNullException.ThrowIfNull(pattern);
        return InOrderAsync(conversationId, pattern, ready => RunOneAsync(call, ready, cancellation), output => output, cancellation);
    }

    /// <inheritdoc/>
    public Task<CrewAnswer> SubmitAsync(string conversationId, CrewFormEntry entry, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return InOrderAsync(conversationId, new CrewQuestion { Text = "" }, async ready =>
        {
            if (!Keeper.KeepsForm(entry.FormId))
            {
                return new CrewOutput(CommandRefusals.Of(["This form is not known any more: give the command again."], CrewIntent.Unknown, ready.Memory), null);
            }

            CrewAnswer answer = await keeper.SubmitAsync(entry, ready.Memory, ready.UnitsInForce, cancellation).ConfigureAwait(false);
            words.Forget();
            return new CrewOutput(answer, null);
        }, Answered, cancellation);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<CrewChoice>> CompleteAsync(string conversationId, CrewCommandCall call, string option, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversationId);
        ArgumentNullException.ThrowIfNull(call);
        ArgumentNullException.ThrowIfNull(option);
        CrewMemory memory = await store.ReadAsync(conversationId, cancellation).ConfigureAwait(false) ?? CrewMemory.Empty;
        return await completion.OfAsync(call, option, memory, cancellation).ConfigureAwait(false);
    }

    /// <summary>Writes the invented demo data when the team keeps nothing; true when it did.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public Task<bool> LoadDemoIfEmptyAsync(CancellationToken cancellation) => desk.LoadDemoIfEmptyAsync(cancellation);

    private async Task<CrewOutput> RunOneAsync(CrewCommandCall call, CrewQuestion ready, CancellationToken cancellation)
    {
        if (CrewCommands.Find(call.Name) is not { } command)
        {
            return new CrewOutput(CommandRefusals.NoSuchCommand(call.Name, ready.Memory), null);
        }

        bool readHere = !Keeper.Keeps(call.Name) && command != CrewCommands.Ask;
        if (!readHere && CommandReader.WrongNames(command, call) is { Count: > 0 } wrong)
        {
            return new CrewOutput(CommandRefusals.Of(wrong, CrewIntent.Unknown, ready.Memory), null);
        }

        if (Keeper.Keeps(call.Name))
        {
            CrewOutput output = await keeper.RunAsync(call, ready.Memory, ready.UnitsInForce, cancellation).ConfigureAwait(false);
            words.Forget();
            return output;
        }

        if (!readHere)
        {
            CrewQuestion asked = ready with { Text = call.Values["question"], Attachment = call.File };
            return new CrewOutput(await desk.AnswerAsync(asked, (vocabulary, memory, units) => Task.FromResult(ReadAsk(call, asked, vocabulary, memory, units)), cancellation).ConfigureAwait(false), null);
        }

        CrewAnswer answer = await desk.AnswerAsync(ready with { Attachment = call.File }, async (vocabulary, memory, units) =>
            CommandReader.Read(call, vocabulary, memory, units, await SitesAsync(call, vocabulary, memory, cancellation).ConfigureAwait(false)), cancellation).ConfigureAwait(false);
        return new CrewOutput(answer, null);
    }

    // The scene chosen beside the question holds as if the question named it, unless it names another.
    private static CommandReading ReadAsk(CrewCommandCall call, CrewQuestion asked, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units)
    {
        string text = CrewText.Clean(asked.Text);
        if (!call.Values.TryGetValue("scene", out string? chosen))
        {
            return new CommandReading(RequestReader.Read(text, vocabulary, memory, units, asked.Attachment is not null), null);
        }

        CommandReading scene = CommandReader.Read(new CrewCommandCall("scene show", new Dictionary<string, string> { ["scene"] = chosen }), vocabulary, memory, units, []);
        if (scene.Request is not { SceneName: { } name })
        {
            return scene;
        }

        CrewMemory there = memory.SceneName == name ? memory : memory.At(name);
        CrewRequest request = RequestReader.Read(text, vocabulary, there, units, asked.Attachment is not null);
        return new CommandReading(request with { SceneSaid = true }, null);
    }

    private async Task<IReadOnlyList<MountSite>> SitesAsync(CrewCommandCall call, CrewVocabulary vocabulary, CrewMemory memory, CancellationToken cancellation)
    {
        bool wanted = CrewCommands.Find(call.Name)?.Options.Any(o => o.Kind == CrewOptionKind.Site && call.Values.ContainsKey(o.Name)) == true;
        return wanted && Completion.CabinOf(call, vocabulary, memory) is { Length: > 0 } cabin ? await words.SitesAsync(cabin, cancellation).ConfigureAwait(false) : [];
    }

    // Reads what is remembered, does the work, keeps what is to be remembered next.
    private Task<T> InOrderAsync<T>(string conversationId, CrewQuestion question, Func<CrewQuestion, Task<CrewOutput>> work, Func<CrewOutput, T> result, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversationId);
        return order.RunAsync(conversationId, async () =>
        {
            Task<TeamSettings> team = question.Team == TeamSettings.None ? TeamAsync(cancellation) : Task.FromResult(question.Team);
            CrewMemory memory = ReferenceEquals(question.Memory, CrewMemory.Empty) ? await store.ReadAsync(conversationId, cancellation).ConfigureAwait(false) ?? CrewMemory.Empty : question.Memory;
            CrewOutput output = await work(question with { Memory = memory, Team = await team.ConfigureAwait(false) }).ConfigureAwait(false);
            if (output.Answer is { } answer)
            {
                if (answer.Intent == CrewIntent.LoadDemo)
                {
                    words.Forget();
                }

                await store.WriteAsync(conversationId, answer.Memory, cancellation).ConfigureAwait(false);
            }

            return result(output);
        }, cancellation);
    }

    // A planner that takes longer than this for two words is slow in all; the question says so soon enough.
    private async Task<TeamSettings> TeamAsync(CancellationToken cancellation)
    {
        using var late = new CancellationTokenSource(SettingsPatience, planner.Desk.Clock);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(late.Token, cancellation);
        try
        {
            return await settings.TryReadAsync(both.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return TeamSettings.None;
        }
    }

    private static CrewAnswer Answered(CrewOutput output) => output.Answer!;
}
