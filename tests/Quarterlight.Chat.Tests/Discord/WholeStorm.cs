using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Crew.Demo;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>What strikes a wave while its answers are under way.</summary>
internal enum StormStrike
{
    /// <summary>Nothing but the faults over HTTP.</summary>
    None,

    /// <summary>The gateway connection is cut.</summary>
    Cut,

    /// <summary>The gateway asks for a new connection (op 7).</summary>
    Reconnect,

    /// <summary>The session is refused for now and may be resumed (op 9, true).</summary>
    SessionRefused,

    /// <summary>The session is over (op 9, false).</summary>
    SessionGone,

    /// <summary>The planner ends and starts again.</summary>
    PlannerRestart,
}

/// <summary>Many users of several servers who ask in waves while faults strike. What is asked by whom and what strikes when is drawn from one seed.</summary>
internal sealed class WholeStorm
{
    public const int UsersOfAServer = 25;
    public const int Servers = 4;

    // Most are quick; one that plans or draws takes as much as a dozen of the others.
    private static readonly string[] Questions =
    [
        "scene list", "car list", "kit list", "law country: Japan frequency: 863 MHz", "help", "help radio", "settings show", "scene show", "sites", "help radio", "plan",
        "ask how far can they trail us?", "plan scene: nothing of that name", "car show", "kit show small kit", "ask what is the law in Japan at 863 MHz?", "scene use school run",
        "quiet-channel heard: 97.7 strong, 98.5 faint", "settings units metric", "scene show", "sites", "law country: Germany frequency: 863 MHz", "car list", "kit list",
    ];

    private static readonly EmulatedFile Clip = new("take 3.wav", "audio/wav", DemoClip.Make());
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(50);

    private readonly EmulatedPlatform platform;
    private readonly Random random;
    private readonly List<SentInteraction> all = [];
    private readonly HashSet<ulong> inGap = [];
    private readonly Dictionary<UserInChannel, VisibleMessage> buttons = [];

    /// <summary>A storm that has not begun.</summary>
    public WholeStorm(EmulatedPlatform platform, int seed)
    {
        this.platform = platform;
#pragma warning disable CA5394 // A test wants the same storm each time.
        random = new Random(seed);
        Strikes = new StormStrike[10];
        Enum.GetValues<StormStrike>().CopyTo(Strikes, 0);
        Strikes[^1] = StormStrike.Cut;
        random.Shuffle(Strikes);
#pragma warning restore CA5394
        Crowd = [.. Enumerable.Range(0, Servers).SelectMany(OfServer)];
    }

    /// <summary>What strikes each wave.</summary>
    public StormStrike[] Strikes { get; }

    /// <summary>Who asks.</summary>
    public IReadOnlyList<UserInChannel> Crowd { get; }

    /// <summary>Everything that was asked.</summary>
    public IReadOnlyList<SentInteraction> All => all;

    /// <summary>Deliveries that were repeated.</summary>
    public int Repeated { get; private set; }

    /// <summary>Asked while there was no connection: it may come too late through no fault of the bot.</summary>
    public IReadOnlySet<ulong> InGap => inGap;

    /// <summary>What goes wrong over HTTP. A further message that may have arrived is never struck: sending it once more is meant.</summary>
    public void Begin()
    {
        foreach (LimitScope scope in Enum.GetValues<LimitScope>())
        {
            Add(FaultKind.RateLimited, "callback$", 12, 0.03, scope);
            Add(FaultKind.RateLimited, "@original$", 8, 0.1, scope);
        }

        Add(FaultKind.Status, "callback$", 25, 0.04);
        Add(FaultKind.CutBefore, "callback$", 25, 0.04);
        Add(FaultKind.CutAfter, "callback$", 25, 0.04);
        Add(FaultKind.ErrorAfter, "callback$", 25, 0.04);
        Add(FaultKind.Hang, "callback$", 5, 0.01);
        Add(FaultKind.Late, "callback$", 10, 0.01);
        Add(FaultKind.Status, "@original$", 20, 0.1);
        Add(FaultKind.CutBefore, "@original$", 10, 0.1);
        Add(FaultKind.CutAfter, "@original$", 10, 0.1);
        Add(FaultKind.ErrorAfter, "@original$", 10, 0.1);
        Add(FaultKind.Status, "^/cdn/", 2, 0.1);
        Add(FaultKind.CutAfter, "^/cdn/", 2, 0.1);

        // Far apart: each of these stops everything for a second, and two in a row would be longer than a first answer may take.
        foreach (int after in (int[])[150, 450, 750])
        {
            platform.Faults.Add(new FaultRule(FaultKind.RateLimitedPage) { Path = "callback$", After = after });
        }

        // The client waits 15 s for this one, so it comes early.
        platform.Faults.Add(new FaultRule(FaultKind.Hang) { Path = "@original$", After = 5 });
    }

