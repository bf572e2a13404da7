using Quarterlight.Quantities;

namespace Quarterlight.Clips.Judgement;

/// <summary>A comparison with a plan in one sentence.</summary>
internal static class ComparisonWords
{
    // Less than this is no difference; a spread of differences smaller than this names no band. Judgement.
    private const double SameDb = 1, SpreadDb = 3;

    /// <summary>Such as "The car is 4 dB louder than forecast, mostly at 125 to 250 Hz; speech over noise 14 dB instead of 18 dB (±5)."</summary>
    public static string Of(PlanComparison comparison)
    {
        double? noise = comparison.NoiseDba.DifferenceDb;
        string against = comparison.TiedToSpeech ? "Against the speech the car" : "The car";
        string car = noise switch
        {
            null => "The car's noise could not be measured",
            { } d when Math.Abs(d) < SameDb => $"{against} is as loud as forecast",
            { } d => $"{against} is {Say.Number(Math.Abs(d))} dB {(d > 0 ? "louder" : "quieter")} than forecast{Mostly(comparison, d)}",
        };
        string plusMinus = $"(±{Say.Number(comparison.PlusMinusDb)})";
        string ratio = comparison.SpeechToNoiseDb.MeasuredDb is { } measured
            ? $"speech over noise {Say.Number(measured)} dB instead of {Say.Number(comparison.SpeechToNoiseDb.PredictedDb)} dB {plusMinus}"
            : $"no speech was heard to compare {plusMinus}";
        return $"{car}; {ratio}.";
    }

    // The octaves around the one that adds or spares most A-weighted energy, as long as they differ by half as many dB or more.
    private static string Mostly(PlanComparison comparison, double overall)
    {
        double?[] differences = [.. comparison.Bands.Select(b => b.Noise.DifferenceDb * Math.Sign(overall))];
        if (differences.Count(d => d is not null) < 2 || differences.Max() - differences.Min() < SpreadDb)
        {
            return "";
        }

        int top = Enumerable.Range(0, differences.Length).Where(b => differences[b] is > 0).DefaultIfEmpty(-1).MaxBy(b => b < 0 ? 0 : Weight(comparison.Bands[b], b));
        if (top < 0)
        {
            return "";
        }

        int first = top, last = top;
        while (first > 0 && differences[first - 1] >= differences[top] / 2)
        {
            first--;
        }

        while (last < differences.Length - 1 && differences[last + 1] >= differences[top] / 2)
        {
            last++;
        }

        if (first == 0 && last == differences.Length - 1)
        {
            return "";
        }

        return first == last
            ? $", mostly at {NoiseBands.Hertz(comparison.Bands[first].CentreHz)}"
            : $", mostly at {Say.Limit(comparison.Bands[first].CentreHz)} to {Say.Limit(comparison.Bands[last].CentreHz)} Hz";
    }

    private static double Weight(ComparedBand band, int b) => Math.Abs(
        Math.Pow(10, (band.Noise.MeasuredDb!.Value + OctaveBands.AWeightingDb[b]) / 10) - Math.Pow(10, (band.Noise.PredictedDb + OctaveBands.AWeightingDb[b]) / 10));
}
