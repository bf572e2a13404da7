using System.Globalization;
using System.Net.Http.Headers;

namespace Quarterlight.Discord.Rest;

/// <summary>What an answer says about limits (Rate Limits, Header Format). Anything unreadable counts as not said.</summary>
/// <param name="Bucket">Name of the bucket.</param>
/// <param name="Limit">Requests in a window.</param>
/// <param name="Remaining">Requests left in it.</param>
/// <param name="ResetAfter">Time until it is over.</param>
/// <param name="Scope">On 429: user, global or shared.</param>
/// <param name="IsGlobal">On 429: it holds for all requests of the bot.</param>
/// <param name="RetryAfter">On 429: time to wait.</param>
internal readonly record struct LimitHeaders(
    string? Bucket, int? Limit, int? Remaining, TimeSpan? ResetAfter, string? Scope, bool IsGlobal, TimeSpan? RetryAfter)
{
    // No wait is believed beyond this; it also keeps the sums away from overflow.
    private const double LongestSeconds = 7 * 86_400;

    /// <summary>Reads the headers.</summary>
    public static LimitHeaders Read(HttpResponseHeaders headers) => new(
        First(headers, "X-RateLimit-Bucket") is { Length: > 0 and <= 128 } bucket ? bucket : null,
        Whole(headers, "X-RateLimit-Limit"),
        Whole(headers, "X-RateLimit-Remaining"),
        Seconds(First(headers, "X-RateLimit-Reset-After")),
        First(headers, "X-RateLimit-Scope") is "user" or "global" or "shared" ? First(headers, "X-RateLimit-Scope") : null,
        string.Equals(First(headers, "X-RateLimit-Global"), "true", StringComparison.OrdinalIgnoreCase),
        Seconds(First(headers, "Retry-After")));

    /// <summary>A number of seconds with decimals; null when it is none.</summary>
    public static TimeSpan? Seconds(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds) ? Seconds(seconds) : null;

    /// <summary>A number of seconds, held within reason and rounded up to whole milliseconds: being early costs another 429.</summary>
    public static TimeSpan? Seconds(double seconds) =>
        double.IsFinite(seconds) && seconds >= 0 ? TimeSpan.FromMilliseconds(Math.Ceiling(Math.Min(seconds, LongestSeconds) * 1000 - 1e-6)) : null;

    private static string? First(HttpResponseHeaders headers, string name) =>
        headers.TryGetValues(name, out IEnumerable<string>? values) ? values.FirstOrDefault() : null;

    private static int? Whole(HttpResponseHeaders headers, string name) =>
        int.TryParse(First(headers, name), NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : null;
}
