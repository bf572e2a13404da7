namespace Quarterlight.Crew.Commands;

/// <summary>A form to fill in, laid out by the transport. One to five fields, so that every transport can show it.</summary>
/// <param name="Id">Tells what it is for and about; comes back with what was written; at most 100 characters. Untrusted when it comes back.</param>
/// <param name="Title">At most 45 characters.</param>
/// <param name="Fields">The fields, in order.</param>
public sealed record CrewForm(string Id, string Title, IReadOnlyList<CrewFormField> Fields);

/// <summary>A field of a form. All fields are text; what they take is read as carefully as anything the crew types.</summary>
/// <param name="Id">Comes back with what was written: lower-case letters and dashes.</param>
/// <param name="Label">At most 45 characters.</param>
public sealed record CrewFormField(string Id, string Label)
{
    /// <summary>Hint with an example; at most 100 characters.</summary>
    public string Hint { get; init; } = "";

    /// <summary>What stands in it at first.</summary>
    public string Value { get; init; } = "";

    /// <summary>True when it must not be left empty.</summary>
    public bool Required { get; init; }

    /// <summary>True for several lines.</summary>
    public bool SeveralLines { get; init; }

    /// <summary>Longest text, characters.</summary>
    public int MostCharacters { get; init; } = 1000;
}

/// <summary>A form as filled in. All text is untrusted.</summary>
/// <param name="FormId">Id of the form.</param>
/// <param name="Values">What was written, by field.</param>
public sealed record CrewFormEntry(string FormId, IReadOnlyDictionary<string, string> Values);

/// <summary>What a command came to: an answer or a form; exactly one is set.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Form">The form.</param>
public sealed record CrewOutput(CrewAnswer? Answer, CrewForm? Form);
