namespace Quarterlight.Quantities;

/// <summary>How far a number may be trusted.</summary>
public enum Trust
{
    /// <summary>Read in a published source.</summary>
    Published,

    /// <summary>Computed from a formula or from published values.</summary>
    Derived,

    /// <summary>A rule of thumb of the trade: common practice, no source.</summary>
    CommonPractice,

    /// <summary>From memory: a starting value, never a proof.</summary>
    FromMemory,

    /// <summary>Chosen here so that a model has some number.</summary>
    Judgement,
}

/// <summary>Where a number comes from.</summary>
/// <param name="Source">Document, edition and table, or the reason for the choice; never empty.</param>
/// <param name="Trust">How far it may be trusted.</param>
public sealed record Provenance(string Source, Trust Trust);
