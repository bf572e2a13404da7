using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>What the noise forecast needs to know of a car.</summary>
/// <param name="Electric">True for an electric motor.</param>
/// <param name="Cylinders">Cylinders of a combustion engine, 2 to 12.</param>
public sealed record NoiseCar(bool Electric, int Cylinders = 4);

/// <summary>One kind of noise, all its ports together, at the driver's ear.</summary>
/// <param name="PortKind">engine, tyre, wind, window, vent or roof: the kind of noise port it comes in through.</param>
/// <param name="PaneId">The open pane for a window; null otherwise.</param>
/// <param name="Words">What it is, for the crew.</param>
/// <param name="LevelAtDriverEar">Octave band levels in dB re 20 µPa.</param>
/// <param name="Provenance">Where the level comes from.</param>
/// <param name="UncertaintyDb">Half width in dB to expect around it.</param>
public sealed record NoiseContribution(string PortKind, string? PaneId, string Words, BandLevels LevelAtDriverEar, Provenance Provenance, double UncertaintyDb);

/// <summary>
/// How loud it is inside a car as driven, by kind of noise and octave band, at the driver's ear.
/// </summary>
/// <remarks>
/// Absolute levels inside a given car are roughly known only: no published table of closed cars by speed and band was found, so
/// the levels at 100 km/h, the idle and the blower steps are starting values from memory (±4 dB), while growth with speed and the
/// open windows rest on published figures. A clip from the real car replaces the forecast. docs/models/noise-forecast.md.
/// </remarks>
public static class NoiseForecast
{
    /// <summary>Idle speed of a combustion engine in revolutions per minute (from memory).</summary>
    public const double IdleRpm = 750;

    // Published: convertible with the top open, driver's ear, mean of five cars: 85.3 dB(A) at 88.5 km/h and 89.9 at 120.7
    // (Mikulec, Lukens, Jackson, Deyoung 2010, J. Laryngol. Otol., abstract): 34.1 dB per decade of speed.
    private const double OpenTopDba = 85.3;
    private const double OpenTopSpeedKmPerHour = 88.5;
    private const double OpenTopDbPerDecade = 34.1;
    private const double AllPanesBelowOpenTopDb = 3; // Judgement: a roof still covers the heads.
    private const double StreetAmbienceDba = 50; // Outside at a quiet roadside (judgement).
    private const double ShellAmbienceDba = 30; // What of it comes through a closed shell (judgement).

    // What a clip leaves open: another stretch of road, another engine speed, the microphone's own place (judgement).
    private const double CorrectedUncertaintyDb = 2.5;

    private static readonly Provenance s_fromMemory = new("starting value from memory of road tests and texts, order of magnitude only", Trust.FromMemory);
    private static readonly Provenance s_open = new("Mikulec et al. 2010, J. Laryngol. Otol. (abstract), five convertibles, top open; less 3 dB for the roof and a pane's share by judgement", Trust.Judgement);
    private static readonly Provenance s_judgement = new("judgement", Trust.Judgement);

    // At 100 km/h on smooth asphalt tyre, wind and engine together give 68 dB(A) with the octave shape of the starting table.
    private static readonly BandLevels s_tyreAt100 = new(75.6, 69.9, 63.8, 58.5, 51.6, 43.2, 34.4);
    private static readonly BandLevels s_windAt100 = new(66, 61, 57, 54, 50, 44.5, 37);

    private static readonly double[] s_blowerDba = [0, 41, 49, 56, 62];

    private static readonly double[] s_rpmPerKmPerHour = [130, 70, 47, 35, 28, 24];

    /// <summary>The contributions in the order tyre, wind, engine, windows, vents, roof; at least one, since no place is silent.</summary>
    /// <param name="drive">Valid conditions: see <see cref="DriveConditionsRules"/>.</param>
    /// <param name="car">The car.</param>
    /// <exception cref="InvalidInputException">The conditions break a rule: validate what a user sends before asking.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The car has fewer than 2 or more than 12 cylinders and is not electric.</exception>
    public static IReadOnlyList<NoiseContribution> Forecast(DriveConditions drive, NoiseCar car)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(car);
        RequireValid(drive, car);
        var all = new List<NoiseContribution>();
        double speed = drive.SpeedKmPerHour;
        if (speed > 0)
        {
            all.Add(new("tyre", null, "tyres", Tyre(speed, drive.Road), s_fromMemory, 4));
            all.Add(new("wind", null, "wind", Wind(speed), s_fromMemory, 4));
        }

        if (drive.Engine == EngineState.Running && (!car.Electric || speed > 0))
        {
            BandLevels engine = car.Electric ? Motor(speed) : Engine(drive.EngineRpm ?? RpmAt(speed), car.Cylinders);
            all.Add(new("engine", null, car.Electric ? "motor" : "engine", engine, s_fromMemory, 4));
        }

        foreach (WindowOpening window in drive.OpenWindows.Where(w => w.OpenFraction > 0))
        {
            all.Add(new("window", window.PaneId, $"open {window.PaneId} window", OpenPane(speed, window.OpenFraction), s_open, 5));
        }

        if (drive.FanStep > 0)
        {
            all.Add(new("vent", null, "fan", Shaped(s_flowShape, s_blowerDba[drive.FanStep]), s_fromMemory, 4));
        }

        if (drive.Rain != Rain.None)
        {
            all.Add(new("roof", null, "rain", Shaped(s_rainShape, drive.Rain == Rain.Light ? 50 : 62), s_judgement, 6));
        }

