using System.Buffers.Binary;

namespace Quarterlight.Crew.Demo;

/// <summary>
/// An invented test clip, made when asked for and the same every time: bursts that are shaped like speech, a four-cylinder engine at 1 950 rpm, and the steady hiss of a blower.
/// Levels are judgement, chosen so that there is something to say about it. Nobody speaks in it.
/// </summary>
public static class DemoClip
{
    /// <summary>Name that says it is invented.</summary>
    public const string FileName = "demo clip (invented).wav";

    /// <summary>Frames a second.</summary>
    public const int SampleRateHz = 48_000;

    /// <summary>Seconds.</summary>
    public const int DurationSeconds = 12;

    /// <summary>Engine speed in revolutions per minute, a four-stroke with four cylinders; its firing harmonics fall beside those of the mains.</summary>
    public const double EngineSpeedRpm = 1950;

    private const int HeaderBytes = 44;
    private const int BytesPerSample = 3;
    private const double FullScale = 8_388_607;

    // Formants of an open vowel in Hz with their bandwidths: textbook values, from memory.
    private static readonly (double Hz, double BandwidthHz, double Gain)[] Formants = [(620, 90, 1), (1250, 110, 0.6), (2500, 160, 0.35)];

    /// <summary>The clip as an attachment.</summary>
    public static CrewAttachment Attachment { get; } = new(FileName, HeaderBytes + (SampleRateHz * DurationSeconds * BytesPerSample), _ => Task.FromResult<Stream>(new MemoryStream(Make(), writable: false)));

    /// <summary>The clip as a WAV file: one channel, 24 bits.</summary>
    public static byte[] Make()
    {
        int frames = SampleRateHz * DurationSeconds, dataBytes = frames * BytesPerSample;
        byte[] file = new byte[HeaderBytes + dataBytes];
        WriteHeader(file, dataBytes);
        var voice = new Voice();
        uint noise = 20_250_101;
        double hiss = 0;
        for (int i = 0; i < frames; i++)
        {
            double t = (double)i / SampleRateHz;
            noise = (noise * 1_664_525) + 1_013_904_223;
            hiss += 0.35 * (((noise / (double)uint.MaxValue * 2) - 1) - hiss);
            double sample = (0.11 * voice.Next(t)) + Engine(t) + (0.017 * hiss);
            int value = (int)Math.Round(Math.Clamp(sample, -1, 1) * FullScale);
            int at = HeaderBytes + (i * BytesPerSample);
            file[at] = (byte)value;
            file[at + 1] = (byte)(value >> 8);
            file[at + 2] = (byte)(value >> 16);
        }

        return file;
    }

    // Half orders and orders of the crankshaft; the firing order, 2 of 4 cylinders a turn, is the strongest.
    private static double Engine(double t)
    {
        double turn = 2 * Math.PI * EngineSpeedRpm / 60 * t, sum = 0;
        foreach ((double order, double gain) in new[] { (0.5, 0.03), (1, 0.06), (1.5, 0.03), (2, 1), (3, 0.05), (4, 0.7), (6, 0.5), (8, 0.3), (10, 0.18), (12, 0.12), (16, 0.06) })
        {
            sum += gain * Math.Sin((order * turn) + order);
        }

        return 0.01 * sum;
    }

    private static void WriteHeader(Span<byte> file, int dataBytes)
    {
        "RIFF"u8.CopyTo(file);
        BinaryPrimitives.WriteInt32LittleEndian(file[4..], HeaderBytes - 8 + dataBytes);
        "WAVEfmt "u8.CopyTo(file[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(file[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(file[20..], 1);
        BinaryPrimitives.WriteInt16LittleEndian(file[22..], 1);
        BinaryPrimitives.WriteInt32LittleEndian(file[24..], SampleRateHz);
        BinaryPrimitives.WriteInt32LittleEndian(file[28..], SampleRateHz * BytesPerSample);
        BinaryPrimitives.WriteInt16LittleEndian(file[32..], BytesPerSample);
        BinaryPrimitives.WriteInt16LittleEndian(file[34..], BytesPerSample * 8);
        "data"u8.CopyTo(file[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(file[40..], dataBytes);
    }

    // A pulse train through three resonators, four syllables a second, in phrases with pauses between.
    private sealed class Voice
    {
        private readonly (double A1, double A2, double Gain)[] resonators = [.. Formants.Select(f =>
        {
            double r = Math.Exp(-Math.PI * f.BandwidthHz / SampleRateHz);
            return (2 * r * Math.Cos(2 * Math.PI * f.Hz / SampleRateHz), -r * r, f.Gain * (1 - r));
        })];

        private readonly double[] one = new double[Formants.Length], two = new double[Formants.Length];
        private double phase, before, steady;

        public double Next(double t)
        {
            double within = t % 3, syllable = t * 4 % 1;
            double envelope = within is < 0.3 or > 2.3 ? 0 : Math.Pow(Math.Sin(Math.PI * syllable), 0.7) * (0.6 + (0.4 * Math.Sin(2 * Math.PI * 0.37 * t)));
            phase += (118 + (14 * Math.Sin(2 * Math.PI * 0.9 * t))) / SampleRateHz;
            double pulse = 0;
            if (phase >= 1)
            {
                phase -= 1;
                pulse = 40;
            }

            double sum = 0;
            for (int k = 0; k < resonators.Length; k++)
            {
                double y = (resonators[k].Gain * pulse) + (resonators[k].A1 * one[k]) + (resonators[k].A2 * two[k]);
                (two[k], one[k]) = (one[k], y);
                sum += y;
            }

            // Pulses all point one way; a recorder would not keep their mean.
            steady = (0.995 * steady) + sum - before;
            before = sum;
            return envelope * steady;
        }
    }
}
