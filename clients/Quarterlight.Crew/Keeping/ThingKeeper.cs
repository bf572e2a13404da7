using System.Globalization;
using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Keeping;

/// <summary>Makes, changes and removes one kind of thing by its form.</summary>
internal sealed class ThingKeeper<T>(Shelf<T> shelf, IThingForm<T> form, PlannerClients planner)
    where T : class, IMessage<T>, IDeepCloneable<T>
{
    // The planner's reason for refusing to remove what a scene uses: docs/errors.md.
    private const string InUse = "IN_USE";
    private const int MostUsers = 5;

    private string FormStart => $"{Keeper.FormStart}{shelf.Word}:";

    /// <summary>The empty form.</summary>
    public async Task<CrewOutput> NewAsync(CrewCommandCall call, UnitPreference units, CancellationToken cancellation) =>
        new(null, await form.ShowAsync($"{FormStart}new", null, call, units, cancellation).ConfigureAwait(false));

    /// <summary>The form filled with what is kept.</summary>
    public async Task<CrewOutput> EditAsync(CrewCommandCall call, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        Found<T> found = await FindAsync(call, cancellation).ConfigureAwait(false);
        if (found.Thing is not { } kept)
        {
            return new(KeptAnswers.Refused($"change a {shelf.Word}", Wordings.Capital(found.Problem), memory, $"list {shelf.Word}s"), null);
        }

        string id = string.Create(CultureInfo.InvariantCulture, $"{FormStart}edit:{shelf.IdOf(kept)}:{shelf.Label(kept).Revision}");
        CrewForm shown = await form.ShowAsync(id, kept, null, units, cancellation).ConfigureAwait(false);
        return shown.Fields.Any(f => f.Value.Length > f.MostCharacters)
            ? new(KeptAnswers.Refused($"change the {shelf.Word}", $"{shelf.Shown(kept)} is too large for a form.", memory, $"list {shelf.Word}s") with { Lines = [new(CrewLineKind.Plain, $"Export it, change the file, and import it: it then gets an id of its own.")] }, null)
            : new(null, shown);
    }

    /// <summary>Removes, once confirmed.</summary>
    public async Task<CrewAnswer> RemoveAsync(CrewCommandCall call, CrewMemory memory, CancellationToken cancellation)
    {
        Found<T> found = await FindAsync(call, cancellation).ConfigureAwait(false);
        if (found.Thing is not { } kept)
        {
            return KeptAnswers.Refused($"remove a {shelf.Word}", Wordings.Capital(found.Problem), memory, $"list {shelf.Word}s");
        }

        string name = shelf.Shown(kept);
        if (!string.Equals(call.Values.GetValueOrDefault("confirm"), "true", StringComparison.OrdinalIgnoreCase))
        {
            return KeptAnswers.Refused($"remove the {shelf.Word} {name}", $"Remove the {shelf.Word} {name} for the whole team? Nothing is removed yet.", memory, $"list {shelf.Word}s") with
            {
                Lines = [new(CrewLineKind.Plain, $"To do it, give the command again with confirm set to yes. \"{shelf.Word} export\" first keeps a file of it.")],
            };
        }

        try
        {
            await shelf.DeleteAsync(shelf.Label(kept).Name, cancellation).ConfigureAwait(false);
        }
        catch (RpcException e) when (e.GetRpcStatus()?.GetDetail<ErrorInfo>()?.Reason == InUse && !cancellation.IsCancellationRequested)
        {
            return await StillUsedAsync(name, shelf.Label(kept).Name, memory, cancellation).ConfigureAwait(false);
        }

        return KeptAnswers.Done($"remove the {shelf.Word} {name}", $"Removed: the {shelf.Word} {name}.", [], Without(memory, shelf.Label(kept).Name), $"list {shelf.Word}s");
    }

    /// <summary>Keeps what a form says.</summary>
    /// <param name="entry">The form as filled in.</param>
    /// <param name="memory">What the conversation remembers.</param>
    /// <param name="units">Units to read and answer in.</param>
    /// <param name="cancellation">Calls it off.</param>
    public async Task<CrewAnswer> SubmitAsync(CrewFormEntry entry, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        string about = entry.FormId.StartsWith(FormStart, StringComparison.Ordinal) ? entry.FormId[FormStart.Length..] : "";
        string[] parts = about.Split(':');
        long revision = 0;
        bool edits = parts is ["edit", _, _] && long.TryParse(parts[2], NumberStyles.None, CultureInfo.InvariantCulture, out revision) && revision > 0;
        if (!edits && about != "new")
        {
            return KeptAnswers.Refused("a form", "This form is not known here any more.", memory, $"list {shelf.Word}s") with { Lines = [new(CrewLineKind.Plain, $"Give the command \"{shelf.Word} new\" or \"{shelf.Word} edit\" again.")] };
        }

        IReadOnlyList<T> all = await shelf.ListAsync(cancellation).ConfigureAwait(false);
        T? kept = edits ? all.FirstOrDefault(t => shelf.IdOf(t) == parts[1]) : null;
        var reading = new EntryReading(entry, await form.ShowAsync(entry.FormId, kept, null, units, cancellation).ConfigureAwait(false));
        if (edits && kept is null)
        {
            return reading.Refused($"Nothing kept: somebody removed this {shelf.Word} meanwhile.", [], memory);
        }

        if (kept is not null && shelf.Label(kept).Revision != revision)
        {
            return Meanwhile(reading, kept, memory);
        }

        FormResult<T>? read = await form.ReadAsync(reading, kept, units, cancellation).ConfigureAwait(false);
        if (read is null)
        {
            return reading.Refusal(memory);
        }

        if (kept is not null && kept.Equals(read.Thing))
        {
            return KeptAnswers.Done($"change the {shelf.Word} {shelf.Shown(kept)}", $"{shelf.Shown(kept)} stays as it was: nothing was changed.", [], memory, form.FollowUps(kept));
        }

        try
        {
            T now = await KeepAsync(read, kept, all, cancellation).ConfigureAwait(false);
            return Kept(now, kept, read, reading, units, memory);
        }
        catch (RpcException e) when (e.StatusCode == Grpc.Core.StatusCode.Aborted && kept is not null)
        {
            return Meanwhile(reading, kept, memory);
        }
        catch (RpcException e) when (!cancellation.IsCancellationRequested)
        {
            CrewAnswer problem = ErrorText.Of(e, new CrewRequest { Intent = CrewIntent.Keep }, memory, units, planner.Desk.PlannerAddress);
            return reading.Refused($"Nothing kept. {problem.Headline}", problem.Lines, memory) with { Outcome = problem.Outcome };
        }
    }

    // The planner knows scenes by their ids; the crew knows them by name.
    private async Task<CrewAnswer> StillUsedAsync(string name, string resource, CrewMemory memory, CancellationToken cancellation)
    {
        IReadOnlyList<V1.Scene> scenes = await planner.AllScenesAsync(cancellation).ConfigureAwait(false);
        string[] users = [.. scenes.Where(s => s.Cabin == resource || s.Kit == resource).Select(s => Wordings.Name(s.DisplayName, s.Name))];
        string more = users.Length > MostUsers ? Wordings.Say($" and {users.Length - MostUsers} more") : "";
        string by = users.Length == 0 ? "a scene" : more.Length > 0 ? string.Join(", ", users.Take(MostUsers)) + more : Wordings.Join(users);
        return KeptAnswers.Refused($"remove the {shelf.Word} {name}", $"Not removed: {name} is still used by {by}.", memory, "list scenes") with
        {
            Lines = [new(CrewLineKind.Plain, $"Give {(users.Length == 1 ? "that scene" : "those scenes")} another {shelf.Word} with \"scene edit\", or remove {(users.Length == 1 ? "it" : "them")}, first.")],
        };
    }

    private async Task<T> KeepAsync(FormResult<T> read, T? kept, IReadOnlyList<T> all, CancellationToken cancellation)
    {
        Func<Task>? undo = read.Before is null ? null : await read.Before(read.Thing, cancellation).ConfigureAwait(false);
        try
        {
            return kept is not null ? await shelf.UpdateAsync(read.Thing, cancellation).ConfigureAwait(false)
                : await NewIds.CreateAsync(shelf, NewIds.From(shelf.Label(read.Thing).DisplayName, shelf.Word), read.Thing, all, cancellation).ConfigureAwait(false);
        }
        catch (RpcException) when (undo is not null)
        {
            await Undo.TryAsync(undo).ConfigureAwait(false);
            throw;
        }
    }

    private CrewAnswer Kept(T now, T? before, FormResult<T> read, EntryReading reading, UnitPreference units, CrewMemory memory)
    {
        List<CrewLine> lines = [.. form.Describe(now, units).Select(l => new CrewLine(CrewLineKind.Figures, l))];
        if (reading.Usual.Count > 0)
        {
            lines.Add(new(CrewLineKind.Caution, $"Taken as usual, as nobody said: {string.Join("; ", reading.Usual)}."));
        }

        lines.AddRange(read.Remarks.Select(r => new CrewLine(CrewLineKind.Plain, r)));
        string name = shelf.Shown(now);
        string headline = before is null ? $"Kept: the {shelf.Word} {name}, id {shelf.IdOf(now)}." : $"Changed: the {shelf.Word} {name}.";
        CrewMemory next = Stale(memory, now);
        return KeptAnswers.Done($"{(before is null ? "new" : "change the")} {shelf.Word} {name}", headline, lines, next, form.FollowUps(now)) with
        {
            Data = new Dictionary<string, IMessage> { [shelf.Word] = now },
        };
    }

    private CrewAnswer Meanwhile(EntryReading reading, T kept, CrewMemory memory) => reading.Refused(
        $"Nothing kept: somebody changed {shelf.Shown(kept)} while you wrote.",
        [new(CrewLineKind.Plain, $"Open \"{shelf.Word} edit\" again to see how it stands now, then change it.")], memory);

    private async Task<Found<T>> FindAsync(CrewCommandCall call, CancellationToken cancellation) =>
        ThingFinder.Find(shelf, await shelf.ListAsync(cancellation).ConfigureAwait(false), call.Values.GetValueOrDefault(shelf.Word) ?? "");

    // A scene just made or changed is the one talked about; a plan made before the change would mislead.
    private static CrewMemory Stale(CrewMemory memory, T now) => now is V1.Scene scene
        ? memory.At(scene.Name)
        : memory with { Plan = null, LastChanges = null };

    private static CrewMemory Without(CrewMemory memory, string name) => memory.SceneName == name ? memory.At(null) : memory;
}

/// <summary>Takes back what was kept for something that was then refused.</summary>
internal static class Undo
{
    /// <summary>True when it was taken back; a planner that refuses or is away leaves it, which harms nobody.</summary>
    public static async Task<bool> TryAsync(Func<Task> undo)
    {
        try
        {
            await undo().ConfigureAwait(false);
            return true;
        }
        catch (RpcException)
        {
            return false;
        }
    }
}
