using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>How a transmission stands to the rules known here.</summary>
public enum LawStatus
{
    /// <summary>Anybody may, on the rule's conditions.</summary>
    WithinExemptLimit,

    /// <summary>Too much for the licence-exempt rule, and no licensed way is known here.</summary>
    OverExemptLimit,

    /// <summary>No licence-exempt rule allows it, but the band can be licensed.</summary>
    NeedsLicence,

    /// <summary>Nobody may send here.</summary>
    Forbidden,

    /// <summary>Nothing is known here: not allowed until the authority says otherwise.</summary>
    NoRuleKnown,
}

/// <summary>What the rules known here say of one transmission in one country. A help for planning, not legal advice.</summary>
public sealed record LawVerdict
{
    /// <summary>False when the country is not known here and the strictest of all was used.</summary>
    public required bool CountryKnown { get; init; }

    /// <summary>The country or region whose rules were used; when the country is unknown, the one with the strictest limit, or null.</summary>
    public required CountryLaw? Country { get; init; }

    /// <summary>The most generous licence-exempt rule for the frequency and channel; null when there is none.</summary>
    public required RadioRule? GoverningRule { get; init; }

    /// <summary>
    /// Most e.i.r.p. in dBm that is lawful without a licence; null when nothing is. In an unknown country it is the strictest limit known
    /// here, which may still be too much there.
    /// </summary>
    public required double? LawfulEirpDbm { get; init; }

    /// <summary>dB over the licence-exempt limit, below 0 when within it; null when there is no limit to compare with.</summary>
    public required double? ExcessDb { get; init; }

    /// <summary>The verdict in one word.</summary>
    public required LawStatus Status { get; init; }

    /// <summary>Licensed rules for the same frequency; may be empty.</summary>
    public required IReadOnlyList<RadioRule> LicensedAlternatives { get; init; }

    /// <summary>Rules that forbid the frequency or a part of the channel; may be empty.</summary>
    public required IReadOnlyList<RadioRule> ForbiddenBy { get; init; }

    /// <summary>Whom to ask.</summary>
    public required string Authority { get; init; }

    /// <summary>One or two plain sentences for the crew, with figures, document and clause.</summary>
    public required string Words { get; init; }

    /// <summary>What to keep in mind; always holds <c>local-law-decides</c>.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}
