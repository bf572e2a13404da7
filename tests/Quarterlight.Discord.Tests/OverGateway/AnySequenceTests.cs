using CsCheck;
using Quarterlight.Discord.Gateway;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>
/// Whatever the other side does, in whatever order: the source is connected, waits for something bounded, or has stopped with a clear fault; and it
/// never identifies more often than it may.
/// </summary>
public sealed class AnySequenceTests
{
    private const int MostPerDay = 2;

    // The longest of all waits: an hour for the allowance, and what is added to it.
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(61);

    private static readonly Action<FakeSocket>[] Events =
    [
        .. Enumerable.Repeat<Action<FakeSocket>>(GoOn, 12),
        s => s.Hello(),
        s => s.Hello(100),
        s => s.Acknowledge(),
        s => s.Say("""{"op":1,"d":null}"""),
        s => s.Say("""{"op":7,"d":null}"""),
        s => s.Say("""{"op":9,"d":true}"""),
        s => s.Say("""{"op":9,"d":false}"""),
        s => s.Say("""{"op":9}"""),
        s => s.Say("{"),
        s => s.Say("""{"op":0,"t":"READY","s":1,"d":{}}"""),
        s => s.Ready(),
        s => s.Ready("session-3", resume: null),
        s => s.Resumed(5),
        s => s.Interaction(6),
        s => s.Say("""{"op":0,"t":"INTERACTION_CREATE","s":8,"d":{}}"""),
        s => s.SayBinary(9),
        s => s.Close(null),
        s => s.Close(1000),
        s => s.Close(1006),
        s => s.Close(4000),
        s => s.Close(4007),
        s => s.Close(4009),
        s => s.Close(4004),
        s => s.Close(4014),
        s => s.Break(),
    ];

    private int identified;
    private int resumed;
    private int stopped;

    [Fact]
    public async Task AnySequence_NeverStuckAndNeverTooManyIdentifies()
    {
        await Gen.Select(Gen.Int[0, 1_000_000], Gen.Int[0, Events.Length + 14].Array[5, 60])
            .SampleAsync((seed, steps) => PlayAsync(seed, steps), seed: "0000KzGxbuhA", iter: 150, threads: 2);

        // The sequences led somewhere.
        Assert.True(identified >= 60 && resumed >= 8 && stopped >= 3, $"{identified} identified, {resumed} resumed, {stopped} stopped");
    }

    // What an honest server would do next.
    private static void GoOn(FakeSocket socket)
    {
        string? asked = socket.Sent.Select(s => s.Json).LastOrDefault(j => !j.Contains("\"op\":1,", StringComparison.Ordinal));
        if (asked is null)
        {
            socket.Hello();
        }
        else if (asked.Contains("\"op\":6,", StringComparison.Ordinal))
        {
            socket.Resumed(9);
        }
        else
        {
            socket.Ready();
        }
    }

    private async Task PlayAsync(int seed, int[] steps)
    {
        var random = new Random(seed);
        var locked = new Lock();
        double Next()
        {
            lock (locked)
            {
                return random.NextDouble();
            }
        }

        await using SourceRig rig = new SourceRig(() => new GatewayOptions { Token = SourceRig.Token, MostIdentifiesPerDay = MostPerDay })
        {
            RandomSource = Next,
            Prepare = s =>
            {
                double how = Next();
                s.RefusesToOpen = how < 0.15;
                s.NeverOpens = how is > 0.15 and < 0.2;
                s.NeverSends = how is > 0.2 and < 0.25;
                s.AnswersClose = how < 0.8;
            },
        };
        rig.Find = () => Next() < 0.1 ? throw new HttpRequestException() : Task.FromResult(SourceRig.Info(Next() < 0.1 ? 10 : 900, 300));
        rig.Start();
        foreach (int step in steps)
        {
            await NotStuckAsync(rig);
            if (rig.Running.IsCompleted)
            {
                break;
            }

            if (step < Events.Length && rig.Sockets is [.., { Disposed: false } current])
            {
                Events[step](current);
            }
            else if (rig.Time.Waiting is [var first, ..])
            {
                rig.Time.Advance(first > TimeSpan.Zero ? first : TimeSpan.FromMilliseconds(1));
            }

            // Lets the code react, so that sequences go deep; nothing below depends on how far it got.
            await Task.Delay(1);
        }

        Interlocked.Add(ref resumed, rig.Sockets.SelectMany(s => s.Sent).Count(f => f.Json.Contains("\"op\":6,", StringComparison.Ordinal)));
        if (rig.Running.IsFaulted)
        {
            Interlocked.Increment(ref stopped);
            Assert.Contains(Assert.IsType<DiscordException>(rig.Running.Exception!.InnerException).Fault, new[] { DiscordFault.BadToken, DiscordFault.BadIdentify });
        }

        TimeSpan[] identifies = [.. rig.Sockets.SelectMany(s => s.Sent).Where(f => f.Json.Contains("\"op\":2,", StringComparison.Ordinal)).Select(f => f.At).Order()];
        Interlocked.Add(ref identified, identifies.Length);
        Assert.All(identifies.Zip(identifies.Skip(1)), pair => Assert.True(pair.Second - pair.First >= TimeSpan.FromSeconds(5), $"{pair}"));
        Assert.All(identifies.Zip(identifies.Skip(MostPerDay)), pair => Assert.True(pair.Second - pair.First >= TimeSpan.FromHours(24), $"{pair}"));
        Assert.All(rig.Sockets, s => Assert.InRange(s.Sent.Count(f => f.Json.Contains("\"op\":2,", StringComparison.Ordinal)), 0, 1));
    }

    private static Task NotStuckAsync(SourceRig rig) => Eventually.TrueAsync(
        () => rig.Running.IsCompleted || rig.Source.Health.Ready || rig.Time.Waiting.Any(w => w <= LongestWait),
        () => $"stuck: {rig.Source.Health.Detail}, waiting for {string.Join(", ", rig.Time.Waiting)}");
}
