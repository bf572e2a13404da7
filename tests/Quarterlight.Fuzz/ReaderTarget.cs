using Quarterlight.Audio;

namespace Quarterlight.Fuzz;

/// <summary>Reads the input as an uploaded sound file, to its end, and holds the reader to what it promises.</summary>
/// <param name="ffmpeg">Full path of the ffmpeg program; null refuses files that need it.</param>
/// <param name="mostAllocatedBytes">Most bytes one input may make the process allocate.</param>
internal sealed class ReaderTarget(string? ffmpeg, long mostAllocatedBytes = ReaderTarget.MostAllocatedBytes) : IFuzzTarget
{
    /// <summary>Judgement: far above what any file of the corpus takes; tables of a Vorbis head are the largest part.</summary>
    public const long MostAllocatedBytes = 192L * 1024 * 1024;

    private const float Untouched = 12_345.75f;
    private const int BufferFrames = 700;
    private const int MostRemarks = 40;

    private static readonly int[][] Pieces = [[1, 5, 4_093], [97]];

    private readonly AudioLimits _limits = AudioLimits.Default with
    {
        MaxBytes = 1024 * 1024,
        MaxDuration = TimeSpan.FromSeconds(10),
        FfmpegPath = ffmpeg ?? Path.Combine(AppContext.BaseDirectory, "no-such-program"),
    };

    /// <summary>Bytes the last input made the process allocate.</summary>
    public long AllocatedBytes { get; private set; }

    public void Take(byte[] input) => ReadAsync(input, [int.MaxValue], BufferFrames).GetAwaiter().GetResult();

    public void TakeAgain(byte[] input)
    {
        string whole = ReadAsync(input, [int.MaxValue], BufferFrames).GetAwaiter().GetResult();
        foreach (int[] pieces in Pieces)
        {
            string again = ReadAsync(input, pieces, 64).GetAwaiter().GetResult();
            Demand(whole == again, "The same whatever the pieces", $"{whole} | {again}");
        }
    }

    /// <summary>What the file gave, in one comparable text.</summary>
    public async Task<string> ReadAsync(byte[] input, int[] pieces, int bufferFrames)
    {
        long before = GC.GetTotalAllocatedBytes();
        try
        {
            return await ReadThroughAsync(new PieceStream(input, pieces), bufferFrames).ConfigureAwait(false);
        }
        catch (AudioFaultException fault)
        {
            return Checked(fault);
        }
        finally
        {
            AllocatedBytes = GC.GetTotalAllocatedBytes() - before;
            Demand(AllocatedBytes <= mostAllocatedBytes, "Little memory", $"{AllocatedBytes} bytes");
        }
    }

    private async Task<string> ReadThroughAsync(Stream source, int bufferFrames)
    {
        IAudioReader reader = await AudioReader.OpenAsync(source, _limits, CancellationToken.None).ConfigureAwait(false);
        await using (reader.ConfigureAwait(false))
        {
            AudioFormat format = reader.Format;
            Demand(format.ChannelCount >= 1 && format.ChannelCount <= _limits.MaxChannels, "Channels within the limits", $"{format}");
            Demand(format.SampleRateHz >= _limits.MinSampleRateHz && format.SampleRateHz <= _limits.MaxSampleRateHz, "A rate within the limits", $"{format}");
            Demand(format.DeclaredFrameCount is null or >= 0, "A length that can be", $"{format}");
            var samples = new HashCode();
            string? end = null;
            try
            {
                samples = await ReadSamplesAsync(reader, bufferFrames).ConfigureAwait(false);
            }
            catch (AudioFaultException fault)
            {
                end = Checked(fault);
                await FailsAgainAsync(reader, fault, bufferFrames).ConfigureAwait(false);
            }

            bool toTheSample = format.Coding is SampleCoding.Pcm16 or SampleCoding.Pcm24 or SampleCoding.Pcm32 or SampleCoding.FloatingPoint32 or SampleCoding.FloatingPoint64;
            Demand(
                end is not null || !toTheSample || format.DeclaredFrameCount is null || format.DeclaredFrameCount == reader.FramesRead,
                "The length it declared", $"{format}: {reader.FramesRead}");
            Demand(reader.Remarks.Count <= MostRemarks, "Few remarks", $"{reader.Remarks.Count}");
            // Once the sound has failed, how far the metadata and remarks had come hangs on the pieces.
            return end is null ? $"{format} {reader.FramesRead} {samples.ToHashCode()} {string.Join('|', reader.Remarks)} {reader.Metadata?.Broadcast}" : $"{format} {end}";
        }
    }

    private async Task<HashCode> ReadSamplesAsync(IAudioReader reader, int bufferFrames)
    {
        int channels = reader.Format.ChannelCount;
        // One value more than whole frames: what is beyond them must be left alone.
        float[] buffer = new float[(bufferFrames * channels) + (channels > 1 ? 1 : 0)];
        long mostFrames = (long)(_limits.MaxDuration.TotalSeconds * reader.Format.SampleRateHz);
        var samples = new HashCode();
        long total = 0;
        while (true)
        {
            Array.Fill(buffer, Untouched);
            int frames = await reader.ReadAsync(buffer, CancellationToken.None).ConfigureAwait(false);
            Demand(frames >= 0 && frames <= bufferFrames, "No more frames than there is room for", $"{frames}");
            Demand(!buffer.AsSpan(frames * channels).ContainsAnyExcept(Untouched), "Nothing beyond the frames it says", $"{frames} of {channels} channels");
            total += frames;
            Demand(total == reader.FramesRead, "It counts the frames", $"{total}, {reader.FramesRead}");
            Demand(total <= mostFrames, "No longer than the limit", $"{total}");
            if (frames == 0)
            {
                Demand(total > 0, "Samples or a fault", "0 frames and no fault");
                Demand(await reader.ReadAsync(buffer, CancellationToken.None).ConfigureAwait(false) == 0, "The end is the end", "frames behind it");
                return samples;
            }

            foreach (float sample in buffer.AsSpan(0, frames * channels))
            {
                Demand(float.IsFinite(sample), "Finite samples", $"{sample}");
                samples.Add(sample);
            }
        }
    }

    private static async Task FailsAgainAsync(IAudioReader reader, AudioFaultException fault, int bufferFrames)
    {
        try
        {
            int frames = await reader.ReadAsync(new float[bufferFrames * reader.Format.ChannelCount], CancellationToken.None).ConfigureAwait(false);
            Demand(false, "One fault for good", $"{frames} frames behind {fault.Fault.Code}");
        }
        catch (AudioFaultException again)
        {
            Demand(again.Fault == fault.Fault, "One fault for good", $"{fault.Fault.Code}, then {again.Fault.Code}");
        }
    }

    private static string Checked(AudioFaultException fault)
    {
        Demand(Enum.IsDefined(fault.Fault.Code) && fault.Fault.Problem.Length is > 10 and < 300 && fault.Fault.Remedy.Length is > 10 and < 300, "A fault in words", $"{fault.Fault}");
        return $"{fault.Fault}";
    }

    private static void Demand(bool kept, string promise, string details)
    {
        if (!kept)
        {
            throw new FindingException(promise, details);
        }
    }
}
