using System.Text.RegularExpressions;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>What goes wrong with a request.</summary>
public enum FaultKind
{
    /// <summary>A status without the work being done; see <see cref="FaultRule.Status"/>.</summary>
    Status,

    /// <summary>429 without the work being done; see <see cref="FaultRule.Scope"/> and <see cref="FaultRule.RetryAfter"/>.</summary>
    RateLimited,

    /// <summary>429 with a page instead of JSON, as the network in front of the platform may send (from memory).</summary>
    RateLimitedPage,

    /// <summary>Nothing is done and nothing comes back until the client gives up.</summary>
    Hang,

    /// <summary>The work is done later, after <see cref="FaultRule.Delay"/>.</summary>
    Late,

    /// <summary>The connection is cut before the work is done.</summary>
    CutBefore,

    /// <summary>The work is done, then the connection is cut: the client cannot know.</summary>
    CutAfter,

    /// <summary>The work is done, then the answer is a 500: the client cannot know.</summary>
    ErrorAfter,
}

/// <summary>Whose limit a 429 speaks of.</summary>
public enum LimitScope
{
    /// <summary>The bucket's.</summary>
    User,

    /// <summary>The bot's, over all routes.</summary>
    Global,

    /// <summary>The resource's, shared with others.</summary>
    Shared,
}

/// <summary>When something goes wrong, and what.</summary>
/// <param name="Kind">What goes wrong.</param>
public sealed record FaultRule(FaultKind Kind)
{
    /// <summary>Method; null for any.</summary>
    public string? Method { get; init; }

    /// <summary>Regular expression the path must hold, such as "callback$" or "^/api/v10/webhooks/" or "^/cdn/"; null for any path of the API.</summary>
    public string? Path { get; init; }

    /// <summary>How many requests it strikes; null for all.</summary>
    public int? Times { get; init; } = 1;

    /// <summary>Fitting requests let through before it strikes.</summary>
    public int After { get; init; }

    /// <summary>Chance that it strikes a fitting request, 0 to 1, drawn from the plan's seed.</summary>
    public double Probability { get; init; } = 1;

    /// <summary>Status for <see cref="FaultKind.Status"/>.</summary>
    public int Status { get; init; } = 500;

    /// <summary>Wait told by a 429.</summary>
    public TimeSpan RetryAfter { get; init; } = TimeSpan.FromMilliseconds(200);

    /// <summary>Scope told by a 429.</summary>
    public LimitScope Scope { get; init; }

    /// <summary>Delay of <see cref="FaultKind.Late"/>.</summary>
    public TimeSpan Delay { get; init; } = TimeSpan.FromMilliseconds(500);

    internal string Name => Kind switch
    {
        FaultKind.RateLimited => $"{Scope.ToString().ToLowerInvariant()} 429",
        FaultKind.Status => $"status {Status}",
        _ => Kind.ToString(),
    };
}

/// <summary>The faults that are to happen.</summary>
public sealed class FaultPlan
{
    private readonly Lock gate = new();
    private readonly List<Entry> entries = [];
    private readonly Random random;

    internal FaultPlan(int seed) => random = new Random(seed);

    /// <summary>Faults played so far.</summary>
    public int Played { get; private set; }

    /// <summary>Adds a rule. Rules are asked in the order they were added; the first that strikes is played.</summary>
    /// <param name="rule">The rule.</param>
    public void Add(FaultRule rule)
    {
        lock (gate)
        {
            entries.Add(new Entry(rule));
        }
    }

    /// <summary>Nothing goes wrong from here on.</summary>
    public void Clear()
    {
        lock (gate)
        {
            entries.Clear();
        }
    }

    internal FaultRule? Choose(string method, string path)
    {
        lock (gate)
        {
            foreach (Entry entry in entries)
            {
                if (entry.Strikes(method, path, random))
                {
                    Played++;
                    return entry.Rule;
                }
            }

            return null;
        }
    }

    private sealed class Entry(FaultRule rule)
    {
        private readonly Regex path = new(rule.Path ?? "^/api/", RegexOptions.CultureInvariant);
        private int passed;
        private int struck;

        public FaultRule Rule => rule;

        public bool Strikes(string method, string requested, Random random)
        {
            if ((rule.Method is { } m && m != method) || !path.IsMatch(requested) || struck >= (rule.Times ?? int.MaxValue))
            {
                return false;
            }

            if (passed++ < rule.After || (rule.Probability < 1 && random.NextDouble() >= rule.Probability))
            {
                return false;
            }

            struck++;
            return true;
        }
    }
}
