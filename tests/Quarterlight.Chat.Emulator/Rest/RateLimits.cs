using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>
/// The limits requests are held to (Rate Limits): a bucket for each route and the id it is about, and 50 a second for the bot over all routes that need its token.
/// Real limits are not published; the ones here are ours and can be changed.
/// </summary>
public sealed class RateLimits
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, (int Limit, TimeSpan Window)> byRoute = [];
    private readonly Dictionary<string, (long Start, int Used, TimeSpan Window)> used = [];

    /// <summary>Requests a second over all routes that need the bot's token.</summary>
    public int GlobalPerSecond { get; set; } = 50;

    /// <summary>Requests in <see cref="DefaultWindow"/> for a route that was not set.</summary>
    public int DefaultLimit { get; set; } = 30;

    /// <summary>See <see cref="DefaultLimit"/>.</summary>
    public TimeSpan DefaultWindow { get; set; } = TimeSpan.FromSeconds(1);

    /// <summary>Sets the limit of a route.</summary>
    /// <param name="route">Its pattern, such as "POST /webhooks/:app/:token".</param>
    /// <param name="limit">Requests.</param>
    /// <param name="window">In this time.</param>
    public void Set(string route, int limit, TimeSpan window)
    {
        lock (gate)
        {
            byRoute[route] = (limit, window);
        }
    }

    internal LimitState Take(string route, string about, bool countsGlobally)
    {
        lock (gate)
        {
            long now = TimeProvider.System.GetTimestamp();
            (int limit, TimeSpan window) = byRoute.TryGetValue(route, out (int Limit, TimeSpan Window) set) ? set : (DefaultLimit, DefaultWindow);
            string bucket = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(route)))[..16];
            if (countsGlobally && !TakeOne("global", GlobalPerSecond, TimeSpan.FromSeconds(1), now, out _, out TimeSpan globalReset))
            {
                return new LimitState(bucket, limit, 0, globalReset, Refused: true, Global: true);
            }

            bool taken = TakeOne($"{bucket} {about}", limit, window, now, out int remaining, out TimeSpan reset);
            return new LimitState(bucket, limit, remaining, reset, !taken, Global: false);
        }
    }

    private bool TakeOne(string key, int limit, TimeSpan window, long now, out int remaining, out TimeSpan reset)
    {
        if (!used.TryGetValue(key, out (long Start, int Used, TimeSpan Window) state) || TimeProvider.System.GetElapsedTime(state.Start, now) >= window)
        {
            state = (now, 0, window);
        }

        reset = window - TimeProvider.System.GetElapsedTime(state.Start, now);
        bool taken = state.Used < limit;
        used[key] = state with { Used = state.Used + (taken ? 1 : 0) };
        remaining = Math.Max(0, limit - used[key].Used);
        return taken;
    }
}

/// <summary>Where a bucket stands after a request.</summary>
internal sealed record LimitState(string Bucket, int Limit, int Remaining, TimeSpan Reset, bool Refused, bool Global)
{
    /// <summary>The headers that tell it.</summary>
    public IEnumerable<(string Name, string Value)> Headers(DateTimeOffset now) =>
    [
        ("X-RateLimit-Limit", Limit.ToString(CultureInfo.InvariantCulture)),
        ("X-RateLimit-Remaining", Remaining.ToString(CultureInfo.InvariantCulture)),
        ("X-RateLimit-Reset", Seconds((now + Reset).ToUnixTimeMilliseconds() / 1000.0)),
        ("X-RateLimit-Reset-After", Seconds(Reset.TotalSeconds)),
        ("X-RateLimit-Bucket", Bucket),
    ];

    /// <summary>Seconds with three decimals.</summary>
    public static string Seconds(double seconds) => seconds.ToString("0.000", CultureInfo.InvariantCulture);
}
