using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Synthesis;

/// <summary>
/// Fans, blowers and air conditioning, made: steady broadband flow noise with the shape of ducts and vents, a blade-pass tone with its
/// multiples, motor or compressor lines, and steps of the fan.
/// </summary>
/// <remarks>
/// Blade pass: blades x rpm / 60 Hz (textbook). Flow noise of a duct falls by 3 to 9 dB an octave above a corner, lines are 0 to 15 dB weak to clear: judgement.
/// </remarks>
public static class FanSound
{
    private const int Rate = 16000;

    /// <summary>Blade-pass frequency, Hz.</summary>
    /// <param name="rpm">Speed of the rotor, rpm.</param>
    /// <param name="blades">Blades of the rotor.</param>
    public static double BladePassHz(double rpm, int blades) => rpm / 60 * blades;

    /// <summary>Makes one.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="seconds">Length, s.</param>
    /// <param name="bladePassHz">Blade-pass frequency, Hz; drawn when not given.</param>
    /// <returns>Samples at 16 kHz.</returns>
    public static float[] Make(int seed, double seconds, double? bladePassHz = null)
    {
        var source = new NoiseSource(seed);
        var flow = new double[(int)(seconds * Rate)];
        AddFlow(source, flow);
        double level = Math.Sqrt(flow.Sum(x => x * x) / flow.Length);
        int blades = source.Random.Next(3, 44);
        double bladeHz = bladePassHz ?? Math.Clamp(BladePassHz(source.LogBetween(500, 3600), blades), 40, 1800);
        double rotorHz = bladeHz / blades;
        if (bladePassHz is not null || source.Chance(0.65))
        {
            AddLines(source, flow, bladeHz, level * source.LogBetween(0.06, 0.6), source.Random.Next(1, 5), rotorHz);
        }

        if (source.Chance(0.55))
        {
            AddRotor(source, flow, source.LogBetween(8, 62), level * source.LogBetween(0.1, 1));
        }

        if (source.Chance(0.35))
        {
            double mains = source.Chance(0.5) ? 50 : 60;
            AddLines(source, flow, mains * (source.Chance(0.5) ? 1 : 2), level * source.LogBetween(0.05, 0.5), source.Random.Next(2, 8), 0);
        }

        Rooms.Perhaps(source, flow, 0.75);
        AddSteps(source, flow);
        return NoiseSource.AtLevel(flow, source.Between(-48, -16));
    }

    private static void AddFlow(NoiseSource source, double[] to)
    {
        double tilt = source.Between(0, 1);
        var filters = new List<Biquad> { Biquad.HighPass(source.LogBetween(20, 120), 0.6), Biquad.LowPass(source.LogBetween(250, 6000), 0.55) };
        if (source.Chance(0.4))
        {
            filters.Add(Biquad.LowPass(source.LogBetween(800, 7000), 0.55));
        }

        for (int i = source.Random.Next(1, 6); i > 0; i--)
        {
            filters.Add(Biquad.Bell(source.LogBetween(80, 5000), source.LogBetween(0.6, 6), source.Between(-5, 9)));
        }

        double hiss = source.Chance(0.6) ? source.LogBetween(0.003, 0.2) : 0;
        for (int i = 0; i < to.Length; i++)
        {
            double x = (tilt * source.Pink()) + ((1 - tilt) * source.Normal() * 0.3);
            foreach (Biquad filter in filters)
            {
                x = filter.Next(x);
            }

            to[i] = x + (hiss * source.Normal());
        }
    }

    private static void AddLines(NoiseSource source, double[] to, double hz, double size, int multiples, double rotorHz)
    {
        // Speed holds within a few tenths of a percent; the blades beat a little once a turn.
        double[] wander = source.Wander((to.Length / 160) + 2, 0.01, 1.5);
        double spread = source.LogBetween(0.0003, 0.004), beat = rotorHz > 0 ? source.Between(0, 0.3) : 0;
        double fall = source.Between(0.4, 0.9);
        double phase = source.Between(0, 6), turn = 0;
        double[] phases = [.. Enumerable.Range(0, multiples + 1).Select(_ => source.Between(0, 6.28))];
        for (int i = 0; i < to.Length; i++)
        {
            double now = 1 + (spread * wander[i / 160]);
            phase += 2 * Math.PI * hz * now / Rate;
            turn += 2 * Math.PI * rotorHz * now / Rate;
            double sum = 0, weight = size;
            for (int n = 1; n <= multiples && n * hz < 7000; n++, weight *= fall)
            {
                sum += weight * Math.Sin((n * phase) + phases[n]);
            }

            to[i] += sum * (1 + (beat * Math.Sin(turn)));
        }
    }

    // Once a turn and its multiples: imbalance, bearings, a compressor's strokes.
    private static void AddRotor(NoiseSource source, double[] to, double hz, double size)
    {
        double phase = 0, spread = source.LogBetween(0.0003, 0.003), fall = source.Between(0.2, 1.2);
        double[] wander = source.Wander((to.Length / 160) + 2, 0.01, 1.5);
        double[] weights = [.. Enumerable.Range(1, 40).Select(n => source.LogBetween(0.03, 1) / Math.Pow(n, fall))];
        double[] phases = [.. weights.Select(_ => source.Between(0, 6.28))];
        for (int i = 0; i < to.Length; i++)
        {
            phase += 2 * Math.PI * hz * (1 + (spread * wander[i / 160])) / Rate;
            double sum = 0;
            for (int n = 0; n < weights.Length; n++)
            {
                sum += weights[n] * Math.Sin(((n + 1) * phase) + phases[n]);
            }

            to[i] += size * 0.5 * sum;
        }
    }

    private static void AddSteps(NoiseSource source, double[] to)
    {
        double stepDb = source.Chance(0.12) ? source.Between(-8, 8) : 0, slowDb = source.Between(0, 0.6);
        double at = source.Between(0.25, 0.75) * to.Length;
        double[] wander = source.Wander((to.Length / 160) + 2, 0.01, 1);
        for (int i = 0; i < to.Length; i++)
        {
            double step = Math.Clamp((i - at) / (0.6 * Rate), 0, 1) * stepDb;
            to[i] *= Math.Pow(10, (step + (slowDb * wander[i / 160])) / 20);
        }
    }
}
