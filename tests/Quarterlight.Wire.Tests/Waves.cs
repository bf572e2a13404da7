using Quarterlight.Audio.Tests;

namespace Quarterlight.Wire.Tests;

/// <summary>Clips made here: syllables of a buzz over a noise floor, not speech but enough to be measured as such.</summary>
public static class Waves
{
    private const int RateHz = 48_000;
    private const double VoiceHz = 140;

    /// <summary>A WAV file of 16 bits at 48 kHz; each channel is 3 dB below the one before.</summary>
    public static byte[] Talk(double seconds, int channels = 1)
    {
        var noise = new Random(20260526);
        int frames = (int)(seconds * RateHz);
        int[] samples = new int[frames * channels];
        for (int i = 0; i < frames; i++)
        {
            double t = (double)i / RateHz;
            double hiss = (noise.NextDouble() - 0.5) * 40;
            double voice = t % 2 < 1.3 ? 6000 * Math.Max(0, Math.Sin(2 * Math.PI * 4 * t)) * Buzz(t) : 0;
            for (int c = 0; c < channels; c++)
            {
                samples[(i * channels) + c] = (int)Math.Round((voice + hiss) * Math.Pow(10, -3.0 * c / 20));
            }
        }

        return Pcm16(channels, samples);
    }

    /// <summary>Zeros.</summary>
    public static byte[] Silence(double seconds) => Pcm16(1, new int[(int)(seconds * RateHz)]);

    /// <summary>A file of 16 bits at 48 kHz.</summary>
    public static byte[] Pcm16(int channels, int[] samples) =>
        new WaveBuilder().Fmt(1, channels, RateHz, 16).Chunk("data", WaveBuilder.Shorts(samples)).Build();

    /// <summary>A file of the corpus that the reader's own tests use.</summary>
    public static byte[] Corpus(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "corpus", name));

    private static double Buzz(double t)
    {
        double sum = 0;
        for (int n = 1; n <= 24; n++)
        {
            sum += Math.Sin(2 * Math.PI * n * VoiceHz * t) / n;
        }

        return sum / 2;
    }
}