        all.Add(new("roof", null, "outside", Shaped(s_flowShape, ShellAmbienceDba), s_judgement, 6));
        return drive.NoiseCorrection is { } correction ? [.. all.Select(c => Corrected(c, correction))] : all;
    }

    /// <summary>Firing frequency in Hz of a four-stroke engine: rpm/60 times half the cylinders.</summary>
    /// <param name="rpm">Engine speed in revolutions per minute.</param>
    /// <param name="cylinders">Number of cylinders.</param>
    public static double FiringFrequencyHz(double rpm, int cylinders) => rpm / 60 * cylinders / 2;

    /// <summary>
    /// Engine speed in rpm estimated from the road speed: the highest of six gears (24 to 130 rpm per km/h) that keeps 1400 rpm, or
    /// idle (judgement).
    /// </summary>
    /// <param name="speedKmPerHour">Road speed in km/h, 0 or more.</param>
    public static double RpmAt(double speedKmPerHour)
    {
        for (int gear = s_rpmPerKmPerHour.Length - 1; gear > 0; gear--)
        {
            double rpm = s_rpmPerKmPerHour[gear] * speedKmPerHour;
            if (rpm >= 1400)
            {
                return rpm;
            }
        }

        return Math.Max(IdleRpm, s_rpmPerKmPerHour[0] * speedKmPerHour);
    }

    /// <summary>
    /// Level in dB(A) at the driver's ear with all four side windows down: 3 dB (judgement) below the published mean of five
    /// convertibles with the top open, 85.3 dB(A) at 88.5 km/h and 89.9 at 120.7.
    /// </summary>
    /// <param name="speedKmPerHour">Road speed in km/h, above 0.</param>
    public static double AllWindowsOpenDba(double speedKmPerHour) =>
        OpenTopDba - AllPanesBelowOpenTopDb + (OpenTopDbPerDecade * Math.Log10(speedKmPerHour / OpenTopSpeedKmPerHour));

    private static readonly BandLevels s_flowShape = new(2, 0, -2, -4, -7, -12, -18);
    private static readonly BandLevels s_gustShape = new(6, 2, -2, -6, -10, -15, -21);
    private static readonly BandLevels s_rainShape = new(-6, -3, 0, 1, 0, -4, -9);
    private static readonly BandLevels s_motorShape = new(-6, -4, 0, 2, 2, 0, -6);

    private static NoiseContribution Corrected(NoiseContribution c, NoiseCorrection correction) => c with
    {
        LevelAtDriverEar = c.LevelAtDriverEar + correction.ShiftsDb,
        Provenance = new(string.IsNullOrWhiteSpace(correction.Source) ? "clip" : $"clip: {correction.Source.Trim()}", Trust.Derived),
        UncertaintyDb = Math.Min(c.UncertaintyDb, CorrectedUncertaintyDb),
    };

    private static BandLevels Tyre(double speed, RoadSurface road)
    {
        // Growth of rolling noise by band: light vehicles, Directive 2002/49/EC Annex II Table F-1 as replaced by (EU) 2021/1226.
        BandLevels roadDb = RoadOffset(road);
        double decades = Math.Log10(speed / 100);
        return BandLevels.Create(b => s_tyreAt100[b] + (RoadTrafficEmission.RollingSlope(b) * decades) + roadDb[b]);
    }

    // Surface dipole: sound power with the sixth power of speed, 60 lg v (Acoustics Today, Winter 2021).
    private static BandLevels Wind(double speed) => s_windAt100.Shifted(60 * Math.Log10(speed / 100));

    // Level 44 dB(A) at idle growing 33 lg rpm, falling 8 dB an octave above twice the firing frequency (starting values, from memory).
    private static BandLevels Engine(double rpm, int cylinders)
    {
        double corner = Math.Max(125, 2 * FiringFrequencyHz(rpm, cylinders));
        var shape = BandLevels.Create(b => -8 * Math.Max(0, Math.Log2(OctaveBands.CentresHz[b] / corner)));
        return Shaped(shape, 44 + (33 * Math.Log10(rpm / IdleRpm)));
    }

    private static BandLevels Motor(double speed) => Shaped(s_motorShape, 40 + (15 * Math.Log10(speed / 50)));

    private static BandLevels OpenPane(double speed, double openFraction)
    {
        double gust = speed > 0 ? Math.Pow(10, AllWindowsOpenDba(speed) / 10) : 0;
        double energy = openFraction / 4 * (gust + Math.Pow(10, StreetAmbienceDba / 10));
        return Shaped(s_gustShape, 10 * Math.Log10(energy));
    }

    // New asphalt about 6 dB below old concrete inside a car (Li and Qiao, abstract); the other surfaces by judgement.
    private static BandLevels RoadOffset(RoadSurface road) => road switch
    {
        RoadSurface.CoarseAsphalt => new(3, 4, 4, 3, 2, 2, 2),
        RoadSurface.Concrete => new(6, 7, 7.5, 7.5, 7, 6, 5),
        RoadSurface.Cobbles => new(12, 11, 9, 7, 5, 4, 4),
        RoadSurface.Gravel => new(6, 6, 6, 7, 8, 9, 9),
        _ => BandLevels.Flat(0),
    };

    private static void RequireValid(DriveConditions drive, NoiseCar car)
    {
        IReadOnlyList<Violation> violations = DriveConditionsRules.Validate(drive);
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        if (!car.Electric && !DriveConditionsRules.Cylinders.Contains(car.Cylinders))
        {
            throw new ArgumentOutOfRangeException(nameof(car), car.Cylinders, "An engine has 2 to 12 cylinders.");
        }
    }

    private static BandLevels Shaped(BandLevels shape, double levelDba) => shape.Shifted(levelDba - shape.AWeightedDb());
}
