using System.Diagnostics;
using System.Text.Json;
using Quarterlight.Chat.Emulator;
using Quarterlight.Tests.Shared;

namespace Quarterlight.Bench;

/// <summary>The chat bot as a process of its own, on one core, between the emulated platform and a planner.</summary>
internal sealed class BotProcess : IAsyncDisposable
{
    private const int InteractionEnded = 2001;
    private const int CommandsRegistered = 2008;

    private readonly Lock gate = new();
    private readonly List<double> ownMilliseconds = [];
    private readonly TaskCompletionSource registered = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Process process;
    private string last = "";

    private BotProcess(Process process)
    {
        this.process = process;
        process.ErrorDataReceived += (_, e) => Read(e.Data);
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
    }

    /// <summary>Resident memory, MB.</summary>
    public double ResidentMegabytes
    {
        get
        {
            process.Refresh();
            return process.WorkingSet64 / 1e6;
        }
    }

    /// <summary>True when it has the planner's own code loaded, which it needs only to start one in its process.</summary>
    public bool HoldsThePlanner
    {
        get
        {
            process.Refresh();
            return process.Modules.Cast<ProcessModule>().Any(m => m.ModuleName == "Quarterlight.Planner.dll");
        }
    }

    /// <summary>Processor time used so far.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
    }

    /// <summary>Of every answer so far: from receipt to the end, less the time calls to the planner were under way, milliseconds.</summary>
    public double[] OwnMilliseconds
    {
        get
        {
            lock (gate)
            {
                return [.. ownMilliseconds];
            }
        }
    }

    /// <summary>Starts it with the runtime settings of its container and waits until its commands are registered.</summary>
    public static async Task<BotProcess> StartAsync(EmulatedPlatform platform, string planner, string folder, string? published)
    {
        string[] bot = [published ?? Path.Combine(AppContext.BaseDirectory, "crewbot.dll"), "serve", "discord", "--server", planner, "--health-port", "0", "--data", folder, "--user-rate", "1000000", "--team-rate", "1000000"];
        bool pins = OperatingSystem.IsLinux() && Environment.ProcessorCount > 1 && File.Exists("/usr/bin/taskset");
        var start = pins ? new ProcessStartInfo("/usr/bin/taskset", ["--cpu-list", "1", "dotnet", .. bot]) : new ProcessStartInfo("dotnet", bot);
        (start.RedirectStandardError, start.RedirectStandardOutput) = (true, true);
        foreach ((string name, string value) in ContainerSettings())
        {
            start.Environment[name] = value;
        }

        start.Environment["DISCORD_TOKEN"] = platform.Token;
        start.Environment["DISCORD_API_URL"] = platform.ApiBase.ToString();
        start.Environment["DISCORD_FILE_HOSTS"] = platform.Address.GetLeftPart(UriPartial.Authority);
        var started = new BotProcess(Process.Start(start)!);
        Console.WriteLine(published is null ? "bot as built, not compiled ahead as in its container" : "published bot");
        Console.WriteLine(pins ? "bot pinned to one core" : "bot not pinned: this machine has no taskset or one core only");
        if (await Task.WhenAny(started.registered.Task, started.process.WaitForExitAsync(), Task.Delay(TimeSpan.FromMinutes(2))) != started.registered.Task)
        {
            string said = started.last;
            await started.DisposeAsync();
            throw new InvalidOperationException($"The bot did not start: {said}");
        }

        await platform.Gateway.ConnectedAsync(CancellationToken.None);
        return started;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        await process.WaitForExitAsync();
        process.Dispose();
    }

    // ENV NAME=value, a line each.
    private static IEnumerable<(string Name, string Value)> ContainerSettings()
    {
        string file = Path.Combine(RepositoryFolder.Top, "clients", "Quarterlight.CrewBot", "Dockerfile");
        return File.ReadLines(file).Where(l => l.StartsWith("ENV ", StringComparison.Ordinal)).Select(l => l[4..].Split('=', 2)).Select(p => (p[0], p[1]));
    }

    private void Read(string? line)
    {
        if (line is not { Length: > 0 })
        {
            return;
        }

        last = line;
        if (line[0] != '{')
        {
            return;
        }

        using var json = JsonDocument.Parse(line);
        switch (json.RootElement.GetProperty("EventId").GetInt32())
        {
            case CommandsRegistered:
                registered.TrySetResult();
                break;
            case InteractionEnded:
                JsonElement values = json.RootElement.GetProperty("State");
                lock (gate)
                {
                    ownMilliseconds.Add(values.GetProperty("TotalMilliseconds").GetDouble() - values.GetProperty("PlannerMilliseconds").GetDouble());
                }

                break;
        }
    }
}
