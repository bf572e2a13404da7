using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing;

/// <summary>One kind of noise as drawn.</summary>
/// <param name="Words">What it is, safe to draw.</param>
/// <param name="LevelsDb">By octave, dB re 20 µPa.</param>
/// <param name="LevelDba">Together, dB(A).</param>
internal sealed record NoiseKind(string Words, BandLevels LevelsDb, double LevelDba);

/// <summary>What of a noise report the picture shows.</summary>
internal sealed class NoiseView
{
    /// <summary>Kinds with a line of their own; more could not be told apart.</summary>
    public const int MostKinds = 5;

    private const int LongestName = 60, LongestWords = 40;

    public NoiseView(NoiseReport report, SpeedUnit unit)
    {
        Report = report;
        Unit = unit;
        NoiseShare[] shares = [.. report.Noise.Shares.Where(s => double.IsFinite(s.LevelDba)).OrderByDescending(s => s.LevelDba)];
        // The last line is all the rest together when there are more.
        int own = shares.Length > MostKinds ? MostKinds - 1 : shares.Length;
        List<NoiseKind> kinds = [.. shares.Take(own).Select(s => new NoiseKind(UserText.Cut(UserText.Clean(s.Contribution.Words), LongestWords), s.Contribution.LevelAtDriverEar, s.LevelDba))];
        if (own < shares.Length)
        {
            BandLevels rest = shares.Skip(own).Select(s => s.Contribution.LevelAtDriverEar).Aggregate(BandLevels.EnergySum);
            kinds.Add(new($"{shares.Length - own} more together", rest, rest.AWeightedDb()));
        }

        Kinds = kinds;
        Worst = report.Talkers.Where(t => double.IsFinite(t.SnrDba)).MinBy(t => t.SnrDba);
        Judged = report.Table.Any(r => r.Cells.Any(c => c.Verdict is not null));
    }

    public NoiseReport Report { get; }

    public SpeedUnit Unit { get; }

    /// <summary>Kinds of noise, loudest first.</summary>
    public IReadOnlyList<NoiseKind> Kinds { get; }

    /// <summary>Talker with the least speech over noise; null when nobody talks.</summary>
    public TalkerNoise? Worst { get; }

    /// <summary>Name of that talker, safe to draw.</summary>
    public string WorstName => Worst is null ? "" : UserText.Cut(UserText.Clean(Worst.DisplayName) is { Length: > 0 } name ? name : Worst.TalkerId, LongestName);

    /// <summary>True when the table has verdicts.</summary>
    public bool Judged { get; }

    public double SpeedKmPerHour => Report.Noise.Drive.SpeedKmPerHour;

    /// <summary>Range of a levels axis in tens for several spectra.</summary>
    public static (double LowDb, double HighDb) Range(IEnumerable<BandLevels> spectra)
    {
        double[] levels = [.. spectra.SelectMany(s => s.ToArray()).Where(double.IsFinite).Select(db => Math.Clamp(db, -100, 200))];
        if (levels.Length == 0)
        {
            return (0, 60);
        }

        double high = 10 * Math.Ceiling((levels.Max() + 3) / 10);
        return (Math.Clamp(10 * Math.Floor((levels.Min() - 2) / 10), high - 60, high - 40), high);
    }
}
