using Quarterlight.Crew.Commands;

namespace Quarterlight.Crew.Keeping;

/// <summary>What was read from a form.</summary>
/// <param name="Thing">The thing to keep.</param>
/// <param name="Remarks">What the crew should know about it, in sentences.</param>
internal sealed record FormResult<T>(T Thing, IReadOnlyList<string> Remarks)
{
    /// <summary>Keeps first what the thing needs and the team does not have yet; null when nothing is needed. Returns what undoes it.</summary>
    public Func<T, CancellationToken, Task<Func<Task>>>? Before { get; init; }
}

/// <summary>The form of one kind of thing, both ways.</summary>
internal interface IThingForm<T>
{
    /// <summary>The form: empty with what the command said, or filled with what is kept.</summary>
    Task<CrewForm> ShowAsync(string formId, T? kept, CrewCommandCall? call, UnitPreference units, CancellationToken cancellation);

    /// <summary>Reads a filled-in form; null when something was not understood, which then stands in the reading. A field that still says what it said leaves what is kept as it is.</summary>
    /// <param name="reading">The entry.</param>
    /// <param name="kept">The thing as kept, not changed; null for a new one.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="cancellation">Calls it off.</param>
    Task<FormResult<T>?> ReadAsync(EntryReading reading, T? kept, UnitPreference units, CancellationToken cancellation);

    /// <summary>What is kept, in a few lines.</summary>
    IReadOnlyList<string> Describe(T thing, UnitPreference units);

    /// <summary>Obvious next questions.</summary>
    IReadOnlyList<string> FollowUps(T thing);
}

/// <summary>Reads forms.</summary>
internal static class Forms
{
    /// <summary>What a field says at first.</summary>
    public static string Value(this CrewForm form, string field) => form.Fields.First(f => f.Id == field).Value;
}
