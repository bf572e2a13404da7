namespace Quarterlight.Clips.Spectrum;

/// <summary>Mains hum of one mains frequency.</summary>
/// <param name="MainsHz">50 or 60.</param>
/// <param name="IsPresent">True from a confidence of 0.5.</param>
/// <param name="LevelDb">Level of the found lines together, less what their neighbours have, dBFS (AES17); silence when none is found.</param>
/// <param name="Lines">Multiples found, 1 = the mains frequency itself.</param>
/// <param name="Confidence">0 to 1, judgement: by height of the lines and their number.</param>
public sealed record HumReport(double MainsHz, bool IsPresent, double LevelDb, IReadOnlyList<int> Lines, double Confidence);

/// <summary>
/// Mains hum at 50 and 60 Hz and their multiples: lines as narrow as the frame allows, at the right place, that stay over the clip.
/// </summary>
/// <remarks>
/// A line counts when its three bins stand above the mean of the bins 4 to 9 away on each side by 7 dB + 13 dB / √frames, and its peak, drawn as a
/// parabola in dB, lies within 0.15 % or a third of a bin of the multiple. Limits are judgement. An engine that keeps such a firing frequency
/// to 0.15 % through the clip cannot be told apart.
/// </remarks>
/// <param name="bins">Bins of a spectrum.</param>
/// <param name="binHz">Distance of the bins, Hz.</param>
public sealed class Hum(int bins, double binHz)
{
    private const int MaxMultiple = 12;
    private const double PlaceTolerance = 0.0015;
    private const double LeastDb = 7;
    private const double FewFramesDb = 13;
    private const int SideFrom = 4;
    private const int SideTo = 9;
    private readonly SpectrumMean _mean = new(bins);

    /// <summary>Frames taken.</summary>
    public long Count => _mean.Count;

    /// <summary>Takes a frame's power.</summary>
    public void Add(ReadOnlySpan<double> power) => _mean.Add(power);

    /// <summary>Result for one mains frequency, 50 or 60 Hz.</summary>
    public HumReport Report(double mainsHz)
    {
        ReadOnlySpan<double> power = _mean.Mean();
        var lines = new List<int>();
        double sum = 0;
        double evidence = 0;
        double needDb = LeastDb + (FewFramesDb / Math.Sqrt(Math.Max(1, _mean.Count)));
        for (int n = 1; _mean.Count > 0 && n <= MaxMultiple && n * mainsHz < Decimator.PassHz - (SideTo * binHz); n++)
        {
            // 300 and 600 Hz belong to both mains frequencies and say nothing alone.
            (double heightDb, double net) = Line(power, n * mainsHz / binHz);
            if (heightDb >= needDb)
            {
                lines.Add(n);
                sum += net;
                evidence += n * mainsHz % 300 == 0 ? 0 : Math.Min(2, heightDb / needDb) - 0.5;
            }
        }

        double confidence = Ramp.Up(evidence, 0, 1.5);
        bool present = confidence >= 0.5;
        return new(mainsHz, present, present ? FullScale.Level(sum) : FullScale.SilenceDb, present ? lines : [], confidence);
    }

    private static (double HeightDb, double Net) Line(ReadOnlySpan<double> power, double at)
    {
        int peak = (int)Math.Round(at);
        int reach = (int)Math.Ceiling(at * PlaceTolerance);
        for (int k = (int)Math.Round(at) - reach; k <= (int)Math.Round(at) + reach; k++)
        {
            peak = power[k] > power[peak] ? k : peak;
        }

        double line = power[peak - 1] + power[peak] + power[peak + 1];
        double side = 0;
        for (int d = SideFrom; d <= SideTo; d++)
        {
            side += power[peak - d] + power[peak + d];
        }

        side *= 3.0 / (2 * (SideTo - SideFrom + 1));
        if (!(side > 0))
        {
            side = line * 1e-12;
        }

        double a = Math.Log(power[peak - 1] + 1e-300), b = Math.Log(power[peak] + 1e-300), c = Math.Log(power[peak + 1] + 1e-300);
        double bend = a - (2 * b) + c;
        double place = peak + (bend < 0 ? Math.Clamp(0.5 * (a - c) / bend, -0.5, 0.5) : 9);
        bool inPlace = Math.Abs(place - at) <= Math.Max(0.34, at * PlaceTolerance);
        return inPlace && line > 0 ? (10 * Math.Log10(line / side), line - side) : (0, 0);
    }
}
