using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Stands before a planner on an address of its own, so that a test can shut the way to it, hold what is said, and open it again.</summary>
internal sealed class PlannerGate : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly ConcurrentDictionary<TcpClient, Task> open = new();
    private readonly Uri planner;
    private readonly Task accepting;
    private volatile TaskCompletionSource held = Opened();

    public PlannerGate(string planner)
    {
        this.planner = new Uri(planner);
        listener.Start();
        Address = $"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}";
        accepting = AcceptAsync();
    }

    public string Address { get; }

    /// <summary>True while connections are cut as soon as they are made, as by a planner that is down.</summary>
    public bool Down { get; private set; }

    /// <summary>Nothing the planner says gets through until <see cref="Release"/>.</summary>
    public void Hold() => held = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    public void Release() => held.TrySetResult();

    /// <summary>Cuts every connection, and those to come.</summary>
    public void Shut()
    {
        Down = true;
        foreach (TcpClient client in open.Keys)
        {
            client.Close();
        }
    }

    public void Open() => Down = false;

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        Release();
        Shut();
        listener.Stop();
        await accepting;
        await Task.WhenAll(open.Values);
        stop.Dispose();
    }

    private static TaskCompletionSource Opened()
    {
        var opened = new TaskCompletionSource();
        opened.SetResult();
        return opened;
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                TcpClient client = await listener.AcceptTcpClientAsync(stop.Token);
                open[client] = Task.Run(() => CarryAsync(client));
            }
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException)
        {
        }
    }

    private async Task CarryAsync(TcpClient client)
    {
        using (client)
        using (var behind = new TcpClient())
        {
            try
            {
                if (!Down)
                {
                    await behind.ConnectAsync(IPAddress.Loopback, planner.Port, stop.Token);
                    await Task.WhenAny(CopyAsync(client.GetStream(), behind.GetStream(), holds: false), CopyAsync(behind.GetStream(), client.GetStream(), holds: true));
                }
            }
            catch (Exception e) when (e is IOException or SocketException or OperationCanceledException or ObjectDisposedException or InvalidOperationException)
            {
            }
        }

        open.TryRemove(client, out _);
    }

    private async Task CopyAsync(NetworkStream from, NetworkStream to, bool holds)
    {
        byte[] buffer = new byte[16 * 1024];
        try
        {
            while (await from.ReadAsync(buffer, stop.Token) is > 0 and int count)
            {
                if (holds)
                {
                    await held.Task.WaitAsync(stop.Token);
                }

                await to.WriteAsync(buffer.AsMemory(0, count), stop.Token);
            }
        }
        catch (Exception e) when (e is IOException or SocketException or OperationCanceledException or ObjectDisposedException)
        {
        }
    }
}
