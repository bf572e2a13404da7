namespace Quarterlight.Discord.Gateway;

/// <summary>Waits before a new connection: anywhere between nothing and an upper end that doubles, so that many clients do not come back in step.</summary>
internal sealed class BackOff(TimeSpan first, TimeSpan most, Func<double> random)
{
    private int tries;

    /// <summary>The next wait.</summary>
    public TimeSpan Next()
    {
        double upper = Math.Min(most.TotalMilliseconds, first.TotalMilliseconds * Math.Pow(2, tries));
        tries = Math.Min(tries + 1, 30);
        return TimeSpan.FromMilliseconds(upper * random());
    }

    /// <summary>Starts anew.</summary>
    public void Reset() => tries = 0;
}
