using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>A thousand identifies in a day and the token is reset: it has happened to other clients, so nobody gets near that here.</summary>
public sealed class IdentifyAllowanceTests
{
    private const string Held = "waiting until a new session is allowed";

    [Theory]
    [InlineData(51, 1000, true)]
    [InlineData(50, 1000, false)]
    [InlineData(0, 1000, false)]
    [InlineData(1, 5, true)]
    [InlineData(0, 5, false)]
    public async Task PlatformsCount_DownToTheReserve_IsWaitedOut(int remaining, int total, bool goesOn)
    {
        await using SourceRig rig = new();
        int left = remaining;
        rig.Find = () => Task.FromResult(SourceRig.Info(left, resetSeconds: 600, total: total));
        rig.Start();
        if (!goesOn)
        {
            await Eventually.TrueAsync(() => rig.Source.Health.Detail == Held);
            Assert.Equal(0, rig.Connections);
            Assert.False(rig.Source.Health.Ready);
            left = total;
            await rig.Time.PassAsync(TimeSpan.FromSeconds(602.5));
        }

        await rig.ConnectAsync();
    }

    [Fact]
    public async Task PlatformsCount_LongReset_IsLookedAtEveryHour()
    {
        await using SourceRig rig = new();
        rig.Find = () => Task.FromResult(SourceRig.Info(0, resetSeconds: 80_000));
        rig.Start();
        for (int i = 1; i < 4; i++)
        {
            await rig.Time.PassAsync(TimeSpan.FromHours(1));
            await Eventually.TrueAsync(() => rig.Finds == i + 1);
        }

        Assert.Equal(0, rig.Connections);
    }

    [Fact]
    public async Task OwnCount_OverRestarts_IsKept()
    {
        var ledger = new MemoryLedger();
        GatewayOptions Options() => new() { Token = SourceRig.Token, MostIdentifiesPerDay = 3 };
        DateTimeOffset start = new WatchedTime().GetUtcNow();
        ledger.Kept = [start.AddHours(-30), start.AddHours(-20), start.AddHours(-2)];
        await using (SourceRig first = new SourceRig(Options) { Ledger = ledger }.Start())
        {
            await first.ConnectAsync();
        }

        Assert.Equal(3, ledger.Kept.Count);
        await using SourceRig second = new SourceRig(Options) { Ledger = ledger }.Start();
        await Eventually.TrueAsync(() => second.Source.Health.Detail == Held);
        Assert.Equal(0, second.Connections);

        // The oldest is 20 hours old: four more hours, an hour at a time.
        for (int i = 0; i < 4; i++)
        {
            await second.Time.PassAsync(TimeSpan.FromHours(1));
        }

        await second.ConnectAsync();
    }

    [Fact]
    public async Task OwnCount_IsKeptBeforeTheIdentifyLeaves()
    {
        await using SourceRig rig = new();
        rig.Prepare = s => s.NeverSends = true;
        rig.Start();
        (await rig.NextConnectionAsync()).Hello();
        await Eventually.TrueAsync(() => rig.Ledger.Kept.Count == 1);
    }

    [Fact]
    public async Task TwoIdentifies_AreFiveSecondsApart()
    {
        await using SourceRig rig = new() { Random = 0 };
        rig.Start();
        FakeSocket socket = await rig.NextConnectionAsync();
        socket.Hello();
        await Eventually.TrueAsync(() => socket.Sent.Any(s => s.Json.Contains("\"op\":2", StringComparison.Ordinal)));
        socket.Close(4009);
        await rig.Time.PassAsync(TimeSpan.FromSeconds(5));
        FakeSocket second = await rig.NextConnectionAsync();
        Assert.Equal(TimeSpan.FromSeconds(5), rig.Time.Passed);
    }

    [Fact]
    public async Task TwoIdentifies_OverARestart_AreFiveSecondsApart()
    {
        await using SourceRig rig = new();
        rig.Ledger.Kept = [rig.Time.GetUtcNow().AddSeconds(-2)];
        rig.Start();
        await rig.Time.PassAsync(TimeSpan.FromSeconds(3));
        await rig.ConnectAsync();
    }

    [Fact]
    public async Task OwnCount_ClockWasPutBack_CountsAsNowAndIsGoneInADay()
    {
        // Seen in other clients: a wrong clock stops the bot. A year ahead yesterday must not mean a year of silence.
        await using SourceRig rig = new SourceRig(() => new GatewayOptions { Token = SourceRig.Token, MostIdentifiesPerDay = 1 });
        rig.Ledger.Kept = [rig.Time.GetUtcNow().AddYears(1)];
        rig.Start();
        for (int i = 0; i < 24; i++)
        {
            await rig.Time.PassAsync(TimeSpan.FromHours(1));
        }

        await rig.ConnectAsync();
    }

    [Fact]
    public async Task Ledger_Fails_IsLoggedAndThePlatformsCountStillHolds()
    {
        await using SourceRig rig = new() { Ledger = new MemoryLedger { Fails = true } };
        rig.Start();
        await rig.ConnectAsync();
        Assert.Contains(rig.Logged, l => l.Text.Contains("could not be kept over restarts: IOException", StringComparison.Ordinal));
    }
}
