using System.Text.RegularExpressions;
using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Many users of several servers who ask in waves while faults strike. Everything is drawn from one seed.</summary>
internal sealed partial class WholeStorm(EmulatedPlatform platform, int seed)
{
    // A crew's questions, the quick ones more often than the plan.
    private static readonly string[] Questions =
        ["scene list", "car list", "kit list", "law country: Japan frequency: 863 MHz", "help", "settings show", "scene show", "sites", "levels effort: shout", "plan", "ask how far can they trail us?", "plan scene: nothing of that name"];

#pragma warning disable CA5394 // A test wants the same storm each time.
    private readonly Random random = new(seed);
#pragma warning restore CA5394
    private readonly List<SentInteraction> all = [];

    /// <summary>Everything that was asked.</summary>
    public IReadOnlyList<SentInteraction> All => all;

    /// <summary>Deliveries that were repeated.</summary>
    public int Repeated { get; private set; }

    /// <summary>What goes wrong over HTTP. A further message that may have arrived is never struck: sending it once more is meant.</summary>
    public void Strike()
    {
        foreach (LimitScope scope in Enum.GetValues<LimitScope>())
        {
            Add(FaultKind.RateLimited, "callback$", 12, 0.03, scope);
            Add(FaultKind.RateLimited, "@original$", 8, 0.1, scope);
        }

        Add(FaultKind.RateLimitedPage, "callback$", 5, 0.02);
        Add(FaultKind.Status, "callback$", 20, 0.03);
        Add(FaultKind.Status, "@original$", 20, 0.1);
        Add(FaultKind.CutBefore, "callback$", 20, 0.03);
        Add(FaultKind.CutAfter, "callback$", 20, 0.03);
        Add(FaultKind.ErrorAfter, "callback$", 20, 0.03);
        Add(FaultKind.CutBefore, "@original$", 10, 0.1);
        Add(FaultKind.CutAfter, "@original$", 10, 0.1);
        Add(FaultKind.Hang, "callback$", 5, 0.01);
        Add(FaultKind.Hang, "@original$", 2, 0.05);
    }

    /// <summary>Sends a wave: everybody once, one in ten of them delivered twice.</summary>
    /// <param name="crowd">Who asks.</param>
    public IReadOnlyList<SentInteraction> Wave(IReadOnlyList<UserInChannel> crowd)
    {
        var wave = new List<SentInteraction>();
        foreach (UserInChannel one in crowd)
        {
            SentInteraction asked = Send(one, Questions[Draw(Questions.Length)]);
            wave.Add(asked);
            if (Draw(10) == 0)
            {
                asked.DeliverAgain();
                Repeated++;
            }
        }

        all.AddRange(wave);
        return wave;
    }

    /// <summary>Waits until each of them has its answer, or reads from the platform that there was none.</summary>
    public static async Task SettleAsync(IReadOnlyList<SentInteraction> wave, CancellationToken cancellation)
    {
        foreach (SentInteraction asked in wave)
        {
            await asked.UntilAsync(a => Answers(a).Count > 0 || a.Failed, cancellation, Patience);
        }
    }

    /// <summary>Interactions whose first answer was struck at least once.</summary>
    public IReadOnlySet<ulong> Struck() => platform.Recording.Requests.Where(r => r.Fault is not null && Callback().IsMatch(r.Path))
        .Select(r => ulong.Parse(Callback().Match(r.Path).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)).ToHashSet();

    private void Add(FaultKind kind, string path, int times, double probability, LimitScope scope = LimitScope.User) =>
        platform.Faults.Add(new FaultRule(kind) { Path = path, Times = times, Probability = probability, Scope = scope, RetryAfter = TimeSpan.FromMilliseconds(200) });

#pragma warning disable CA5394 // See above.
    private int Draw(int below) => random.Next(below);
#pragma warning restore CA5394

    [GeneratedRegex("/interactions/([0-9]+)/")]
    private static partial Regex Callback();
}
