using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Link;

/// <summary>In what a transmitter's strength is given.</summary>
public enum TransmitPowerBasis
{
    /// <summary>Power at its output in mW; the antenna's gain is added.</summary>
    Conducted,

    /// <summary>Effective radiated power over a half-wave dipole, mW.</summary>
    Erp,

    /// <summary>Equivalent isotropic radiated power, mW.</summary>
    Eirp,

    /// <summary>Field strength in µV/m at a distance.</summary>
    Field,
}

/// <summary>What stands round the road.</summary>
public enum Surroundings
{
    /// <summary>Open road.</summary>
    OpenRoad,

    /// <summary>Street between houses.</summary>
    SuburbanStreet,

    /// <summary>Street between tall blocks.</summary>
    CityCanyon,

    /// <summary>Road tunnel.</summary>
    Tunnel,
}

/// <summary>What stands between the two antennas.</summary>
public enum LinkSight
{
    /// <summary>Nothing.</summary>
    Clear,

    /// <summary>A car.</summary>
    CarBetween,

    /// <summary>A van.</summary>
    VanBetween,

    /// <summary>A truck or bus.</summary>
    TruckBetween,

    /// <summary>A street corner; the cars do not see each other.</summary>
    RoundACorner,
}

/// <summary>A station heard at the location.</summary>
/// <param name="FrequencyMHz">Its frequency, 76 to 2500.</param>
/// <param name="FieldDbuvPerM">Its field in dB over a microvolt per metre, 0 to 120.</param>
public sealed record HeardStation(double FrequencyMHz, double FieldDbuvPerM);

/// <summary>The transmitter in the picture car and the receiver in the follow car.</summary>
public sealed record LinkGear
{
    /// <summary>Carrier frequency in MHz, 76 to 2500.</summary>
    public required double FrequencyMHz { get; init; }

    /// <summary>In what the strength is given.</summary>
    public required TransmitPowerBasis PowerBasis { get; init; }

    /// <summary>The strength: mW, or µV/m for a field.</summary>
    public required double Power { get; init; }

    /// <summary>Distance of a field in metres; null for powers.</summary>
    public double? FieldDistanceM { get; init; }

    /// <summary>Antenna in the picture car.</summary>
    public required Antenna TransmitAntenna { get; init; }

    /// <summary>Antenna in the follow car.</summary>
    public required Antenna ReceiveAntenna { get; init; }

    /// <summary>Noise figure of the receiver in dB, 0 to 20.</summary>
    public double NoiseFigureDb { get; init; } = UsualNoiseFigureDb;

    /// <summary>Noise figure taken when none is stated, dB. Judgement.</summary>
    public const double UsualNoiseFigureDb = 7;

    /// <summary>What is sent.</summary>
    public required Emission Emission { get; init; }
}

/// <summary>Everything a link check depends on.</summary>
public sealed record LinkTask
{
    /// <summary>Transmitter and receiver.</summary>
    public required LinkGear Gear { get; init; }

    /// <summary>Distance between the two antennas in metres, 1 to 3000.</summary>
    public required double GapM { get; init; }

    /// <summary>What stands round the road.</summary>
    public Surroundings Surroundings { get; init; }

    /// <summary>The ground under the link.</summary>
    public GroundKind Ground { get; init; }

    /// <summary>What stands between.</summary>
    public LinkSight Sight { get; init; }

    /// <summary>Road speed of both cars in km/h, 0 to 130.</summary>
    public double SpeedKmPerHour { get; init; }

    /// <summary>Country as an ISO 3166-1 two-letter code or common name; empty when not known.</summary>
    public string CountryCode { get; init; } = "";

    /// <summary>Stations heard, at most 200.</summary>
    public IReadOnlyList<HeardStation> Stations { get; init; } = [];

    /// <summary>Share of time and places the link is to hold, 0.5 to 0.999.</summary>
    public double AvailabilityFraction { get; init; } = UsualAvailabilityFraction;

    /// <summary>Availability taken when none is stated. Judgement.</summary>
    public const double UsualAvailabilityFraction = 0.95;
}
