using Grpc.Core;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Does what the commands of <see cref="KeepingCommands"/> and their forms say. Bad entries and a planner that refuses or is away come back as answers.</summary>
internal sealed class Keeper
{
    /// <summary>What the id of every form here starts with.</summary>
    public const string FormStart = "keep:";

    private readonly PlannerClients planner;
    private readonly ThingKeeper<Scene> scenes;
    private readonly ThingKeeper<Cabin> cars;
    private readonly ThingKeeper<Kit> kits;
    private readonly Importer importer;
    private readonly SettingsKeeper settings;

    /// <summary>A keeper for the team behind these clients.</summary>
    public Keeper(PlannerClients planner)
    {
        var shelves = new Shelves(planner);
        this.planner = planner;
        scenes = new(shelves.Scenes, new SceneForm(planner, shelves), planner);
        cars = new(shelves.Cars, new CarForm(planner), planner);
        kits = new(shelves.Kits, new KitForm(), planner);
        importer = new(planner, shelves);
        settings = new(planner);
    }

    /// <summary>True for a command of <see cref="KeepingCommands"/>.</summary>
    public static bool Keeps(string commandName) => KeepingCommands.All.Any(c => c.Name == commandName);

    /// <summary>True for a form that a command of <see cref="KeepingCommands"/> opened.</summary>
    public static bool KeepsForm(string formId) => formId.StartsWith(FormStart, StringComparison.Ordinal);

    /// <summary>Does what a command says.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<CrewOutput> RunAsync(CrewCommandCall call, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(call);
        ArgumentNullException.ThrowIfNull(memory);
        try
        {
            return call.Name switch
            {
                "scene new" => await scenes.NewAsync(call, units, cancellation).ConfigureAwait(false),
                "car new" => await cars.NewAsync(call, units, cancellation).ConfigureAwait(false),
                "kit new" => await kits.NewAsync(call, units, cancellation).ConfigureAwait(false),
                "scene edit" => await scenes.EditAsync(call, memory, units, cancellation).ConfigureAwait(false),
                "car edit" => await cars.EditAsync(call, memory, units, cancellation).ConfigureAwait(false),
                "kit edit" => await kits.EditAsync(call, memory, units, cancellation).ConfigureAwait(false),
                _ => new(await AnswerAsync(call, memory, units, cancellation).ConfigureAwait(false), null),
            };
        }
        catch (RpcException) when (cancellation.IsCancellationRequested)
        {
            throw new OperationCanceledException(cancellation);
        }
        catch (RpcException problem)
        {
            return new(Problem(problem, memory, units), null);
        }
    }

    /// <summary>Does what a filled-in form says.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<CrewAnswer> SubmitAsync(CrewFormEntry entry, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(memory);
        try
        {
            return entry.FormId.Split(':') switch
            {
                ["keep", "car", ..] => await cars.SubmitAsync(entry, memory, units, cancellation).ConfigureAwait(false),
                ["keep", "kit", ..] => await kits.SubmitAsync(entry, memory, units, cancellation).ConfigureAwait(false),
                _ => await scenes.SubmitAsync(entry, memory, units, cancellation).ConfigureAwait(false),
            };
        }
        catch (RpcException) when (cancellation.IsCancellationRequested)
        {
            throw new OperationCanceledException(cancellation);
        }
        catch (RpcException problem)
        {
            return KeptEntry.WithWritten(Problem(problem, memory, units), entry);
        }
    }

    private async Task<CrewAnswer> AnswerAsync(CrewCommandCall call, CrewMemory memory, UnitPreference units, CancellationToken cancellation) => call.Name switch
    {
        "scene remove" => await scenes.RemoveAsync(call, memory, cancellation).ConfigureAwait(false),
        "car remove" => await cars.RemoveAsync(call, memory, cancellation).ConfigureAwait(false),
        "kit remove" => await kits.RemoveAsync(call, memory, cancellation).ConfigureAwait(false),
        "scene export" or "car export" or "kit export" => await importer.ExportAsync(call.Name[..call.Name.IndexOf(' ', StringComparison.Ordinal)], call, memory, cancellation).ConfigureAwait(false),
        "scene import" or "car import" or "kit import" => await importer.ImportAsync(call.Name[..call.Name.IndexOf(' ', StringComparison.Ordinal)], call, memory, units, cancellation).ConfigureAwait(false),
        "settings show" => await settings.ShowAsync(memory, units, cancellation).ConfigureAwait(false),
        "settings units" => await settings.UnitsAsync(call, memory, cancellation).ConfigureAwait(false),
        "settings country" => await settings.CountryAsync(call, memory, cancellation).ConfigureAwait(false),
        "settings clip-limits" => await settings.ClipLimitsAsync(call, memory, units, cancellation).ConfigureAwait(false),
        _ => KeptAnswers.Refused("a command", "This command is not known here.", memory, "help"),
    };

    private CrewAnswer Problem(RpcException problem, CrewMemory memory, UnitPreference units) => ErrorText.Of(problem, new CrewRequest { Intent = CrewIntent.Keep }, memory, units, planner.Desk.PlannerAddress);
}

/// <summary>Entries that could not even be read, because the planner was away.</summary>
internal static class KeptEntry
{
    /// <summary>The answer with everything that was written, so that it can be copied.</summary>
    public static CrewAnswer WithWritten(CrewAnswer answer, CrewFormEntry entry) => answer with
    {
        Headline = $"Nothing kept. {answer.Headline}",
        Lines = [.. answer.Lines, new(CrewLineKind.Plain, "What you wrote, to copy:"), .. entry.Values.Values.Take(5).SelectMany(FormText.Lines).Select(l => new CrewLine(CrewLineKind.Plain, l))],
    };
}
