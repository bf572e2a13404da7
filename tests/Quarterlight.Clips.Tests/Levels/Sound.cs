namespace Quarterlight.Clips.Tests.Levels;

/// <summary>Signals made for the tests; the same on every machine.</summary>
internal static class Sound
{
    public const int Rate = 48_000;

    public static float[] Tone(double peakDb, double seconds, double hz = 1000, double rate = Rate)
    {
        double a = Math.Pow(10, peakDb / 20);
        return [.. Enumerable.Range(0, (int)Math.Round(seconds * rate)).Select(n => (float)(a * Math.Sin(2 * Math.PI * hz * n / rate)))];
    }

    /// <summary>Tones of 1 kHz one after the other; no level is silence.</summary>
    public static float[] Steps(params IEnumerable<(double? Db, double Seconds)> steps) =>
        [.. steps.SelectMany(s => s.Db is { } db ? Tone(db, s.Seconds) : new float[(int)Math.Round(s.Seconds * Rate)])];

    public static float[] Interleave(params float[][] channels)
    {
        var x = new float[channels[0].Length * channels.Length];
        for (int i = 0; i < x.Length; i++)
        {
            x[i] = channels[i % channels.Length][i / channels.Length];
        }

        return x;
    }

    public static float[] Both(float[] channel) => Interleave(channel, channel);

    /// <summary>Noise of the given peak from a 32-bit congruential generator, 1664525 x + 1013904223.</summary>
    public static float[] Noise(int samples, double peak, uint seed)
    {
        var x = new float[samples];
        for (int i = 0; i < samples; i++)
        {
            seed = unchecked((1664525 * seed) + 1013904223);
            x[i] = (float)(peak * ((seed / 2147483648.0) - 1));
        }

        return x;
    }

    /// <summary>Hands over a stream in pieces of the given numbers of frames, over and over.</summary>
    public static void Pieces(float[] interleaved, int channels, int[] frames, Action<ReadOnlyMemory<float>> add)
    {
        int at = 0;
        for (int i = 0; at < interleaved.Length; i++)
        {
            int n = Math.Min(frames[i % frames.Length] * channels, interleaved.Length - at);
            add(interleaved.AsMemory(at, n));
            at += n;
        }
    }

    public static float[] Faded(float[] x, int samples)
    {
        for (int i = 0; i < samples; i++)
        {
            x[i] *= (float)i / samples;
            x[^(i + 1)] *= (float)i / samples;
        }

        return x;
    }
}
