using System.Diagnostics;

namespace Quarterlight.Audio.Ffmpeg;

/// <summary>One run of the ffmpeg program: a file in, WAVE of 32-bit floating point out, and nothing else within its reach.</summary>
internal sealed class FfmpegProgram : IAsyncDisposable
{
    private const int MostComplaintCharacters = 4096;
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(5);
    private static readonly string[] KeptVariables = ["PATH", "LD_LIBRARY_PATH", "SystemRoot"];

    private readonly Process _process;
    private readonly Task<string> _complaints;

    private FfmpegProgram(Process process)
    {
        _process = process;
        _complaints = ComplaintsAsync(process.StandardError);
    }

    /// <summary>What it writes.</summary>
    public Stream Output => _process.StandardOutput.BaseStream;

    /// <summary>Full path of the program: the one given, else the first on PATH; null when there is none.</summary>
    public static string? Find(AudioLimits limits)
    {
        if (limits.FfmpegPath is { } given)
        {
            return File.Exists(given) ? given : null;
        }

        string name = OperatingSystem.IsWindows() ? "ffmpeg.exe" : "ffmpeg";
        // A relative entry would let the working folder decide what is run.
        return (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Where(Path.IsPathFullyQualified).Select(folder => Path.Combine(folder, name)).FirstOrDefault(File.Exists);
    }

    /// <summary>Starts it.</summary>
    /// <param name="program">Full path of the program.</param>
    /// <param name="file">Full path of the file to read.</param>
    /// <param name="demuxer">The one container it may take the file for: no play list, no concatenation, no device.</param>
    /// <exception cref="System.ComponentModel.Win32Exception">The program cannot be started.</exception>
    public static FfmpegProgram Start(string program, string file, string demuxer)
    {
        string[] arguments =
        [
            "-nostdin", "-hide_banner", "-loglevel", "error", "-max_alloc", "268435456", "-threads", "1",
            "-protocol_whitelist", "file,pipe", "-f", demuxer, "-i", "file:" + file,
            "-map", "0:a:0", "-vn", "-sn", "-dn", "-map_metadata", "-1", "-bitexact", "-c:a", "pcm_f32le", "-f", "wav", "pipe:1",
        ];
        var start = new ProcessStartInfo(program, arguments)
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetDirectoryName(file)!,
        };
        // The planner's keys are none of its business.
        foreach (string variable in start.Environment.Keys.Except(KeptVariables).ToArray())
        {
            start.Environment.Remove(variable);
        }

        Process process = Process.Start(start)!;
        process.StandardInput.Close();
        return new FfmpegProgram(process);
    }

    /// <summary>Waits for its end.</summary>
    /// <returns>True when it ended by itself and well; and whether it complained.</returns>
    public async ValueTask<(bool Well, bool Complained)> EndAsync(AudioLimits limits, CancellationToken cancellation)
    {
        try
        {
            string complaints = await _complaints.WaitAsync(limits.IdleLimit, limits.Clock, cancellation).ConfigureAwait(false);
            await _process.WaitForExitAsync(cancellation).WaitAsync(limits.IdleLimit, limits.Clock, cancellation).ConfigureAwait(false);
            return (_process.ExitCode == 0, complaints.Length > 0);
        }
        catch (TimeoutException)
        {
            throw Faults.DecoderStalled(limits.IdleLimit);
        }
    }

    /// <summary>Ends it, and what it may have started.</summary>
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (!_process.HasExited)
            {
                _process.Kill(entireProcessTree: true);
            }

            await _process.WaitForExitAsync().WaitAsync(Farewell).ConfigureAwait(false);
        }
        catch (Exception gone) when (gone is InvalidOperationException or System.ComponentModel.Win32Exception or TimeoutException or AggregateException)
        {
            // It ended on its own, or cannot be ended: there is nothing more to do here.
        }

        _process.Dispose();
    }

    // Everything is taken, so that it never waits for us; the first page is kept.
    private static async Task<string> ComplaintsAsync(StreamReader errors)
    {
        var kept = new System.Text.StringBuilder();
        char[] some = new char[1024];
        try
        {
            for (int count; (count = await errors.ReadAsync(some).ConfigureAwait(false)) > 0;)
            {
                kept.Append(some, 0, Math.Min(count, MostComplaintCharacters - kept.Length));
            }
        }
        catch (Exception closed) when (closed is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // The program was ended.
        }

        return kept.ToString();
    }
}
