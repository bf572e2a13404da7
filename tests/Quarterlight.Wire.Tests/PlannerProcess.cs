using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;

namespace Quarterlight.Wire.Tests;

/// <summary>The planner as a process of its own.</summary>
public sealed class PlannerProcess : IAsyncDisposable
{
    private readonly Process _process;

    private PlannerProcess(Process process, int port)
    {
        _process = process;
        Channel = GrpcChannel.ForAddress($"http://127.0.0.1:{port}");
    }

    public GrpcChannel Channel { get; }

    /// <summary>Starts the planner on a data folder and waits until it answers.</summary>
    /// <param name="folder">Data folder.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="temporary">Folder for passing files; null leaves it to the system.</param>
    public static async Task<PlannerProcess> StartAsync(string folder, CancellationToken cancellation, string? temporary = null)
    {
        int port = FreePort();
        var planner = new PlannerProcess(Run(temporary, "--grpc-port", $"{port}", "--http-port", "0", "--data", folder), port);
        var health = new Health.HealthClient(planner.Channel);
        for (int attempt = 0; ; attempt++)
        {
            try
            {
                await health.CheckAsync(new HealthCheckRequest(), cancellationToken: cancellation);
                return planner;
            }
            catch (RpcException refused) when (refused.StatusCode == StatusCode.Unavailable && attempt < 3000)
            {
                Assert.False(planner._process.HasExited, "the planner did not start");
                await Task.Delay(10, cancellation);
            }
        }
    }

    /// <summary>Runs the planner to its end, for starts that must fail.</summary>
    public static async Task<(int ExitCode, string Error)> RunToEndAsync(CancellationToken cancellation, params string[] arguments)
    {
        using Process process = Run(null, arguments);
        string error = await process.StandardError.ReadToEndAsync(cancellation);
        await process.WaitForExitAsync(cancellation);
        return (process.ExitCode, error);
    }

    /// <summary>SIGKILL: no handler runs, nothing is flushed.</summary>
    public void Kill()
    {
        _process.Kill();
        _process.WaitForExit();
    }

    /// <summary>SIGTERM, as a service manager stops it; returns the exit code.</summary>
    public async Task<int> TerminateAsync(CancellationToken cancellation)
    {
        using Process kill = Process.Start("kill", ["-TERM", $"{_process.Id}"]);
        await kill.WaitForExitAsync(cancellation);
        await _process.WaitForExitAsync(cancellation);
        return _process.ExitCode;
    }

    public ValueTask DisposeAsync()
    {
        Channel.Dispose();
        if (!_process.HasExited)
        {
            Kill();
        }

        _process.Dispose();
        return ValueTask.CompletedTask;
    }

    private static Process Run(string? temporary, params string[] arguments)
    {
        string planner = Path.Combine(AppContext.BaseDirectory, "Quarterlight.Planner.dll");
        var start = new ProcessStartInfo("dotnet", [planner, .. arguments]) { RedirectStandardOutput = true, RedirectStandardError = true };
        if (temporary is not null)
        {
            start.Environment["TMPDIR"] = temporary;
        }

        Process process = Process.Start(start)!;
        process.BeginOutputReadLine();
        return process;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
