using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>
/// How much a voice's tone changes when the head turns: importance-weighted rms over bands of the difference between a pose's
/// useful spectrum and the pose average, level differences taken out; the largest over poses, in dB.
/// </summary>
internal static class ToneChange
{
    public static double Between(SpotFields fields, SpotSums sums, int spot, int talker, in AimCoefficients aim)
    {
        int first = fields.FirstVoice[talker], count = fields.FirstVoice[talker + 1] - first;
        if (count < 2)
        {
            return 0;
        }

        Span<double> db = stackalloc double[count * OctaveBands.Count];
        for (int p = 0; p < count; p++)
        {
            BandVector log = (TenSums.Received(sums.Useful(spot, first + p), aim) + AimScore.Floor).Log2();
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                db[(p * OctaveBands.Count) + b] = 3.0103 * log[b];
            }
        }

        return Largest(db, count);
    }

    /// <summary>The measure itself, from spectra in dB laid out pose by pose.</summary>
    internal static double Largest(ReadOnlySpan<double> db, int poses)
    {
        ReadOnlySpan<double> importance = SpeechIntelligibility.OctaveImportance;
        Span<double> mean = stackalloc double[OctaveBands.Count];
        for (int i = 0; i < db.Length; i++)
        {
            mean[i % OctaveBands.Count] += db[i] / poses;
        }

        double largest = 0;
        for (int p = 0; p < poses; p++)
        {
            double shift = 0, square = 0;
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                double difference = db[(p * OctaveBands.Count) + b] - mean[b];
                shift += importance[b] * difference;
                square += importance[b] * difference * difference;
            }

            largest = Math.Max(largest, Math.Sqrt(Math.Max(0, square - (shift * shift))));
        }

        return largest;
    }
}
