using System.Buffers;
using Quarterlight.Audio;
using Quarterlight.Clips;
using Quarterlight.Planner.Errors;
using Quarterlight.V1;

namespace Quarterlight.Planner.Upload;

/// <summary>Reads a clip as it arrives, has it measured and judged, and forgets it.</summary>
internal sealed class ClipDesk(ClipGate gate, TaggerSource taggers, PlannerHostOptions options, TimeProvider time)
{
    // Samples of all channels together: some milliseconds of work, so that turns pass quickly.
    private const int BlockSamples = 32_768;

    private readonly AudioLimits _limits = AudioLimits.Default with { IdleLimit = options.UploadIdleLimit, FfmpegPath = options.FfmpegPath, Clock = time };

    /// <summary>Judges a clip.</summary>
    /// <param name="ask">What is asked about it.</param>
    /// <param name="bytes">The file.</param>
    /// <param name="send">Hears how far it is; null for nobody.</param>
    /// <param name="caller">The caller gives up.</param>
    /// <exception cref="AudioFaultException">The file is not one that is read, or stops coming.</exception>
    /// <exception cref="Grpc.Core.RpcException">Something else is refused.</exception>
    public async Task<JudgedClip> JudgeAsync(ClipAsk ask, UploadStream bytes, Func<ClipProgress, CancellationToken, Task>? send, CancellationToken caller)
    {
        using var limit = new CancellationTokenSource(options.UploadLimit, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(caller, limit.Token);
        try
        {
            return await ReadAsync(ask, bytes, new UploadProgress(bytes, ask.ByteCount, send, time), either.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested && !caller.IsCancellationRequested)
        {
            throw Refusals.TooSlow(options.UploadLimit);
        }
    }

    private async Task<JudgedClip> ReadAsync(ClipAsk ask, UploadStream bytes, UploadProgress progress, CancellationToken cancellation)
    {
        bytes.BeforeRead = progress.TellAsync;
        IAudioReader reader = await AudioReader.OpenAsync(bytes, _limits, cancellation).ConfigureAwait(false);
        await using (reader.ConfigureAwait(false))
        {
            AudioFormat format = reader.Format;
            PlannedChannels planned = PlannedChannels.Match(ask, format.ChannelCount);
            CheckPicture(ask, format);
            ClipMeter meter;
            Clips.Tagging.ISoundTagger? tagger;
            using (await gate.TurnAsync(cancellation).ConfigureAwait(false))
            {
                tagger = taggers.Get();
                meter = new ClipMeter(format.SampleRateHz, format.ChannelCount, new ClipMeterOptions { Cylinders = ask.Cylinders, Tagger = tagger, Timeline = ask.IncludePicture });
            }

            await MeasureAsync(reader, meter, progress, cancellation).ConfigureAwait(false);
            await DrainAsync(bytes, cancellation).ConfigureAwait(false);
            CheckByteCount(ask, bytes);
            await progress.TellNowAsync(cancellation).ConfigureAwait(false);
            using (await gate.TurnAsync(cancellation).ConfigureAwait(false))
            {
                return JudgedClips.Make(ask, new ReadClip(format, reader.Metadata, reader.Remarks, bytes.ByteCount), meter.Finish(), planned, tagger?.Identity);
            }
        }
    }

    private async Task MeasureAsync(IAudioReader reader, ClipMeter meter, UploadProgress progress, CancellationToken cancellation)
    {
        int channels = reader.Format.ChannelCount;
        float[] block = ArrayPool<float>.Shared.Rent(BlockSamples);
        try
        {
            int whole = BlockSamples / channels * channels, filled = 0, frames;
            do
            {
                frames = await reader.ReadAsync(block.AsMemory(filled, whole - filled), cancellation).ConfigureAwait(false);
                filled += frames * channels;
                if (filled == whole || (frames == 0 && filled > 0))
                {
                    using (await gate.TurnAsync(cancellation).ConfigureAwait(false))
                    {
                        meter.Add(block.AsSpan(0, filled));
                    }

                    filled = 0;
                    progress.JudgedSeconds = meter.Seconds;
                    await progress.TellAsync(cancellation).ConfigureAwait(false);
                }
            }
            while (frames > 0);
        }
        finally
        {
            ArrayPool<float>.Shared.Return(block);
        }

        if (reader.FramesRead == 0)
        {
            throw Refusals.Invalid("piece", "the file holds no samples", "Check that the recording was stopped and saved, then upload it again");
        }
    }

    // What comes behind the sound is taken too: a caller must not be cut off while sending, and the size is that of the file.
    private async Task DrainAsync(UploadStream bytes, CancellationToken cancellation)
    {
        byte[] rest = ArrayPool<byte>.Shared.Rent(BlockSamples);
        Task<int>? reading = null;
        try
        {
            do
            {
                if (bytes.ByteCount > _limits.MaxBytes)
                {
                    throw Refusals.Invalid("piece", $"the file holds more than {_limits.MaxBytes} bytes", "Cut a shorter clip, or send fewer channels");
                }

                reading = bytes.ReadAsync(rest, cancellation).AsTask();
            }
            while (await reading.WaitAsync(_limits.IdleLimit, time, cancellation).ConfigureAwait(false) > 0);
        }
        catch (TimeoutException)
        {
            throw Refusals.Stalled(_limits.IdleLimit);
        }
        finally
        {
            // A read that never came back may still write into it.
            if (reading is null or { IsCompleted: true })
            {
                ArrayPool<byte>.Shared.Return(rest);
            }
        }
    }

    private static void CheckByteCount(ClipAsk ask, UploadStream bytes)
    {
        if (ask.ByteCount is { } said && said != bytes.ByteCount)
        {
            throw Refusals.Invalid($"{ask.Prefix}byte_count", $"{said} bytes were announced and {bytes.ByteCount} came", "Copy the file again and upload all of it, or leave the count out");
        }
    }

    private static void CheckPicture(ClipAsk ask, AudioFormat format)
    {
        if (ask.IncludePicture && ask.PictureChannel > format.ChannelCount)
        {
            throw Refusals.Invalid($"{ask.Prefix}picture_channel", $"the clip has no channel {ask.PictureChannel}", $"Use 1 to {format.ChannelCount}, or 0 for the one the verdict speaks of");
        }
    }
}
