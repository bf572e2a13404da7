using System.Diagnostics;
using System.Globalization;
using SharpFuzz;

namespace Quarterlight.Fuzz;

/// <summary>One run: makes an instrumented copy of this program, lets it fuzz, and starts it anew when an input kills or stops it.</summary>
internal sealed class FuzzRun(FuzzOptions options)
{
    private static readonly string[] Instrumented = ["Quarterlight.Audio.dll", "NVorbis.dll", "NLayer.dll", "Concentus.dll"];
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private const int MostRestarts = 50;

    /// <summary>Runs to the end.</summary>
    /// <returns>Findings, and the closing line.</returns>
    public async Task<(int Findings, string Summary)> RunAsync()
    {
        if (Directory.Exists(options.Work) && !options.Resume)
        {
            Directory.Delete(options.Work, recursive: true);
        }

        var folder = new WorkFolder(options.Work);
        File.Delete(folder.Flight);
        CopyInstrumented(folder.Program);
        using var flight = new Flight(folder.Flight);
        var time = Stopwatch.StartNew();
        int restarts = 0;
        while (!flight.IsFinished && restarts <= MostRestarts)
        {
            double left = options.Minutes - time.Elapsed.TotalMinutes;
            string? death = await FuzzAsync(folder, flight, left, options.Executions - flight.Executions, options.Seed + restarts).ConfigureAwait(false);
            if (death is not null)
            {
                _ = folder.Report($"death {restarts++}", flight.Input, death);
            }
        }

        int findings = Directory.GetFiles(folder.Findings, "*.txt").Length;
        double seconds = time.Elapsed.TotalSeconds;
        return (findings, string.Create(CultureInfo.InvariantCulture,
            $"{flight.Executions} executions in {seconds:0} s, {flight.Executions / seconds:0.#} a second; edges {flight.EdgesAtStart} at the start, {flight.Edges} at the end; {flight.Kept} inputs kept; slowest {flight.SlowestMs} ms, most memory {flight.MostAllocated / 1048576.0:0.#} MiB; {findings} findings in {folder.Findings}"));
    }

    private async Task<string?> FuzzAsync(WorkFolder folder, Flight flight, double minutes, long executions, int seed)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(folder.Program, "Quarterlight.Fuzz.dll"), .. options.ForChild(minutes, executions, seed)])
        {
            // The collector may not take the whole machine: memory asked for beyond this is an exception.
            Environment = { ["DOTNET_GCHeapHardLimit"] = "0x20000000", ["DOTNET_TieredPGO"] = "0" },
            RedirectStandardError = true,
        };
        using Process child = Process.Start(start) ?? throw new InvalidOperationException("The process that fuzzes did not start.");
        Task<string> errors = child.StandardError.ReadToEndAsync();
        long seen = -1;
        long seenAt = Stopwatch.GetTimestamp();
        while (!child.HasExited)
        {
            await Task.WhenAny(child.WaitForExitAsync(), Task.Delay(500)).ConfigureAwait(false);
            if (flight.Executions != seen)
            {
                (seen, seenAt) = (flight.Executions, Stopwatch.GetTimestamp());
            }
            else if (Stopwatch.GetElapsedTime(seenAt) > Patience && !child.HasExited)
            {
                child.Kill();
                await child.WaitForExitAsync().ConfigureAwait(false);
                return $"It did not come back within {Patience.TotalSeconds:0} s.";
            }
        }

        string said = await errors.ConfigureAwait(false);
        return flight.IsFinished ? null : $"The process ended with {child.ExitCode}.\n{said}";
    }

    private static void CopyInstrumented(string to)
    {
        foreach (string file in Directory.GetFiles(AppContext.BaseDirectory).Where(f => f.EndsWith(".dll", StringComparison.Ordinal) || f.EndsWith(".json", StringComparison.Ordinal)))
        {
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)), overwrite: true);
        }

        foreach (string name in Instrumented)
        {
            _ = Fuzzer.Instrument(Path.Combine(to, name), _ => true, Options.Value);
        }

        _ = Fuzzer.Instrument(Path.Combine(to, "Quarterlight.Fuzz.dll"), name => name == typeof(PlantedTarget).FullName, Options.Value);
    }
}
