namespace Quarterlight.Quantities;

/// <summary>One thing wrong with what a user sent. Rooms return all of them at once and never throw for them.</summary>
/// <param name="Field">Path of the field in the contract's words, such as <c>scene.talkers[1].head_poses[0].share_fraction</c>.</param>
/// <param name="Problem">What was wrong, with the value, as a sentence without a final stop.</param>
/// <param name="Remedy">What would be right, as a sentence without a final stop.</param>
public sealed record Violation(string Field, string Problem, string Remedy)
{
    /// <summary>The whole as one line for people.</summary>
    public override string ToString() => $"{Field}: {Problem}. {Remedy}.";
}

/// <summary>Thrown nowhere near a user: carries violations out of a room whose result type has no place for them.</summary>
public sealed class InvalidInputException : ArgumentException
{
    /// <summary>Makes the exception for one or more violations.</summary>
    public InvalidInputException(params IReadOnlyList<Violation> violations)
        : base(string.Join(" ", violations)) => Violations = violations;

    /// <summary>What was wrong; at least one.</summary>
    public IReadOnlyList<Violation> Violations { get; }
}

/// <summary>A remark beside a valid result: read it with care.</summary>
/// <param name="Code">Stable lower-case word with dashes, such as <c>absolute-level-uncertain</c>.</param>
/// <param name="Message">One plain sentence for the crew.</param>
/// <param name="Severity">How loudly it is said.</param>
public sealed record Advisory(string Code, string Message, AdvisorySeverity Severity);

/// <summary>How loudly an advisory is said.</summary>
public enum AdvisorySeverity
{
    /// <summary>Good to know.</summary>
    Note,

    /// <summary>Changes how the result may be used.</summary>
    Caution,

    /// <summary>Someone could be hurt or the law could be broken.</summary>
    Safety,
}
