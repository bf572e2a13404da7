using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>Whether a transmitter is lawful without a licence.</summary>
public enum LawStatus
{
    /// <summary>Within a licence-exempt limit.</summary>
    WithinExemptLimit,

    /// <summary>Above the licence-exempt limit.</summary>
    OverExemptLimit,

    /// <summary>Only with a licence.</summary>
    NeedsLicence,

    /// <summary>Forbidden.</summary>
    Forbidden,

    /// <summary>No rule is known here.</summary>
    NoRuleKnown,
}

/// <summary>What the law says to a transmitter.</summary>
public sealed record LawVerdict
{
    /// <summary>In one word.</summary>
    public required LawStatus Status { get; init; }

    /// <summary>In one or two sentences for the crew.</summary>
    public required string Words { get; init; }

    /// <summary>Country whose rules were used; null when unknown and the strictest of all was taken.</summary>
    public required CountryLaw? Country { get; init; }

    /// <summary>The limit as equivalent isotropic radiated power in dBm; null when nothing may be sent without a licence.</summary>
    public required double? LawfulEirpDbm { get; init; }

    /// <summary>How far the transmitter is above the limit in dB, negative when below; null without a limit or a power.</summary>
    public required double? ExcessDb { get; init; }

    /// <summary>The licence-exempt rule that governs; null when there is none.</summary>
    public required RadioRule? Rule { get; init; }

    /// <summary>Rules that cover the frequency and allow more with a licence, or forbid.</summary>
    public required IReadOnlyList<RadioRule> OtherRules { get; init; }

    /// <summary>Who to ask.</summary>
    public required string Authority { get; init; }

    /// <summary>What to be careful about; always that local law decides.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}
