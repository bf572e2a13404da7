using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;
using static System.FormattableString;

namespace Quarterlight.Radio.Link;

/// <summary>Which path model is valid for a link, and what it says.</summary>
/// <remarks>Validity after the recommendations themselves: docs/models/radio-path.md has the table.</remarks>
public static class PathModels
{
    private static readonly PropagationRefusal s_freeSpace = new(
        PropagationModel.FreeSpace, "Free space leaves the ground out, which between two cars is far too kind.");

    /// <summary>Farthest the two-ray formula is used: beyond it the road is no plane. Judgement.</summary>
    public const double FarthestTwoRayM = 3000;

    /// <summary>Chooses the model; adds a violation and returns null when none holds.</summary>
    public static PathChoice? Choose(LinkTask task, string prefix, ICollection<Violation> violations)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(violations);
        PathChoice? choice = Choose(task, prefix, out Violation? problem);
        if (problem is not null)
        {
            violations.Add(problem);
            return null;
        }

        if (task.GapM < choice!.NearestM)
        {
            violations.Add(new Violation(
                $"{prefix}.follow_car.gap_m",
                Invariant($"the gap is {task.GapM:0.##} m, and at {task.Gear.FrequencyMHz:0.###} MHz the antennas are in each other's near field up to {choice.NearestM:0.##} m"),
                Invariant($"Give at least {choice.NearestM:0.##} m; nearer than that the link is not the problem")));
            return null;
        }

        if (task.GapM > choice.FarthestM)
        {
            violations.Add(new Violation(
                $"{prefix}.follow_car.gap_m",
                Invariant($"the gap is {task.GapM:0} m, and the only path model for this road and frequency ends at {choice.FarthestM:0} m"),
                Invariant($"Give at most {choice.FarthestM:0} m, or ask for an open road")));
            return null;
        }

