using Quarterlight.Quantities;

namespace Quarterlight.Clips.Levels;

/// <summary>What the level meters take.</summary>
public static class LevelLimits
{
    /// <summary>Sample rate in Hz.</summary>
    public static ValidRange SampleRateHz { get; } = new(8_000, 192_000, "Hz");

    /// <summary>Channels side by side in one stream.</summary>
    public static ValidRange Channels { get; } = new(1, 64, "");

    internal static void Check(double sampleRateHz, int channels)
    {
        if (!SampleRateHz.Contains(sampleRateHz))
        {
            throw new ArgumentOutOfRangeException(nameof(sampleRateHz), sampleRateHz, "The sample rate is out of range.");
        }

        if (!Channels.Contains(channels))
        {
            throw new ArgumentOutOfRangeException(nameof(channels), channels, "The number of channels is out of range.");
        }
    }

    internal static void CheckFrames(int samples, int channels)
    {
        if (samples % channels != 0)
        {
            throw new ArgumentException($"{samples} samples are no whole number of frames of {channels} channels.", nameof(samples));
        }
    }

    internal static double Db(double amplitude) => 20 * Math.Log10(amplitude);
}
