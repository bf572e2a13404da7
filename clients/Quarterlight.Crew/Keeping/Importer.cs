using Google.Protobuf;
using Grpc.Core;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Writes what the team keeps to files, and takes files in.</summary>
internal sealed class Importer(PlannerClients planner, Shelves shelves)
{
    /// <summary>A thing as a file; a scene with its car and kit unless it is wanted alone.</summary>
    public async Task<CrewAnswer> ExportAsync(string kind, CrewCommandCall call, CrewMemory memory, CancellationToken cancellation)
    {
        string said = call.Values.GetValueOrDefault(kind) ?? "";
        IReadOnlyList<Cabin> cars = await planner.AllCabinsAsync(cancellation).ConfigureAwait(false);
        IReadOnlyList<Kit> kits = await planner.AllKitsAsync(cancellation).ConfigureAwait(false);
        KeptFile? file;
        string problem, name;
        if (kind == "scene")
        {
            Found<Scene> found = ThingFinder.Find(shelves.Scenes, await planner.AllScenesAsync(cancellation).ConfigureAwait(false), said);
            bool alone = string.Equals(call.Values.GetValueOrDefault("alone"), "true", StringComparison.OrdinalIgnoreCase);
            file = found.Thing is { } scene ? new KeptFile(kind, scene, alone ? null : cars.FirstOrDefault(c => c.Name == scene.Cabin), alone ? null : kits.FirstOrDefault(k => k.Name == scene.Kit)) : null;
            (problem, name) = (found.Problem, found.Thing is null ? "" : shelves.Scenes.Shown(found.Thing));
        }
        else if (kind == "car")
        {
            Found<Cabin> found = ThingFinder.Find(shelves.Cars, cars, said);
            file = found.Thing is { } car ? new KeptFile(kind, null, car, null) : null;
            (problem, name) = (found.Problem, found.Thing is null ? "" : shelves.Cars.Shown(found.Thing));
        }
        else
        {
            Found<Kit> found = ThingFinder.Find(shelves.Kits, kits, said);
            file = found.Thing is { } kit ? new KeptFile(kind, null, null, kit) : null;
            (problem, name) = (found.Problem, found.Thing is null ? "" : shelves.Kits.Shown(found.Thing));
        }

        if (file is null)
        {
            return KeptAnswers.Refused($"export a {kind}", Wordings.Capital(problem), memory, $"list {kind}s");
        }

        CrewFile written = file.Write();
        if (written.Bytes.Length > KeptFile.LargestBytes)
        {
            return KeptAnswers.Refused($"export the {kind} {name}", Wordings.Say($"{name} is larger than the {KeptFile.LargestBytes / 1024} KiB that could be taken in again."), memory, $"list {kind}s")
                with
            { Lines = kind == "scene" ? [new(CrewLineKind.Plain, "Export it alone, and its car and kit one by one.")] : [] };
        }

        string with = file is { Kind: "scene", Car: not null, Kit: not null } ? ", with its car and kit" : kind == "scene" ? ", without its car and kit" : "";
        return KeptAnswers.Done($"export the {kind} {name}", $"Here is the {kind} {name} as a file{with}.", [new(CrewLineKind.Plain, $"\"{kind} import\" takes it in, here or in another team.")], memory, $"list {kind}s") with { Files = [written] };
    }

    /// <summary>Takes a file in; keeps all of it or nothing.</summary>
    public async Task<CrewAnswer> ImportAsync(string kind, CrewCommandCall call, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        string understood = $"import a {kind}";
        if (call.File is not { } attachment)
        {
            return KeptAnswers.Refused(understood, $"The file is missing: give the .json that \"{kind} export\" made.", memory, $"list {kind}s");
        }

        string fileName = ClipText.FileName(attachment.FileName);
        if (await FileBytes.ReadAsync(attachment, KeptFile.LargestBytes, cancellation).ConfigureAwait(false) is not { } bytes)
        {
            return KeptAnswers.Refused(understood, $"{Wordings.Capital(fileName)} could not be read: check that it is still there, and send it again.", memory, $"list {kind}s");
        }

        FileRead read = KeptFileReader.Read(bytes, kind);
        if (read.File is not { } file)
        {
            return KeptAnswers.Refused(understood, $"Nothing taken in from {fileName}. {read.Problems[0]}", memory, $"list {kind}s") with { Lines = [.. read.Problems.Skip(1).Select(p => new CrewLine(CrewLineKind.Refused, p))] };
        }

        var undo = new List<Func<Task>>();
        try
        {
            return await KeepAllAsync(file, fileName, memory, undo, cancellation).ConfigureAwait(false);
        }
        catch (RpcException e)
        {
            bool clean = true;
            foreach (Func<Task> back in Enumerable.Reverse(undo))
            {
                clean &= await Undo.TryAsync(back).ConfigureAwait(false);
            }

            cancellation.ThrowIfCancellationRequested();
            CrewAnswer problem = ErrorText.Of(e, new CrewRequest { Intent = CrewIntent.Keep }, memory, units, planner.Desk.PlannerAddress);
            string nothing = clean ? $"Nothing taken in from {fileName}." : $"The {kind} in {fileName} was not taken in; what came with it may be kept.";
            return problem with { Understood = understood, Headline = $"{nothing} {problem.Headline}", FollowUps = [$"list {kind}s"] };
        }
    }

