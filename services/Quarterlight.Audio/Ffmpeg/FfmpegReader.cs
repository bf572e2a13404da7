using Quarterlight.Audio.Wav;

namespace Quarterlight.Audio.Ffmpeg;

/// <summary>
/// FLAC, MPEG-4 and ADTS through the ffmpeg program. The upload goes to a file of its own first (MPEG-4 must be sought), which lives as
/// long as the reader.
/// </summary>
internal sealed class FfmpegReader : ReaderBase
{
    private readonly DirectoryInfo _folder;
    private readonly FfmpegProgram _program;
    private readonly WaveReader _wave;
    private readonly string _kind;
    private TimeSpan _waited;

    private FfmpegReader(DirectoryInfo folder, FfmpegProgram program, WaveReader wave, string kind, AudioFormat format, AudioLimits limits)
        : base(format, limits)
    {
        _folder = folder;
        _program = program;
        _wave = wave;
        _kind = kind;
    }

    /// <summary>Takes the whole upload, starts the program and reads the head of what it writes.</summary>
    public static async ValueTask<FfmpegReader> OpenAsync(ByteSource bytes, ContentKind content, AudioLimits limits, CancellationToken cancellation)
    {
        (string kind, string demuxer, SampleCoding coding) = content switch
        {
            ContentKind.Flac => ("FLAC", "flac", SampleCoding.Flac),
            ContentKind.Mpeg4 => ("An MPEG-4 file (M4A)", "mov", SampleCoding.Aac),
            _ => ("AAC", "aac", SampleCoding.Aac),
        };
        string path = FfmpegProgram.Find(limits) ?? throw Faults.NoDecoder(kind);
        long? declared = FlacHead.FrameCount(bytes.Seen);
        DirectoryInfo folder = Directory.CreateTempSubdirectory("quarterlight-");
        FfmpegProgram? program = null;
        WaveReader? wave = null;
        try
        {
            string file = Path.Combine(folder.FullName, "clip");
            await SpoolAsync(bytes, file, cancellation).ConfigureAwait(false);
            program = Start(path, file, demuxer, kind);
            wave = await OpenOutputAsync(program, kind, limits, cancellation).ConfigureAwait(false);
            var format = new AudioFormat(wave.Format.SampleRateHz, wave.Format.ChannelCount, coding, null, declared);
            if (declared > Faults.MostFrames(format.SampleRateHz, limits))
            {
                throw Faults.TooLong(limits);
            }

            bytes.Dispose();
            return new FfmpegReader(folder, program, wave, kind, format, limits);
        }
        catch
        {
            await CloseAsync(wave, program, folder).ConfigureAwait(false);
            throw;
        }
    }

    /// <inheritdoc/>
    protected override async ValueTask<int> NextAsync(Memory<float> interleaved, CancellationToken cancellation)
    {
        int frames;
        long begun = Limits.Clock.GetTimestamp();
        try
        {
            frames = await _wave.ReadAsync(interleaved, cancellation).ConfigureAwait(false);
        }
        catch (AudioFaultException fault) when (fault.Fault.Code == AudioFaultCode.Stalled)
        {
            throw Faults.DecoderStalled(Limits.IdleLimit);
        }

        _waited += Limits.Clock.GetElapsedTime(begun);
        if (_waited > Limits.DecoderTimeLimit)
        {
            throw Faults.DecoderStalled(Limits.DecoderTimeLimit);
        }

        if (frames == 0)
        {
            await EndAsync(cancellation).ConfigureAwait(false);
        }

        return frames;
    }

    /// <inheritdoc/>
    protected override ValueTask CloseAsync() => CloseAsync(_wave, _program, _folder);

    private static FfmpegProgram Start(string path, string file, string demuxer, string kind)
    {
        try
        {
            return FfmpegProgram.Start(path, file, demuxer);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            throw Faults.NoDecoder(kind);
        }
    }

    private static async ValueTask SpoolAsync(ByteSource bytes, string file, CancellationToken cancellation)
    {
        byte[] piece = new byte[ByteSource.WindowBytes];
        var target = new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.Read, 0, FileOptions.Asynchronous);
        await using (target.ConfigureAwait(false))
        {
            for (int count; (count = await bytes.CopyAsync(piece, cancellation).ConfigureAwait(false)) > 0;)
            {
                await target.WriteAsync(piece.AsMemory(0, count), cancellation).ConfigureAwait(false);
            }
        }
    }

    private static async ValueTask<WaveReader> OpenOutputAsync(FfmpegProgram program, string kind, AudioLimits limits, CancellationToken cancellation)
    {
        // What comes out is bounded by the duration, not by the upload's size.
        var output = new ByteSource(program.Output, limits with { MaxBytes = long.MaxValue });
        try
        {
            _ = await output.SeeAsync(12, cancellation).ConfigureAwait(false);
            if (output.Seen.Length < 12 || !output.Seen.StartsWith("RIFF"u8))
            {
                throw Undecodable(kind);
            }

            return await WaveReader.OpenAsync(output, limits with { MaxBytes = long.MaxValue }, cancellation).ConfigureAwait(false);
        }
        catch (AudioFaultException fault)
        {
            output.Dispose();
            throw fault.Fault.Code switch
            {
                AudioFaultCode.Stalled => Faults.DecoderStalled(limits.IdleLimit),
                AudioFaultCode.Unsupported or AudioFaultCode.TooLong => fault,
                _ => Undecodable(kind),
            };
        }
        catch
        {
            output.Dispose();
            throw;
        }
    }

    private async ValueTask EndAsync(CancellationToken cancellation)
    {
        (bool well, bool complained) = await _program.EndAsync(Limits, cancellation).ConfigureAwait(false);
        if (!well)
        {
            throw Undecodable(_kind);
        }

        if (Format.DeclaredDuration is { } said && FramesRead < Format.DeclaredFrameCount)
        {
            throw Faults.Truncated(string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"The file says it holds {said.TotalSeconds:0.###} s of sound and ends after {(double)FramesRead / Format.SampleRateHz:0.###} s"));
        }

        if (complained)
        {
            Remark("The ffmpeg program met damage in the file; parts may be missing");
        }
    }

    private static AudioFaultException Undecodable(string kind) => Faults.Corrupt($"{kind} was sent, and the ffmpeg program cannot decode it");

    private static async ValueTask CloseAsync(WaveReader? wave, FfmpegProgram? program, DirectoryInfo folder)
    {
        if (program is not null)
        {
            await program.DisposeAsync().ConfigureAwait(false);
        }

        if (wave is not null)
        {
            await wave.DisposeAsync().ConfigureAwait(false);
        }

        try
        {
            folder.Delete(recursive: true);
        }
        catch (IOException)
        {
            // The folder for passing files is swept by the system; the reader must not fail for it.
        }
    }
}
