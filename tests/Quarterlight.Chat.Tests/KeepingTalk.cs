using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Keeping;
using Quarterlight.CrewBot;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>A real planner with a store of its own, for tests that change what a team keeps.</summary>
public sealed class KeepingPlanner : IAsyncLifetime
{
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-keeping-").FullName;
    private IPlanner? planner;

    /// <summary>The planner with the demo data.</summary>
    internal KeepingTalk Talk => new(planner!);

    public async ValueTask InitializeAsync()
    {
        planner = await EmbeddedPlanner.StartAsync(Path.Combine(folder, "data"), CancellationToken.None);
        await new CrewDesk(planner.Invoker, new CrewDeskOptions()).LoadDemoIfEmptyAsync(CancellationToken.None);
    }

    /// <summary>Another team that keeps nothing yet.</summary>
    internal async Task<KeepingTalk> StrangersAsync() => new(await EmbeddedPlanner.StartAsync(Path.Combine(folder, Guid.NewGuid().ToString("n")), CancellationToken.None));

    public async ValueTask DisposeAsync()
    {
        await planner!.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }
}

/// <summary>Gives commands to a keeper and fills in its forms.</summary>
internal sealed class KeepingTalk(IPlanner planner) : IAsyncDisposable
{
    public PlannerClients Planner { get; } = new(planner.Invoker, new CrewDeskOptions());

    /// <summary>The planner itself, for another talk with it.</summary>
    public IPlanner Borrowed => planner;

    public CrewMemory Memory { get; set; } = CrewMemory.Empty;

    public UnitPreference Units { get; init; } = UnitPreference.Metric;

    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => planner.DisposeAsync();

    public async Task<CrewOutput> RunAsync(string command, CrewAttachment? file = null, params (string Option, string Value)[] options)
    {
        CrewOutput output = await new Keeper(Planner).RunAsync(new CrewCommandCall(command, options.ToDictionary(o => o.Option, o => o.Value)) { File = file }, Memory, Units, Cancellation);
        Assert.True((output.Answer is null) != (output.Form is null));
        Memory = output.Answer?.Memory ?? Memory;
        return output;
    }

    public async Task<CrewAnswer> AnswerAsync(string command, params (string Option, string Value)[] options) => (await RunAsync(command, null, options)).Answer!;

    public async Task<CrewForm> FormAsync(string command, params (string Option, string Value)[] options)
    {
        CrewForm form = (await RunAsync(command, null, options)).Form!;
        Assert.NotNull(form);
        Assert.InRange(form.Fields.Count, 1, 5);
        Assert.InRange(form.Id.Length, 1, 100);
        Assert.InRange(form.Title.Length, 1, 45);
        Assert.All(form.Fields, f =>
        {
            Assert.InRange(f.Label.Length, 1, 45);
            Assert.InRange(f.Hint.Length, 0, 100);
            Assert.InRange(f.MostCharacters, 1, 4000);
            Assert.InRange(f.Value.Length, 0, f.MostCharacters);
        });
        return form;
    }

    public async Task<CrewAnswer> SubmitAsync(CrewForm form, params (string Field, string Value)[] changes)
    {
        var values = form.Fields.ToDictionary(f => f.Id, f => f.Value);
        foreach ((string field, string value) in changes)
        {
            Assert.True(values.ContainsKey(field), field);
            values[field] = value;
        }

        CrewAnswer answer = await new Keeper(Planner).SubmitAsync(new CrewFormEntry(form.Id, values), Memory, Units, Cancellation);
        Memory = answer.Memory;
        return answer;
    }

    public async Task<CrewAnswer> ImportAsync(string kind, byte[] bytes) =>
        (await RunAsync(kind + " import", new CrewAttachment($"some {kind}.json", bytes.Length, _ => Task.FromResult<Stream>(new MemoryStream(bytes))))).Answer!;

    public async Task<Scene> SceneAsync(string id) => (await Planner.Scenes.GetSceneAsync(new() { Name = "scenes/" + id }, cancellationToken: Cancellation)).Scene;

    public async Task<V1.Cabin> CarAsync(string id) => (await Planner.Cabins.GetCabinAsync(new() { Name = "cabins/" + id }, cancellationToken: Cancellation)).Cabin;

    public async Task<Kit> KitAsync(string id) => (await Planner.Kits.GetKitAsync(new() { Name = "kits/" + id }, cancellationToken: Cancellation)).Kit;

    public async Task<(int Scenes, int Cars, int Kits)> CountAsync() =>
        ((await Planner.AllScenesAsync(Cancellation)).Count, (await Planner.AllCabinsAsync(Cancellation)).Count, (await Planner.AllKitsAsync(Cancellation)).Count);

    public static string All(CrewAnswer answer) => string.Join('\n', [answer.Headline, .. answer.Lines.Select(l => l.Text)]);
}
