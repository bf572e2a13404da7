using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Synthesis;

/// <summary>
/// Four-stroke engines, made: each firing is a short pressure pulse that rings in exhaust, body and cabin; cylinders differ, speed wanders or
/// glides, load opens the treble, combustion and valve train add noise in step with the firings, and road noise may cover it.
/// </summary>
/// <remarks>Firing frequency: cylinders x rpm / 120 Hz (textbook, four-stroke). Sizes, rings and spreads are judgement.</remarks>
public static class EngineSound
{
    private const int Rate = 16000;

    /// <summary>Firing frequency of a four-stroke engine, Hz.</summary>
    public static double FiringHz(double rpm, int cylinders) => rpm * cylinders / 120;

    /// <summary>Makes one.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="seconds">Length, s.</param>
    /// <param name="rpm">Speed, rpm; drawn, and perhaps gliding, when not given.</param>
    /// <param name="cylinders">Cylinders; drawn when not given.</param>
    /// <returns>Samples at 16 kHz.</returns>
    public static float[] Make(int seed, double seconds, double? rpm = null, int? cylinders = null)
    {
        var source = new NoiseSource(seed);
        int count = cylinders ?? source.Random.Next(0, 10) switch { 0 => 1, 1 => 2, 2 => 3, 3 => 6, 4 => 8, 5 => 5, 6 => 12, _ => 4 };
        double from = rpm ?? (source.Chance(0.35) ? source.Between(600, 1100) : source.LogBetween(1000, 5500));
        double to = rpm ?? (source.Chance(0.35) ? Math.Clamp(from * source.LogBetween(0.6, 1.8), 600, 6500) : from);
        var sound = new double[(int)(seconds * Rate)];
        double[] noise = Firings(source, sound, from, to, count);
        Ring(source, sound, source.LogBetween(0.02, 0.6), noise);
        if (source.Chance(0.6))
        {
            AddRoad(source, sound, source.LogBetween(0.05, 1.5));
        }

        Rooms.Perhaps(source, sound, 0.6);
        return NoiseSource.AtLevel(sound, source.Between(-42, -10));
    }

    // Pulses into the sound; returns the envelope that drives the noise.
    private static double[] Firings(NoiseSource source, double[] sound, double fromRpm, double toRpm, int cylinders)
    {
        double[] sizes = [.. Enumerable.Range(0, cylinders).Select(_ => 1 + (0.2 * source.Normal()))];
        double jitter = source.LogBetween(0.001, 0.02), rough = source.LogBetween(0.01, 0.2), width = source.LogBetween(0.0004, 0.004);
        double decay = Math.Exp(-1 / (width * Rate)), hold = Math.Exp(-1 / (source.LogBetween(0.002, 0.03) * Rate));
        double[] wander = source.Wander((sound.Length / 160) + 2, 0.01, source.LogBetween(0.2, 2));
        double[] envelope = new double[sound.Length];
        double phase = 0, next = 1, pulse = 0, held = 0;
        int cylinder = 0;
        for (int i = 0; i < sound.Length; i++)
        {
            double rpm = (fromRpm + ((toRpm - fromRpm) * i / sound.Length)) * (1 + (0.008 * wander[i / 160]));
            phase += FiringHz(rpm, cylinders) / Rate;
            if (phase >= next)
            {
                double size = Math.Max(0.1, sizes[cylinder++ % cylinders] * (1 + (rough * source.Normal())));
                pulse += size;
                held += size;
                next = Math.Floor(phase) + 1 + (jitter * source.Normal());
            }

            sound[i] = pulse;
            envelope[i] = held;
            pulse *= decay;
            held *= hold;
        }

        return envelope;
    }

    private static void Ring(NoiseSource source, double[] sound, double noiseShare, double[] envelope)
    {
        int modes = source.Random.Next(4, 10);
        Biquad[] bodies = [.. Enumerable.Range(0, modes).Select(_ => Biquad.BandPass(source.LogBetween(45, 3000), source.LogBetween(1, 15)))];
        double[] weights = [.. bodies.Select(_ => source.LogBetween(0.1, 1.5))];
        Biquad low = Biquad.LowPass(source.LogBetween(120, 1200), 0.7), block = Biquad.HighPass(source.LogBetween(15, 45));
        Biquad hiss = Biquad.BandPass(source.LogBetween(250, 2500), 0.4);
        Biquad muffle = Biquad.LowPass(source.LogBetween(400, 7000), 0.55);
        double direct = source.Between(0.1, 1), steady = source.LogBetween(0.05, 2);
        for (int i = 0; i < sound.Length; i++)
        {
            double x = block.Next(sound[i]), sum = direct * low.Next(x);
            for (int m = 0; m < modes; m++)
            {
                sum += weights[m] * bodies[m].Next(x);
            }

            sound[i] = muffle.Next(sum + (noiseShare * (envelope[i] + steady) * hiss.Next(source.Normal())));
        }
    }

    private static void AddRoad(NoiseSource source, double[] sound, double share)
    {
        double[] road = RoadSound.Raw(source, sound.Length);
        double a = Math.Sqrt(sound.Sum(x => x * x)), b = Math.Sqrt(road.Sum(x => x * x)) + 1e-12;
        for (int i = 0; i < sound.Length; i++)
        {
            sound[i] += share * a / b * road[i];
        }
    }
}