    /// <summary>Everybody of the crowd once, one in ten of them delivered twice at once and some of the wave before once more.</summary>
    public IReadOnlyList<SentInteraction> Ask(IEnumerable<UserInChannel> crowd, bool gap = false)
    {
        var asked = new List<SentInteraction>();
        foreach (UserInChannel one in crowd)
        {
            asked.Add(Ask(one));
            if (Draw(10) == 0)
            {
                asked[^1].DeliverAgain();
                Repeated++;
            }

            if (all.Count > 0 && Draw(30) == 0)
            {
                all[Draw(all.Count)].DeliverAgain();
                Repeated++;
            }
        }

        all.AddRange(asked);
        if (gap)
        {
            inGap.UnionWith(asked.Select(a => a.Id));
        }

        return asked;
    }

    /// <summary>Waits until all but a few of them have come to an end, and notes which buttons can be pressed next.</summary>
    /// <param name="asked">What was asked.</param>
    /// <param name="open">How many may still be under way.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task SettleAsync(IReadOnlyList<SentInteraction> asked, int open, CancellationToken cancellation)
    {
        List<SentInteraction> waiting = [.. asked];
        long start = TimeProvider.System.GetTimestamp();
        while (waiting.RemoveAll(StormVerdict.IsOver) >= 0 && waiting.Count > open)
        {
            Assert.True(TimeProvider.System.GetElapsedTime(start) < Patience, $"No end of {string.Join("\n", waiting.Take(10).Select(Story))}");
            await Task.Delay(LookEvery, cancellation);
        }

        foreach (SentInteraction one in asked.Where(a => a.Kind != SentKind.Autocomplete && Answers(a) is [{ Buttons.Count: > 0 }]))
        {
            buttons[Crowd.First(c => c.User.Id == one.User.Id)] = Answers(one)[0];
        }
    }

    // What was asked, and what went over the wire about it.
    private string Story(SentInteraction asked) =>
        $"{asked}: {asked.Json[asked.Json.IndexOf("\"data\"", StringComparison.Ordinal)..]}\n{string.Join("\n", StormVerdict.About(asked, platform.Recording.Requests))}";

    /// <summary>How many of them are still under way.</summary>
    public static int UnderWay(IEnumerable<SentInteraction> asked) => asked.Count(a => !StormVerdict.IsOver(a));

    private SentInteraction Ask(UserInChannel one)
    {
        switch (Draw(100))
        {
            case < 5:
                return one.Type("plan", "scene", "");
            case < 8 when buttons.Remove(one, out VisibleMessage? pressed):
                return one.Press(pressed, pressed.Buttons[Draw(pressed.Buttons.Count)].CustomId!);
            case < 9:
                return Send(one, "clip", Clip);
            default:
                return Send(one, Questions[Draw(Questions.Length)]);
        }
    }

    private void Add(FaultKind kind, string path, int times, double probability, LimitScope scope = LimitScope.User) =>
        platform.Faults.Add(new FaultRule(kind) { Path = path, Times = times, Probability = probability, Scope = scope });

    // Servers known when the session starts; the first is there from the beginning.
    private IEnumerable<UserInChannel> OfServer(int number)
    {
        var channel = number == 0 ? platform.Crew.Channel : platform.AddChannel(platform.AddGuild($"Unit {number + 1}"), "sound");
        return Enumerable.Range(0, UsersOfAServer).Select(u => platform.In(channel, platform.AddUser($"crew.{number}.{u}")));
    }

#pragma warning disable CA5394 // See above.
    private int Draw(int below) => random.Next(below);
#pragma warning restore CA5394
}