    private async Task<CrewAnswer> KeepAllAsync(KeptFile file, string fileName, CrewMemory memory, List<Func<Task>> undo, CancellationToken cancellation)
    {
        var lines = new List<CrewLine>();
        string? headline = null;
        IMessage? last = null;
        string carName = "", kitName = "";
        if (file.Car is { } car)
        {
            (Cabin now, string said) = await KeepAsync(shelves.Cars, car, undo, cancellation).ConfigureAwait(false);
            (carName, last, headline) = (now.Name, now, said);
            lines.Add(new(CrewLineKind.Plain, said));
        }

        if (file.Kit is { } kit)
        {
            (Kit now, string said) = await KeepAsync(shelves.Kits, kit, undo, cancellation).ConfigureAwait(false);
            (kitName, last, headline) = (now.Name, now, said);
            lines.Add(new(CrewLineKind.Plain, said));
        }

        if (file.Scene is { } scene)
        {
            Scene pointed = scene.Clone();
            pointed.Cabin = carName.Length > 0 ? carName : pointed.Cabin;
            pointed.Kit = kitName.Length > 0 ? kitName : pointed.Kit;
            (Scene now, string said) = await KeepAsync(shelves.Scenes, pointed, undo, cancellation).ConfigureAwait(false);
            (last, headline) = (now, said);
            memory = memory.At(now.Name);
        }
        else
        {
            lines.Clear();
        }

        return KeptAnswers.Done($"import a {file.Kind} from {fileName}", headline!, lines, memory, file.Scene is null ? [$"list {file.Kind}s"] : ["where do the mics go?", "show the scene"]) with
        {
            Data = new Dictionary<string, IMessage> { [file.Kind] = last! },
        };
    }

    // Kept under its own id; one that is there just so is used as it is; another of that id stays, and the new one gets an id of its own.
    private static async Task<(T Now, string Said)> KeepAsync<T>(Shelf<T> shelf, T thing, List<Func<Task>> undo, CancellationToken cancellation)
        where T : class, IMessage<T>, IDeepCloneable<T>
    {
        IReadOnlyList<T> kept = await shelf.ListAsync(cancellation).ConfigureAwait(false);
        string name = shelf.Shown(thing), written = shelf.Label(thing).Name;
        string id = written.StartsWith(shelf.Prefix, StringComparison.Ordinal) && NewIds.From(written[shelf.Prefix.Length..], "", 63) is var plain && plain == written[shelf.Prefix.Length..] && plain.Length > 0
            ? plain : NewIds.From(shelf.Label(thing).DisplayName, shelf.Word);
        T bare = shelf.Bared(thing);
        if (kept.FirstOrDefault(t => shelf.IdOf(t) == id) is { } there && shelf.Bared(there).Equals(bare))
        {
            return (there, $"The {shelf.Word} {name} is kept already just so; it was left as it is.");
        }

        T now = await NewIds.CreateAsync(shelf, id, bare, kept, cancellation).ConfigureAwait(false);
        string nowName = shelf.Label(now).Name;
        undo.Add(() => shelf.DeleteAsync(nowName, CancellationToken.None));
        string newId = shelf.IdOf(now);
        return (now, newId == id ? $"Taken in: the {shelf.Word} {name}, id {newId}." : $"Taken in: the {shelf.Word} {name}, as id {newId}, because {id} is taken by another {shelf.Word}.");
    }
}
