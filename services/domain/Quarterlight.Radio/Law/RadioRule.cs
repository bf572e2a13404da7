using Quarterlight.Quantities;

namespace Quarterlight.Radio.Law;

/// <summary>Whether a rule lets a transmitter work without a licence of its own.</summary>
public enum Licensing
{
    /// <summary>Anybody may, within the limit.</summary>
    LicenceExempt,

    /// <summary>Only with a licence or an assignment.</summary>
    Licensed,

    /// <summary>Nobody may.</summary>
    Forbidden,
}

/// <summary>In what a rule states its limit.</summary>
public enum LimitKind
{
    /// <summary>Field strength in µV/m at a distance.</summary>
    FieldStrength,

    /// <summary>Effective radiated power in mW, over a half-wave dipole.</summary>
    Erp,

    /// <summary>Equivalent isotropic radiated power in mW.</summary>
    Eirp,

    /// <summary>Power in mW at the transmitter's output.</summary>
    ConductedPower,

    /// <summary>No transmission at all.</summary>
    Nothing,
}

/// <summary>What one rule of one country says about one band.</summary>
public sealed record RadioRule
{
    /// <summary>Country or region, as in <see cref="CountryLaw.Code"/>.</summary>
    public required string CountryCode { get; init; }

    /// <summary>Lower edge of the band in MHz.</summary>
    public required double LowMHz { get; init; }

    /// <summary>Upper edge of the band in MHz.</summary>
    public required double HighMHz { get; init; }

    /// <summary>What may be sent, in plain words.</summary>
    public required string Use { get; init; }

    /// <summary>With or without a licence.</summary>
    public required Licensing Licensing { get; init; }

    /// <summary>In what the limit is stated.</summary>
    public required LimitKind LimitKind { get; init; }

    /// <summary>The limit in the unit of its kind: µV/m or mW; 0 when nothing may be sent.</summary>
    public required double Limit { get; init; }

    /// <summary>Distance in metres at which a field strength is measured; null for powers.</summary>
    public double? LimitDistanceM { get; init; }

    /// <summary>Widest channel in kHz the rule allows; null when it states none known here.</summary>
    public double? WidestChannelKHz { get; init; }

    /// <summary>
    /// Channel width in kHz at which <see cref="Limit"/> holds when the limit shrinks with the square root of a narrower channel; null
    /// when the limit is the same for every width. Wider channels are held to <see cref="Limit"/>: the safe side.
    /// </summary>
    public double? RootBandwidthReferenceKHz { get; init; }

    /// <summary>True when the rule is for digital or frequency-hopping equipment only.</summary>
    public bool DigitalOnly { get; init; }

    /// <summary>Document, such as "47 CFR Part 15".</summary>
    public required string Document { get; init; }

    /// <summary>Clause or table within it.</summary>
    public required string Clause { get; init; }

    /// <summary>Edition or date of the text the figure comes from.</summary>
    public required string Date { get; init; }

    /// <summary>Further conditions in plain words; may be empty.</summary>
    public required string Conditions { get; init; }

    /// <summary>How far the figure may be trusted, and where it was read.</summary>
    public required Provenance Provenance { get; init; }
}
