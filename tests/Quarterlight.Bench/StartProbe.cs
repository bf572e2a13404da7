using System.Diagnostics;
using Grpc.Core;
using Grpc.Net.Client;
using Quarterlight.V1;

namespace Quarterlight.Bench;

/// <summary>Starts the planner as a process of its own: time to the first plan, and resident memory when idle.</summary>
public static class StartProbe
{
    public static async Task<int> RunAsync(int runs, string? published = null)
    {
        string planner = published ?? Path.Combine(AppContext.BaseDirectory, "Quarterlight.Planner.dll");
        var milliseconds = new List<double>();
        var megabytes = new List<double>();
        for (int run = 0; run < runs; run++)
        {
            string folder = Directory.CreateTempSubdirectory("quarterlight-start").FullName;
            int port = FreePort();
            long start = Stopwatch.GetTimestamp();
            using Process process = Process.Start(new ProcessStartInfo("dotnet", [planner, "--grpc-port", $"{port}", "--http-port", "0", "--data", folder]) { RedirectStandardOutput = true })!;
            process.BeginOutputReadLine();
            try
            {
                using GrpcChannel channel = GrpcChannel.ForAddress($"http://127.0.0.1:{port}");
                await FirstPlanAsync(new PlacementService.PlacementServiceClient(channel));
                milliseconds.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
                await Task.Delay(TimeSpan.FromSeconds(2));
                process.Refresh();
                megabytes.Add(process.WorkingSet64 / 1e6);
            }
            finally
            {
                process.Kill();
                await process.WaitForExitAsync();
                Directory.Delete(folder, recursive: true);
            }
        }

        milliseconds.Sort();
        megabytes.Sort();
        Console.WriteLine($"start of the process to the first plan: median {milliseconds[runs / 2]:0} ms, {milliseconds[0]:0} to {milliseconds[^1]:0} ms, {runs} runs");
        Console.WriteLine($"resident memory two seconds later: median {megabytes[runs / 2]:0} MB, at most {megabytes[^1]:0} MB");
        return 0;
    }

    private static async Task FirstPlanAsync(PlacementService.PlacementServiceClient client)
    {
        for (int attempt = 0; attempt < 500; attempt++)
        {
            try
            {
                await client.PlanPlacementAsync(new PlanPlacementRequest { Bundle = BenchBundle.Make() });
                return;
            }
            catch (RpcException refused) when (refused.StatusCode == StatusCode.Unavailable)
            {
                await Task.Delay(5);
            }
        }

        throw new TimeoutException("The planner did not answer.");
    }

    private static int FreePort()
    {
        using var listener = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        listener.Start();
        return ((System.Net.IPEndPoint)listener.LocalEndpoint).Port;
    }
}