        return choice;
    }

    /// <summary>Near field in metres: one wavelength, and never less than 1 m.</summary>
    /// <remarks>The reactive field ends at λ/2π and the antennas of this job are at most half a wave long (2D²/λ = λ/2): a whole wave is on the safe
    /// side.</remarks>
    public static double NearFieldM(double frequencyMHz) => Math.Max(1, FreeSpace.WavelengthM(frequencyMHz));

    /// <summary>Loss in dB between isotropic antennas, obstacles aside.</summary>
    public static double LossDb(PropagationModel model, in PathInputs path, Surroundings surroundings, double distanceM) => model switch
    {
        PropagationModel.FreeSpace => FreeSpace.LossDb(path.FrequencyMHz, distanceM),
        PropagationModel.TwoRay => TwoRay.LocalMeanLossDb(path, distanceM),
        PropagationModel.NearGround => NearGround.LossDb(path, distanceM),
        PropagationModel.StreetUhf => Street.UhfDb(path, distanceM).Median,
        PropagationModel.StreetCanyon => Street.CanyonDb(path.FrequencyMHz, distanceM),
        PropagationModel.StreetCorner => Street.CornerMedianDb(path.FrequencyMHz, distanceM, Kind(surroundings)),
        PropagationModel.Tunnel => Tunnel.LossDb(path, distanceM),
        _ => throw new ArgumentOutOfRangeException(nameof(model), model, "No such path model."),
    };

    /// <summary>Height in metres of what stands between; 0 for nothing. Judgement.</summary>
    public static double ObstacleHeightM(LinkSight sight) => sight switch
    {
        LinkSight.CarBetween => 1.45,
        LinkSight.VanBetween => 2.4,
        LinkSight.TruckBetween => 4,
        _ => 0,
    };

    /// <summary>What a vehicle halfway between takes away in dB.</summary>
    public static double ObstacleLossDb(LinkSight sight, in PathInputs path, double distanceM)
    {
        double height = ObstacleHeightM(sight);
        return height == 0 ? 0 : KnifeEdge.LossDb(path.WavelengthM, distanceM / 2, distanceM / 2, height - ((path.TransmitHeightM + path.ReceiveHeightM) / 2));
    }

    /// <summary>Slow and fast fading of a road: standard deviation in dB, and steady over scattered power in dB (null for Rayleigh's).</summary>
    /// <remarks>
    /// Rice factors: means measured between cars in rural, suburban and urban streets, 3.0, 2.6 and 1.8 dB (a study of 2014, abstract); Rayleigh's
    /// when something stands
    /// between. Spread: 5.06 and 7 dB of ITU-R P.1411 in streets; 4 dB on the open road and in a tunnel, judgement.
    /// </remarks>
    public static (double SigmaDb, double? RiceKDb) Fading(Surroundings surroundings, LinkSight sight)
    {
        double sigma = sight == LinkSight.RoundACorner ? Street.CornerSigmaDb
            : surroundings is Surroundings.SuburbanStreet or Surroundings.CityCanyon ? Street.CanyonSigmaDb : 4;
        double? k = sight != LinkSight.Clear ? null : surroundings switch
        {
            Surroundings.OpenRoad => 3.0,
            Surroundings.SuburbanStreet => 2.6,
            _ => 1.8,
        };
        return (sigma, k);
    }

    /// <summary>Man-made noise of a road.</summary>
    public static NoiseEnvironment Noise(Surroundings surroundings) => surroundings switch
    {
        Surroundings.OpenRoad => NoiseEnvironment.Rural,
        Surroundings.SuburbanStreet => NoiseEnvironment.Residential,
        _ => NoiseEnvironment.City,
    };

    private static PathChoice? Choose(LinkTask task, string prefix, out Violation? problem)
    {
        problem = null;
        double frequency = task.Gear.FrequencyMHz, nearest = NearFieldM(frequency);
        bool uhf = Street.UhfFrequencyMHz.Contains(frequency);
        if (task.Sight == LinkSight.RoundACorner)
        {
            bool street = task.Surroundings is Surroundings.SuburbanStreet or Surroundings.CityCanyon;
            bool high = Street.CornerHeightM.Contains(task.Gear.TransmitAntenna.HeightM) && Street.CornerHeightM.Contains(task.Gear.ReceiveAntenna.HeightM);
            if (uhf && street && high)
            {
                return new(PropagationModel.StreetCorner, "Round a corner between antennas 1.9 to 3 m high: ITU-R P.1411, both ends near street level.", nearest, Street.CornerDistanceM.Max, [s_freeSpace]);
            }

            problem = new Violation(
                $"{prefix}.follow_car.sight",
                "round a corner only one published model holds: streets, 300 to 3000 MHz, both antennas 1.9 to 3 m high",
                "Keep the picture car in sight, or give such a street, frequency and heights");
            return null;
        }

        switch (task.Surroundings)
        {
            case Surroundings.Tunnel:
                return new(PropagationModel.Tunnel, "In a tunnel: free space and the loss of the lowest wave a two-lane bore carries (from memory, cautious).", nearest, FarthestTwoRayM,
                    [new(PropagationModel.TwoRay, "A tunnel has walls and a roof as well as a ground.")]);
            case Surroundings.CityCanyon when Street.CanyonFrequencyMHz.Contains(frequency):
                return new(PropagationModel.StreetCanyon, "Between tall blocks from 0.8 GHz: ITU-R P.1411, street canyon, measured from 5 to 660 m.", Math.Max(nearest, Street.CanyonDistanceM.Min), Street.CanyonDistanceM.Max,
                    [new(PropagationModel.TwoRay, "Walls on both sides send more than the ground does.")]);
            case Surroundings.CityCanyon or Surroundings.SuburbanStreet when uhf:
                return new(PropagationModel.StreetUhf, "In a street in sight, 300 MHz to 3 GHz: the median of ITU-R P.1411, up to 1 km.", nearest, Street.UhfDistanceM.Max,
                    [new(PropagationModel.TwoRay, "Houses on both sides send more than the ground does.")]);
            case Surroundings.OpenRoad when !NearGround.FrequencyMHz.Contains(frequency):
                return new(PropagationModel.TwoRay, Invariant($"On an open road from 300 MHz: direct and ground ray; they part beyond {Breakpoint(task):0} m, where the level falls with the fourth power."), nearest, FarthestTwoRayM,
                    [s_freeSpace, new(PropagationModel.StreetUhf, "There are no houses along the road.")]);
        }

        string where = task.Surroundings == Surroundings.OpenRoad ? "On an open road" : "No published street model reaches below 300 MHz, so the open road's is used with the street's spread";
        return new(PropagationModel.NearGround, Invariant($"{where}: plane earth near the ground; at this frequency the fourth power begins {Breakpoint(task):0} m out."), nearest, NearGround.DistanceM.Max,
            [s_freeSpace, new(PropagationModel.StreetUhf, "ITU-R P.1411 begins at 300 MHz.")]);
    }

    private static double Breakpoint(LinkTask task) =>
        4 * task.Gear.TransmitAntenna.HeightM * task.Gear.ReceiveAntenna.HeightM / FreeSpace.WavelengthM(task.Gear.FrequencyMHz);

    private static StreetKind Kind(Surroundings surroundings) => surroundings == Surroundings.CityCanyon ? StreetKind.Urban : StreetKind.Suburban;
}
