using Google.Protobuf;

namespace Quarterlight.Crew;

/// <summary>How a question ended.</summary>
public enum CrewOutcome
{
    /// <summary>Answered.</summary>
    Answered,

    /// <summary>Not understood; the answer offers the nearest things that would be.</summary>
    NotUnderstood,

    /// <summary>Understood, but the planner refused it; the answer says what to change.</summary>
    Refused,

    /// <summary>The planner could not be reached.</summary>
    PlannerUnreachable,
}

/// <summary>What a line of an answer is about, so that a transport can set it apart.</summary>
public enum CrewLineKind
{
    /// <summary>Anything else.</summary>
    Plain,

    /// <summary>One talker's microphone.</summary>
    Talker,

    /// <summary>Figures.</summary>
    Figures,

    /// <summary>How sure the figures are.</summary>
    Certainty,

    /// <summary>What was refused.</summary>
    Refused,

    /// <summary>A runner-up.</summary>
    RunnerUp,

    /// <summary>A caution.</summary>
    Caution,

    /// <summary>Why a clip is what it is, and the way out.</summary>
    Reason,

    /// <summary>What was heard in a clip.</summary>
    Heard,

    /// <summary>A forecast beside what was measured.</summary>
    Comparison,

    /// <summary>How good the choice is proved to be.</summary>
    Proof,
}

/// <summary>One line of an answer.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Text">Plain text, one line, no markup.</param>
public sealed record CrewLine(CrewLineKind Kind, string Text);

/// <summary>A picture with its text alternative.</summary>
/// <param name="Png">The picture as a PNG file; not empty.</param>
/// <param name="TextAlternative">The same in words.</param>
/// <param name="FileName">Suggested file name: lower-case letters, digits, dashes and .png.</param>
public sealed record CrewPicture(ReadOnlyMemory<byte> Png, string TextAlternative, string FileName);

/// <summary>What the crew gets back. All text is built here; a transport only lays it out.</summary>
public sealed record CrewAnswer
{
    /// <summary>How the question ended.</summary>
    public CrewOutcome Outcome { get; init; } = CrewOutcome.Answered;

    /// <summary>What was asked for, as understood.</summary>
    public CrewIntent Intent { get; init; }

    /// <summary>What the question was taken to mean, in one line, so that a colleague can repeat it.</summary>
    public string Understood { get; init; } = "";

    /// <summary>The decision, in one line.</summary>
    public required string Headline { get; init; }

    /// <summary>The rest, most important first.</summary>
    public IReadOnlyList<CrewLine> Lines { get; init; } = [];

    /// <summary>Pictures; often none.</summary>
    public IReadOnlyList<CrewPicture> Pictures { get; init; } = [];

    /// <summary>Files other than pictures; often none.</summary>
    public IReadOnlyList<CrewFile> Files { get; init; } = [];

    /// <summary>Obvious next questions, at most three, each of which would be understood.</summary>
    public IReadOnlyList<string> FollowUps { get; init; } = [];

    /// <summary>True when only the asker should see it, as with errors.</summary>
    public bool Private { get; init; }

    /// <summary>The messages of the contract behind the answer, by name, for scripts.</summary>
    public IReadOnlyDictionary<string, IMessage> Data { get; init; } = new Dictionary<string, IMessage>();

    /// <summary>What to remember for the next question.</summary>
    public CrewMemory Memory { get; init; } = CrewMemory.Empty;
}
