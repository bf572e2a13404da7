using Quarterlight.Radio.Fading;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Link;

/// <summary>From transmitter to sound for one link: powers, gains, losses, noise, and what is needed.</summary>
internal sealed class LinkBudget
{
    private readonly PathInputs _path;
    private readonly LinkBudget? _like;
    private PathCurve? _curve;

    /// <summary>Works the budget out.</summary>
    /// <param name="task">A valid link.</param>
    /// <param name="choice">Its path model.</param>
    /// <param name="like">A budget whose curve may be used again when the path is the same; or null.</param>
    public LinkBudget(LinkTask task, PathChoice choice, LinkBudget? like = null)
    {
        (Task, Choice, _like) = (task, choice, like);
        LinkGear gear = task.Gear;
        _path = new PathInputs(
            gear.FrequencyMHz, gear.TransmitAntenna.HeightM, gear.ReceiveAntenna.HeightM, gear.TransmitAntenna.Polarisation, GroundProperties.Of(task.Ground));
        EirpDbm = EirpDbmOf(gear);
        ReceiveGainDbi = AntennaValues.GainDbi(gear.ReceiveAntenna) - gear.ReceiveAntenna.FeederLossDb - AntennaValues.ShieldingDb(gear.ReceiveAntenna, gear.FrequencyMHz);
        CrosswiseLossDb = gear.TransmitAntenna.Polarisation == gear.ReceiveAntenna.Polarisation ? 0 : AntennaValues.CrosswiseLossDb;
        LeavingDbm = EirpDbm - AntennaValues.ShieldingDb(gear.TransmitAntenna, gear.FrequencyMHz);
        double noise = ReceiverNoise.LevelDbm(gear.FrequencyMHz, gear.Emission.FilterBandwidthKHz, PathModels.Noise(task.Surroundings), gear.NoiseFigureDb, ReceiveGainDbi);
        NeededCnDb = gear.Emission is AnalogueFm fm ? FmReception.NeededCnDb(fm) : ((DigitalLink)gear.Emission).RequiredCnDb;
        NeededLevelDbm = Interference.NeededLevelDbm(task.Gear, task.Stations, noise + NeededCnDb, NeededCnDb, ReceiveGainDbi, out double? worst);
        InterferenceDb = NeededLevelDbm - (noise + NeededCnDb);
        WorstStationMHz = worst;
        (double sigma, double? riceDb) = PathModels.Fading(task.Surroundings, task.Sight);
        Fading = CompositeFading.Of(sigma, riceDb is { } k ? Math.Pow(10, k / 10) : 0);
    }

    public LinkTask Task { get; }

    public PathChoice Choice { get; }

    /// <summary>Radiated power in dBm before the car's shielding.</summary>
    public double EirpDbm { get; }

    /// <summary>The same behind the car's shielding.</summary>
    public double LeavingDbm { get; }

    /// <summary>Gain of the receiving antenna with cable and shielding in dBi.</summary>
    public double ReceiveGainDbi { get; }

    public double CrosswiseLossDb { get; }

    public double NeededCnDb { get; }

    /// <summary>Median level at the receiver that is needed without any fading, in dBm.</summary>
    public double NeededLevelDbm { get; }

    /// <summary>How much of it the stations cost, in dB.</summary>
    public double InterferenceDb { get; }

    public double? WorstStationMHz { get; }

    public CompositeFading Fading { get; }

    /// <summary>Loss against distance; worked out when first asked for, as many budgets are asked about the gap alone.</summary>
    public PathCurve Curve => _curve ??= _like is not null && _like._path == _path && _like.Task.Sight == Task.Sight && _like.Choice.Model == Choice.Model
        ? _like.Curve
        : PathCurve.Of(Choice, _path, Task.Surroundings, Task.Sight);

    /// <summary>Noise in dBm with what the stations add, such that level less this is the carrier over noise that counts.</summary>
    public double NoiseDbm => NeededLevelDbm - NeededCnDb;

    public double PathLossDb(double distanceM) => PathCurve.At(Choice.Model, _path, Task.Surroundings, Task.Sight, distanceM);

    public double LevelFromLossDbm(double lossDb) => LeavingDbm - CrosswiseLossDb - lossDb + ReceiveGainDbi;

    /// <summary>Bounds of the level in dBm at a distance, lower first, where the path model gives any.</summary>
    public (double Lower, double Upper)? StreetBoundsDbm(double distanceM)
    {
        if (Choice.Model != PropagationModel.StreetUhf)
        {
            return null;
        }

        (double least, _, double most) = Street.UhfDb(_path, distanceM);
        double obstacle = PathModels.ObstacleLossDb(Task.Sight, _path, distanceM);
        return (LevelFromLossDbm(most + obstacle), LevelFromLossDbm(least + obstacle));
    }

    public double MarginDb(double distanceM) => LevelFromLossDbm(PathLossDb(distanceM)) - NeededLevelDbm;

    public double? SnrDb(double levelDbm) => Task.Gear.Emission is AnalogueFm fm ? FmReception.SnrAtReceiverDb(levelDbm - NoiseDbm, fm) : null;

    /// <summary>Loss in dB at which the link just holds for an availability.</summary>
    /// <param name="availabilityFraction">Above 0 and below 1.</param>
    /// <param name="extraDb">Added to the radiated power, in dB.</param>
    public double MostLossDb(double availabilityFraction, double extraDb = 0) =>
        LeavingDbm + extraDb - CrosswiseLossDb + ReceiveGainDbi - NeededLevelDbm - Fading.MarginDb(availabilityFraction);

    /// <summary>How far the link holds.</summary>
    public LinkRange Range(double availabilityFraction, double extraDb = 0)
    {
        double range = Curve.HoldsToM(MostLossDb(availabilityFraction, extraDb), out bool beyond);
        return new LinkRange(availabilityFraction, range, beyond);
    }

    /// <summary>Radiated power of a transmitter in dBm before the car's shielding.</summary>
    public static double EirpDbmOf(LinkGear gear) => gear.PowerBasis switch
    {
        TransmitPowerBasis.Conducted => FreeSpace.DbmFromWatts(gear.Power / 1e3) + AntennaValues.GainDbi(gear.TransmitAntenna) - gear.TransmitAntenna.FeederLossDb,
        TransmitPowerBasis.Erp => FreeSpace.DbmFromWatts(gear.Power / 1e3) + FreeSpace.DipoleGainDbi,
        TransmitPowerBasis.Eirp => FreeSpace.DbmFromWatts(gear.Power / 1e3),
        _ => FreeSpace.EirpDbmFromField(gear.Power, gear.FieldDistanceM!.Value),
    };
}
