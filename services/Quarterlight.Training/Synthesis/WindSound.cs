using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Synthesis;

/// <summary>
/// Wind, made: turbulence at the capsule with a steep low end, gusts that come and go over a third of a second to a few seconds and brighten the
/// sound as they grow, leaves and gaps that hiss or howl, and the beat of an open window.
/// </summary>
/// <remarks>
/// Turbulent pressure at a microphone falls steeply with frequency (van den Berg, The sounds of high winds, ch. VIII, used in the noise forecast). Gust
/// sizes of 0.4 to 6 dB, howls and window beat (12 to 28 Hz) are judgement.
/// </remarks>
public static class WindSound
{
    private const int Rate = 16000;

    /// <summary>Makes one.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="seconds">Length, s.</param>
    /// <returns>Samples at 16 kHz.</returns>
    public static float[] Make(int seed, double seconds)
    {
        var source = new NoiseSource(seed);
        int length = (int)(seconds * Rate);
        int steps = (length / 160) + 2;
        double[] gust = Gusts(source, steps);
        var sound = new double[length];
        double rumble = source.Chance(0.75) ? source.LogBetween(0.2, 1) : 0;
        AddRumble(source, sound, gust, rumble);
        if (rumble == 0 || source.Chance(0.75))
        {
            AddLeaves(source, sound, gust, (rumble == 0 ? 1 : source.LogBetween(0.05, 0.7)));
        }

        if (source.Chance(0.15))
        {
            AddWindowBeat(source, sound, gust);
        }

        Rooms.Perhaps(source, sound, 0.3);
        return NoiseSource.AtLevel(sound, source.Between(-52, -12));
    }

    // In dB, one value each 10 ms: slow gusts and quick flutter.
    private static double[] Gusts(NoiseSource source, int steps)
    {
        double sizeDb = source.LogBetween(0.4, 6), flutterDb = source.LogBetween(0.1, 1.5);
        double[] slow = source.Wander(steps, 0.01, source.LogBetween(0.3, 3)), quick = source.Wander(steps, 0.01, source.LogBetween(0.04, 0.2));
        return [.. slow.Select((s, i) => (sizeDb * s) + (flutterDb * quick[i]))];
    }

    private static void AddRumble(NoiseSource source, double[] sound, double[] gustDb, double size)
    {
        Biquad low = Biquad.LowPass(source.LogBetween(20, 600), 0.5), under = Biquad.HighPass(source.LogBetween(4, 40));
        Biquad soft = Biquad.LowPass(source.LogBetween(100, 1500), 0.6);
        for (int i = 0; i < sound.Length; i++)
        {
            double x = soft.Next(under.Next(low.Next(source.Pink())));
            sound[i] += size * 4 * x * Math.Pow(10, gustDb[i / 160] / 20);
        }
    }

    private static void AddLeaves(NoiseSource source, double[] sound, double[] gustDb, double size)
    {
        double hz = source.LogBetween(120, 1600), width = source.LogBetween(0.5, 2.5), howl = source.Chance(0.35) ? source.LogBetween(2, 14) : 0;
        double hiss = source.Chance(0.6) ? source.LogBetween(0.005, 0.3) : 0, grow = source.Between(1, 1.8), bend = source.Between(0.005, 0.04);
        double[] drift = source.Wander(gustDb.Length, 0.01, 1.2);
        Biquad broad = Biquad.BandPass(hz, width), top = Biquad.LowPass(source.LogBetween(1000, 7000), 0.6), steep = Biquad.LowPass(hz * source.LogBetween(1.2, 8), 0.6);
        double low = 0, band = 0;
        for (int i = 0; i < sound.Length; i++)
        {
            double gain = Math.Pow(10, grow * gustDb[i / 160] / 20), white = source.Normal();
            double x = steep.Next(broad.Next(white)) + (hiss * top.Next(white));
            if (howl > 0)
            {
                // A state-variable resonance whose frequency rises with the gust.
                double f = 2 * Math.Sin(Math.PI * Math.Clamp(hz * (1 + (bend * gustDb[i / 160]) + (0.08 * drift[i / 160])), 60, 2500) / Rate);
                low += f * band;
                band += f * (white - low - (band / howl));
                x += 0.6 * band / Math.Sqrt(howl);
            }

            sound[i] += size * 0.5 * gain * x;
        }
    }

    private static void AddWindowBeat(NoiseSource source, double[] sound, double[] gustDb)
    {
        double hz = source.Between(12, 28), size = source.LogBetween(0.2, 2), phase = 0;
        double[] wander = source.Wander(gustDb.Length, 0.01, 0.3);
        for (int i = 0; i < sound.Length; i++)
        {
            phase += 2 * Math.PI * hz * (1 + (0.05 * wander[i / 160])) / Rate;
            sound[i] += size * (Math.Sin(phase) + (0.3 * Math.Sin(2 * phase))) * Math.Pow(10, gustDb[i / 160] / 40);
        }
    }
}
