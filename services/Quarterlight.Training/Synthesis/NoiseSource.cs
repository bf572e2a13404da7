namespace Quarterlight.Training.Synthesis;

/// <summary>Random building blocks of made sounds, all from one seed.</summary>
internal sealed class NoiseSource(int seed)
{
    private readonly double[] _pink = new double[3];

    public Random Random { get; } = new(seed);

    public double Between(double from, double to) => from + ((to - from) * Random.NextDouble());

    /// <summary>Evenly spread on a logarithmic scale.</summary>
    public double LogBetween(double from, double to) => Math.Exp(Between(Math.Log(from), Math.Log(to)));

    public bool Chance(double p) => Random.NextDouble() < p;

    /// <summary>Standard normal, by Box and Muller.</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Random.NextDouble())) * Math.Cos(2 * Math.PI * Random.NextDouble());

    /// <summary>Pink within 0.5 dB above 50 Hz: three poles (P. Kellet's economy filter, coefficients from memory).</summary>
    public double Pink()
    {
        double white = Normal();
        _pink[0] = (0.99765 * _pink[0]) + (white * 0.0990460);
        _pink[1] = (0.96300 * _pink[1]) + (white * 0.2965164);
        _pink[2] = (0.57000 * _pink[2]) + (white * 1.0526913);
        return (_pink[0] + _pink[1] + _pink[2] + (white * 0.1848)) * 0.3;
    }

    /// <summary>A wandering value with mean 0 and deviation 1, of a given time constant in s, one value a step.</summary>
    public double[] Wander(int steps, double stepSeconds, double seconds)
    {
        double keep = Math.Exp(-stepSeconds / seconds), drive = Math.Sqrt(1 - (keep * keep)), value = Normal();
        var values = new double[steps];
        for (int i = 0; i < steps; i++)
        {
            value = (keep * value) + (drive * Normal());
            values[i] = value;
        }

        return values;
    }

    /// <summary>Brings a sound to an rms level in dBFS (mean square).</summary>
    public static float[] AtLevel(double[] samples, double rmsDb)
    {
        double power = 0;
        foreach (double x in samples)
        {
            power += x * x / samples.Length;
        }

        double gain = Math.Pow(10, rmsDb / 20) / Math.Sqrt(power + 1e-20);
        var scaled = new float[samples.Length];
        for (int i = 0; i < scaled.Length; i++)
        {
            scaled[i] = (float)Math.Clamp(samples[i] * gain, -1, 1);
        }

        return scaled;
    }
}
