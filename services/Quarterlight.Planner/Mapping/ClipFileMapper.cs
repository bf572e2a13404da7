using System.Globalization;
using Quarterlight.Audio;

namespace Quarterlight.Planner.Mapping;

/// <summary>What a file is and what the recorder wrote in it, to the contract.</summary>
internal static class ClipFileMapper
{
    private const int LongestText = 200;

    public static V1.ClipFormat ToContract(AudioFormat format, double durationSeconds, long byteCount) => new()
    {
        Words = Words(format),
        SampleRateHz = format.SampleRateHz,
        ChannelCount = format.ChannelCount,
        DurationS = durationSeconds,
        ByteCount = byteCount,
    };

    /// <summary>What the recorder wrote: iXML before the description of bext.</summary>
    public static V1.ClipMetadata ToContract(AudioMetadata? metadata, int sampleRateHz)
    {
        BroadcastExtension? bext = metadata?.Broadcast;
        IxmlMetadata? ixml = metadata?.Ixml;
        BextLines lines = BextLines.Read(bext?.Description);
        return new V1.ClipMetadata
        {
            Project = Plain(ixml?.Project ?? lines["PROJECT"]),
            Scene = Plain(ixml?.Scene ?? lines["SCENE"]),
            Take = Plain(ixml?.Take ?? lines["TAKE"]),
            Tape = Plain(ixml?.Tape ?? lines["TAPE"]),
            Note = Plain(ixml?.Note ?? lines["NOTE"]),
            Circled = ixml?.Circled ?? false,
            StartTime = TimeOfDay(bext, ixml, sampleRateHz),
            Originator = Plain(bext?.Originator),
            Date = bext?.OriginationDate?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
        };
    }

    /// <summary>Name of each channel, empty where none was given.</summary>
    public static string[] TrackNames(AudioMetadata? metadata, int channelCount)
    {
        string[] names = new string[channelCount];
        Array.Fill(names, "");
        IReadOnlyList<IxmlTrack> tracks = metadata?.Ixml?.Tracks ?? [];
        for (int t = 0; t < tracks.Count; t++)
        {
            // Without a place the order written is that of the channels (judgement).
            int channel = (tracks[t].InterleaveIndex ?? t + 1) - 1;
            if (channel >= 0 && channel < channelCount)
            {
                names[channel] = Plain(tracks[t].Name);
            }
        }

        IReadOnlyList<string> described = BextLines.Read(metadata?.Broadcast?.Description).Tracks;
        for (int c = 0; c < channelCount && c < described.Count && tracks.Count == 0; c++)
        {
            names[c] = Plain(described[c]);
        }

        return names;
    }

    private static string Words(AudioFormat format) => format.Coding switch
    {
        SampleCoding.Pcm16 => Bits(16, format.ValidBits),
        SampleCoding.Pcm24 => Bits(24, format.ValidBits),
        SampleCoding.Pcm32 => Bits(32, format.ValidBits),
        SampleCoding.FloatingPoint32 => "WAV, 32-bit floating point",
        SampleCoding.FloatingPoint64 => "WAV, 64-bit floating point",
        SampleCoding.Vorbis => "Ogg Vorbis",
        SampleCoding.Mp3 => "MP3",
        SampleCoding.Opus => "Opus",
        SampleCoding.Flac => "FLAC",
        _ => "AAC",
    };

    private static string Bits(int written, int? valid) => valid is { } v && v < written ? $"WAV, {v} bits in {written}" : $"WAV, {written}-bit";

    // A count of 0 is what a program writes that knows no time, so it says nothing.
    private static string TimeOfDay(BroadcastExtension? bext, IxmlMetadata? ixml, int sampleRateHz)
    {
        (ulong? samples, int rateHz) = bext is { TimeReferenceSamples: > 0 }
            ? (bext.TimeReferenceSamples, sampleRateHz)
            : (ixml?.TimestampSamples, ixml?.TimestampSampleRateHz is > 0 and { } own ? own : sampleRateHz);
        double seconds = (samples ?? 0) / (double)rateHz;
        return seconds is > 0 and < 86_400 ? TimeSpan.FromSeconds(seconds).ToString(@"hh\:mm\:ss\.fff", CultureInfo.InvariantCulture) : "";
    }

    private static string Plain(string? text)
    {
        if (string.IsNullOrEmpty(text))
        {
            return "";
        }

        string plain = new([.. text.Select(c => char.IsControl(c) ? ' ' : c)]);
        plain = plain.Trim();
        return plain.Length <= LongestText ? plain : plain[..LongestText];
    }
}
