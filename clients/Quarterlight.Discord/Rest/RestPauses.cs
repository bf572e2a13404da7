namespace Quarterlight.Discord.Rest;

/// <summary>Lengths of waits, with jitter so that requests that failed together do not come back together.</summary>
internal sealed class RestPauses(int seed)
{
    private readonly Lock sync = new();
    private readonly Random random = new(seed);

    /// <summary>A wait the platform asked for, and a little more.</summary>
    public TimeSpan Lengthen(TimeSpan wait) => wait + TimeSpan.FromMilliseconds(Draw() * (50 + Math.Min(wait.TotalMilliseconds / 10, 1000)));

    /// <summary>Before the second try of a first answer: there is hardly any time.</summary>
    public TimeSpan Short() => TimeSpan.FromMilliseconds(30 + Draw() * 90);

    /// <summary>Before the next try of anything else: about 0.5 s, then about 1 s, or what the other side asks for.</summary>
    public TimeSpan Next(int attempt, TimeSpan? asked)
    {
        TimeSpan own = TimeSpan.FromMilliseconds(500 * Math.Pow(2, attempt - 1) * (0.5 + Draw()));
        return asked is { } longer && longer > own ? Lengthen(longer) : own;
    }

    private double Draw()
    {
        lock (sync)
        {
            return random.NextDouble();
        }
    }
}
