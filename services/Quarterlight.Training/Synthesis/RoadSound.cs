using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Synthesis;

/// <summary>Sounds that carry none of the tags, made: road noise, rain, lone tones and hum.</summary>
/// <remarks>
/// Road noise in a cabin falls steeply above 100 to 400 Hz, with the tyre's air column near 200 to 250 Hz; rain is many short taps and a hiss:
/// common knowledge of the trade, no source.
/// </remarks>
public static class RoadSound
{
    private const int Rate = 16000;

    /// <summary>Makes road noise, rain or a hum.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="seconds">Length, s.</param>
    /// <returns>Samples at 16 kHz.</returns>
    public static float[] Make(int seed, double seconds)
    {
        var source = new NoiseSource(seed);
        int length = (int)(seconds * Rate);
        double[] sound = source.Random.Next(0, 10) switch
        {
            < 6 => Raw(source, length),
            < 9 => Rain(source, length),
            _ => Hum(source, length),
        };
        Rooms.Perhaps(source, sound, 0.5);
        return NoiseSource.AtLevel(sound, source.Between(-45, -10));
    }

    internal static double[] Raw(NoiseSource source, int length)
    {
        var filters = new List<Biquad>
        {
            Biquad.HighPass(source.LogBetween(15, 60)), Biquad.LowPass(source.LogBetween(90, 500), 0.5),
            Biquad.Bell(source.Between(180, 260), source.Between(2, 6), source.Between(0, 9)),
            Biquad.Bell(source.LogBetween(30, 90), source.Between(1, 4), source.Between(-3, 9)),
        };
        double hiss = source.LogBetween(0.003, 0.08);
        Biquad treble = Biquad.LowPass(source.LogBetween(800, 4000), 0.5);
        double[] wander = source.Wander((length / 160) + 2, 0.01, source.LogBetween(0.1, 1));
        double slowDb = source.Between(0.2, 2), jointHz = source.Chance(0.3) ? source.Between(0.8, 4) : 0, joint = source.Between(1, 4);
        var sound = new double[length];
        for (int i = 0; i < length; i++)
        {
            double x = source.Pink();
            foreach (Biquad filter in filters)
            {
                x = filter.Next(x);
            }

            double t = i / (double)Rate;
            double beat = jointHz > 0 ? joint * Math.Exp(-30 * (t * jointHz % 1) / jointHz) : 0;
            sound[i] = (x + (hiss * treble.Next(source.Normal()))) * Math.Pow(10, slowDb * wander[i / 160] / 20) * (1 + beat);
        }

        return sound;
    }

    private static double[] Rain(NoiseSource source, int length)
    {
        double rate = source.LogBetween(20, 900), hiss = source.LogBetween(0.02, 0.5);
        Biquad colour = Biquad.HighPass(source.LogBetween(200, 2500), 0.6), top = Biquad.LowPass(source.LogBetween(3000, 7800), 0.6);
        Biquad roof = Biquad.Bell(source.LogBetween(150, 1200), source.Between(1, 4), source.Between(0, 10));
        double decay = Math.Exp(-1 / (source.LogBetween(0.0006, 0.006) * Rate)), drop = 0;
        var sound = new double[length];
        for (int i = 0; i < length; i++)
        {
            if (source.Chance(rate / Rate))
            {
                drop += Math.Exp(0.8 * source.Normal());
            }

            sound[i] = roof.Next(top.Next(colour.Next((drop + hiss) * source.Normal())));
            drop *= decay;
        }

        return sound;
    }

    private static double[] Hum(NoiseSource source, int length)
    {
        double hz = source.Chance(0.5) ? source.Chance(0.5) ? 50 : 60 : source.LogBetween(90, 3000);
        int multiples = source.Random.Next(1, 12);
        double[] weights = [.. Enumerable.Range(1, multiples).Select(n => source.LogBetween(0.1, 1) / n)];
        double noise = source.LogBetween(0.001, 0.05);
        var sound = new double[length];
        for (int i = 0; i < length; i++)
        {
            double sum = noise * source.Pink();
            for (int n = 1; n <= multiples && n * hz < 7500; n++)
            {
                sum += weights[n - 1] * Math.Sin(2 * Math.PI * n * hz * i / Rate);
            }

            sound[i] = sum;
        }

        return sound;
    }
}
