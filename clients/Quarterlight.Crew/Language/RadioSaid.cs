using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>What a question says about one antenna; what it does not say is null.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="HeightM">Height above the road in metres, as said; the planner checks the range.</param>
public sealed record AntennaSaid(AntennaPlace? Place = null, double? HeightM = null)
{
    /// <summary>True when nothing was said.</summary>
    public bool IsEmpty => Place is null && HeightM is null;

    /// <summary>This, with what it leaves open taken from before.</summary>
    public AntennaSaid Over(AntennaSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new AntennaSaid(Place ?? before.Place, HeightM ?? before.HeightM);
    }
}

/// <summary>A strength of a transmitter as said.</summary>
/// <param name="Value">Milliwatts, or microvolts per metre for a field.</param>
/// <param name="Basis">In what it is given; null when only a power was said.</param>
/// <param name="FieldDistanceM">Distance of a field in metres; null for a power.</param>
public sealed record PowerSaid(double Value, TransmitPowerBasis? Basis = null, double? FieldDistanceM = null);

/// <summary>A band as said.</summary>
/// <param name="LowMHz">Lower edge in MHz.</param>
/// <param name="HighMHz">Upper edge in MHz.</param>
public sealed record BandSaid(double LowMHz, double HighMHz);

/// <summary>What a question says about the radio link and the wireless transmitters; what it does not say is null or empty.</summary>
public sealed record RadioSaid
{
    /// <summary>Distance to the follow car in metres.</summary>
    public double? GapM { get; init; }

    /// <summary>Car lengths the distance was said in; null when it was said in another unit.</summary>
    public double? CarLengths { get; init; }

    /// <summary>Road speed in km/h.</summary>
    public double? SpeedKmPerHour { get; init; }

    /// <summary>What stands round the road.</summary>
    public Surroundings? Surroundings { get; init; }

    /// <summary>What stands between.</summary>
    public LinkSight? Sight { get; init; }

    /// <summary>Country, a two-letter code where it is known by name, else as said.</summary>
    public string? Country { get; init; }

    /// <summary>Carrier in MHz.</summary>
    public double? FrequencyMHz { get; init; }

    /// <summary>Strength of the transmitter.</summary>
    public PowerSaid? Power { get; init; }

    /// <summary>Antenna in the picture car.</summary>
    public AntennaSaid TransmitAntenna { get; init; } = new();

    /// <summary>Antenna in the follow car.</summary>
    public AntennaSaid ReceiveAntenna { get; init; } = new();

    /// <summary>Stereo, or mono.</summary>
    public bool? Stereo { get; init; }

    /// <summary>Share of time and places, 0 to 1.</summary>
    public double? AvailabilityFraction { get; init; }

    /// <summary>Stations heard.</summary>
    public IReadOnlyList<HeardStation> Stations { get; init; } = [];

    /// <summary>Kit to take the gear from, by resource name.</summary>
    public string? KitName { get; init; }

    /// <summary>How many transmitters.</summary>
    public int? TransmitterCount { get; init; }

    /// <summary>Where they can be tuned.</summary>
    public IReadOnlyList<BandSaid> TuningRanges { get; init; } = [];

    /// <summary>Bands to keep out of.</summary>
    public IReadOnlyList<BandSaid> Excluded { get; init; } = [];

    /// <summary>Single carriers to keep clear of, MHz.</summary>
    public IReadOnlyList<double> AvoidedMHz { get; init; } = [];

    /// <summary>Tuning step in kHz.</summary>
    public double? StepKHz { get; init; }

    /// <summary>Least distance of two carriers in kHz.</summary>
    public double? SpacingKHz { get; init; }

    /// <summary>True when fifth-order products are to count too.</summary>
    public bool FifthOrder { get; init; }

    /// <summary>True when the question is about wireless microphones and not about the link.</summary>
    public bool OfMicrophones { get; init; }

    /// <summary>Channels already chosen, MHz, in the order said.</summary>
    public IReadOnlyList<double> CarriersMHz { get; init; } = [];

    /// <summary>True when nothing but perhaps a speed or a kit was said.</summary>
    public bool IsEmpty => GapM is null && Surroundings is null && Sight is null && Country is null && FrequencyMHz is null && Power is null
        && TransmitAntenna.IsEmpty && ReceiveAntenna.IsEmpty && Stereo is null && AvailabilityFraction is null && Stations.Count == 0
        && !SaysChannels && CarriersMHz.Count == 0;

    /// <summary>True when a number, a band, a step or a spacing of transmitters was said.</summary>
    public bool SaysChannels => TransmitterCount is not null || TuningRanges.Count > 0 || Excluded.Count > 0 || AvoidedMHz.Count > 0
        || StepKHz is not null || SpacingKHz is not null || FifthOrder;

    /// <summary>This without what belongs to the gear, for when another kit brings its own.</summary>
    public RadioSaid WithoutGear() => this with { FrequencyMHz = null, Power = null, Stereo = null, TransmitAntenna = new(), ReceiveAntenna = new(), TransmitterCount = null, TuningRanges = [], StepKHz = null };

    /// <summary>This, with what it leaves open taken from the question before.</summary>
    public RadioSaid Over(RadioSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new RadioSaid
        {
            GapM = GapM ?? before.GapM,
            CarLengths = GapM is null ? before.CarLengths : CarLengths,
            SpeedKmPerHour = SpeedKmPerHour ?? before.SpeedKmPerHour,
            Surroundings = Surroundings ?? before.Surroundings,
            Sight = Sight ?? before.Sight,
            Country = Country ?? before.Country,
            FrequencyMHz = FrequencyMHz ?? before.FrequencyMHz,
            Power = Power ?? before.Power,
            TransmitAntenna = TransmitAntenna.Over(before.TransmitAntenna),
            ReceiveAntenna = ReceiveAntenna.Over(before.ReceiveAntenna),
            Stereo = Stereo ?? before.Stereo,
            AvailabilityFraction = AvailabilityFraction ?? before.AvailabilityFraction,
            Stations = Stations.Count > 0 ? Stations : before.Stations,
            KitName = KitName ?? before.KitName,
            TransmitterCount = TransmitterCount ?? before.TransmitterCount,
            TuningRanges = TuningRanges.Count > 0 ? TuningRanges : before.TuningRanges,
            Excluded = [.. before.Excluded, .. Excluded],
            AvoidedMHz = [.. before.AvoidedMHz, .. AvoidedMHz],
            StepKHz = StepKHz ?? before.StepKHz,
            SpacingKHz = SpacingKHz ?? before.SpacingKHz,
            FifthOrder = FifthOrder || before.FifthOrder,
            CarriersMHz = CarriersMHz.Count > 0 ? CarriersMHz : before.CarriersMHz,
        };
    }
}
