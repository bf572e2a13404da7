using Quarterlight.Fuzz;

namespace Quarterlight.Audio.Tests;

/// <summary>The files of the corpus folder; make.sh there says how each was made.</summary>
internal static class CorpusFile
{
    public static IReadOnlyList<string> All { get; } =
        [.. Directory.GetFiles(Folder).Select(f => Path.GetFileName(f)!).Where(f => !f.EndsWith(".sh", StringComparison.Ordinal)).Order()];

    /// <summary>What the fuzzer began with and kept; small, and mostly damaged.</summary>
    public static IReadOnlyList<string> Fuzzed { get; } =
        [.. Directory.GetFiles(Path.Combine(Folder, FuzzChild.Own)).Select(f => $"{FuzzChild.Own}/{Path.GetFileName(f)}").Where(f => !f.EndsWith(".sh", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "corpus");

    public static byte[] Read(string name) => File.ReadAllBytes(Path.Combine(Folder, name));

    /// <summary>Amplitude of a sine of one frequency in one channel, over the middle half of the file: one bin of a Fourier sum.</summary>
    public static double Amplitude(Reading read, int channel, double frequencyHz)
    {
        int from = read.Frames / 4;
        int count = read.Format.SampleRateHz / 2;
        double re = 0;
        double im = 0;
        for (int i = 0; i < count; i++)
        {
            double value = read.Samples[((from + i) * read.Format.ChannelCount) + channel];
            double angle = 2 * Math.PI * frequencyHz * i / read.Format.SampleRateHz;
            re += value * Math.Cos(angle);
            im += value * Math.Sin(angle);
        }

        return 2 * Math.Sqrt((re * re) + (im * im)) / count;
    }
}
