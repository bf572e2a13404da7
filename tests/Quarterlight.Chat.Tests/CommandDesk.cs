using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Keeping;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>A team's desk before a planner that answers at once with canned reports and keeps the demo data.</summary>
internal sealed class CommandDesk : IAsyncDisposable
{
    private readonly FakePlanner fake;
    private int conversations;

    private CommandDesk(FakePlanner fake)
    {
        this.fake = fake;
        Desk = new TeamDesk(fake.Invoker, new CrewDeskOptions(), new RecentConversations());
    }

    public TeamDesk Desk { get; }

    public CannedRadio Radio { get; private init; } = new();

    public CannedForecasts Forecasts { get; private init; } = new();

    public static async Task<CommandDesk> StartAsync(Func<PlanPlacementRequest, PlanPlacementResponse>? plan = null)
    {
        var (radio, forecasts) = (new CannedRadio(), new CannedForecasts());
        FakePlanner fake = await FakePlanner.StartAsync(plan ?? (_ => new PlanPlacementResponse { Plan = new Plan { Scene = DemoData.Scenes[^1].Clone(), Best = new PlanOption() } }), radio: radio, forecasts: forecasts);
        return new CommandDesk(fake) { Radio = radio, Forecasts = forecasts };
    }

    /// <summary>Does a command typed on one line, in a conversation of its own.</summary>
    public async Task<CrewAnswer> RunAsync(string line, CrewQuestion? pattern = null)
    {
        TypedCommand typed = CommandLine.Read(line);
        Assert.Null(typed.Wrong);
        return await RunAsync(typed.Call!, pattern);
    }

    /// <summary>Does a command in a conversation of its own.</summary>
    public async Task<CrewAnswer> RunAsync(CrewCommandCall call, CrewQuestion? pattern = null)
    {
        CrewOutput output = await Desk.RunAsync($"conversation-{Interlocked.Increment(ref conversations)}", call, pattern ?? new CrewQuestion { Text = "" }, TestContext.Current.CancellationToken);
        return Assert.IsType<CrewAnswer>(output.Answer);
    }

    public Task<IReadOnlyList<CrewChoice>> CompleteAsync(string command, string option, string typed, params (string Name, string Value)[] others) => Desk.CompleteAsync(
        "completion", new CrewCommandCall(command, others.Append((Name: option, Value: typed)).ToDictionary(o => o.Name, o => o.Value)), option, TestContext.Current.CancellationToken);

    public ValueTask DisposeAsync() => fake.DisposeAsync();
}
