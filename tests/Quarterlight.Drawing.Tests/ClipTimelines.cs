using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;

namespace Quarterlight.Drawing.Tests;

/// <summary>Timelines as a car with a talker might give: noise falling with frequency, an engine line, voiced phrases with harmonics.</summary>
internal static class ClipTimelines
{
    private const double FrameSeconds = 0.02133;
    private const int MostBands = 96;

    public static ClipTimeline Make(double seconds, int rateHz, IReadOnlyList<TimeStretch> phrases, double[] noiseDb)
    {
        double column = FrameSeconds;
        while (seconds / column > ClipTimeline.MostColumns)
        {
            column *= 2;
        }

        int columns = Math.Max(1, (int)(seconds / column));
        double[] centres = [.. Enumerable.Range(0, MostBands).Select(i => 50 * Math.Pow(320, i / (MostBands - 1.0))).Where(hz => hz < rateHz / 2.0)];
        float[] bands = new float[columns * centres.Length], rms = new float[columns], peaks = new float[columns];
        uint seed = 1;
        for (int c = 0; c < columns; c++)
        {
            double t = (c + 0.5) * column, sum = 0;
            bool speaks = phrases.Any(p => t >= p.StartSeconds && t <= p.EndSeconds);
            double syllable = speaks ? Math.Pow(Math.Abs(Math.Sin(Math.PI * 2.6 * t)), 0.7) : 0, pitch = 130 + (25 * Math.Sin(3.1 * t));
            for (int b = 0; b < centres.Length; b++)
            {
                seed = (seed * 1664525) + 1013904223;
                double hz = centres[b], octave = Math.Log2(hz / 31.5), db = Between(noiseDb, octave) - 9 + (5 * ((seed >> 8) / (double)(1 << 24))) - 2;
                db += Math.Abs(hz - 82) < 3.5 ? 14 : 0;
                if (syllable > 0.05)
                {
                    double ripple = hz < 1800 ? 6 * Math.Cos(2 * Math.PI * hz / pitch) : 0;
                    double formants = -28 - (5 * Math.Abs(Math.Log2(hz / 520))) + (7 * Math.Exp(-Math.Pow(Math.Log2(hz / (1500 + (500 * Math.Sin(4 * t)))) * 3, 2)));
                    db = Math.Max(db, hz < 90 ? -200 : formants + ripple + (20 * Math.Log10(syllable)));
                }

                bands[(c * centres.Length) + b] = (float)db;
                sum += Math.Pow(10, db / 10);
            }

            // The bands overlap a little; what is left is near the A-weighted figures of the clip.
            rms[c] = (float)(10 * Math.Log10(sum)) - 14;
            peaks[c] = (float)Math.Min(0, rms[c] + 10 + (4 * ((seed >> 8) / (double)(1 << 24))));
        }

        return new() { ColumnSeconds = column, BandCentresHz = centres, BandLevelsDb = bands, RmsDb = rms, PeakDb = peaks };
    }

    private static double Between(double[] octaves, double octave)
    {
        int low = Math.Clamp((int)octave, 0, octaves.Length - 2);
        return octaves[low] + ((octave - low) * (octaves[low + 1] - octaves[low]));
    }
}
