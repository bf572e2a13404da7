using Quarterlight.Clips.Spectrum;
using Quarterlight.Quantities;

namespace Quarterlight.Clips.Judgement;

/// <summary>The octaves that hold most of a noise.</summary>
/// <param name="Words">Such as "mostly below 350 Hz".</param>
/// <param name="LowerHz">Lower edge, Hz.</param>
internal readonly record struct NoiseBand(string Words, double LowerHz);

/// <summary>Where in frequency most of a noise is.</summary>
internal static class NoiseBands
{
    // The fewest neighbouring octaves that hold this part of the A-weighted energy are named, when they are no more than three. Judgement.
    private const double Most = 0.6;
    private const int FewBands = 3;

    /// <summary>The band that holds most of it; null when it is spread wide.</summary>
    /// <param name="octaves">Levels in dB.</param>
    public static NoiseBand? Mostly(IReadOnlyList<BandLevel> octaves)
    {
        double[] energy = [.. octaves.Select(o => Math.Pow(10, o.LevelDb / 10) * AWeighting.PowerFactor(o.NominalHz))];
        double all = energy.Sum();
        for (int width = 1; width <= Math.Min(FewBands, energy.Length - 1) && all > 0; width++)
        {
            int best = Enumerable.Range(0, energy.Length - width + 1).MaxBy(i => energy.AsSpan(i, width).ToArray().Sum());
            if (energy.AsSpan(best, width).ToArray().Sum() >= Most * all)
            {
                return new(Words(octaves, energy, best, best + width - 1, all), octaves[best].NominalHz / Math.Sqrt(2));
            }
        }

        return null;
    }

    private static string Words(IReadOnlyList<BandLevel> octaves, double[] energy, int first, int last, double all)
    {
        // What little lies below or above does not keep it from being "below" or "above".
        double lower = octaves[first].NominalHz / Math.Sqrt(2), upper = octaves[last].NominalHz * Math.Sqrt(2);
        return energy.Take(first).Sum() < 0.1 * all && upper < 800
            ? $"mostly below {Hertz(upper)}"
            : energy.Skip(last + 1).Sum() < 0.1 * all && lower > 1200
                ? $"mostly above {Hertz(lower)}"
                : first == last ? $"mostly around {Hertz(octaves[first].NominalHz)}" : $"mostly {Hertz(lower)} to {Hertz(upper)}";
    }

    /// <summary>A frequency to two figures.</summary>
    public static string Hertz(double hz)
    {
        double step = Math.Pow(10, Math.Floor(Math.Log10(hz)) - 1) * 5;
        double rounded = step < hz / 8 ? Math.Round(hz / step) * step : Math.Round(hz / (step / 5)) * step / 5;
        return rounded >= 1000 ? $"{Say.Limit(rounded / 1000)} kHz" : $"{Say.Limit(rounded)} Hz";
    }
}
