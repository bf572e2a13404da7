using Microsoft.Extensions.Logging;

namespace Quarterlight.Discord.Gateway;

/// <summary>What all connections of a source share, and how the source is at the moment.</summary>
internal sealed class GatewayPlace(GatewayOptions options, IdentifyAllowance allowance, TimeProvider time, Func<double> random, ILogger logger)
{
    private const long Never = long.MinValue;

    private volatile string detail = "not started";
    private volatile bool ready;
    private long lastSign = Never;

    /// <summary>Settings.</summary>
    public GatewayOptions Options { get; } = options;

    /// <summary>When it may identify.</summary>
    public IdentifyAllowance Allowance { get; } = allowance;

    /// <summary>Time.</summary>
    public TimeProvider Time { get; } = time;

    /// <summary>Randomness, from 0 up to but not including 1.</summary>
    public Func<double> Random { get; } = random;

    /// <summary>Log.</summary>
    public ILogger Logger { get; } = logger;

    /// <summary>How it is.</summary>
    public SourceHealth Health => new(ready, detail, SinceLastSign);

    /// <summary>Time since the last sign of life; null before the first.</summary>
    public TimeSpan? SinceLastSign => Interlocked.Read(ref lastSign) is not Never and var sign ? Time.GetElapsedTime(sign) : null;

    /// <summary>The other side gave a sign of life.</summary>
    public void Sign() => Interlocked.Exchange(ref lastSign, Time.GetTimestamp());

    /// <summary>Interactions can arrive.</summary>
    public void Ready()
    {
        detail = "connected";
        ready = true;
    }

    /// <summary>They cannot any more.</summary>
    public void NotReady() => ready = false;

    /// <summary>What it does instead.</summary>
    public void Does(string what)
    {
        ready = false;
        detail = what;
    }
}
