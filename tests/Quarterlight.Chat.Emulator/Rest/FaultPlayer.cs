using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using Quarterlight.Chat.Emulator.Recording;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>Plays faults.</summary>
internal static class FaultPlayer
{
    /// <summary>Plays what happens before the work; true when there is no work to be done any more.</summary>
    public static async Task<bool> BeforeAsync(FaultRule rule, HttpContext http, RecordedRequest record)
    {
        switch (rule.Kind)
        {
            case FaultKind.Status:
                await WriteAsync(http, record, new ApiAnswer(rule.Status, new JsonObject { ["message"] = $"{rule.Status}: emulated fault", ["code"] = 0 })).ConfigureAwait(false);
                return true;
            case FaultKind.RateLimited:
                await WriteAsync(http, record, Limited(http, rule.RetryAfter, rule.Scope)).ConfigureAwait(false);
                return true;
            case FaultKind.RateLimitedPage:
                http.Response.Headers.RetryAfter = Whole(rule.RetryAfter);
                record.Status = http.Response.StatusCode = 429;
                http.Response.ContentType = "text/html";
                await http.Response.WriteAsync("<html><body>error code: 1015</body></html>", http.RequestAborted).ConfigureAwait(false);
                return true;
            case FaultKind.Hang:
                await UntilAbortedAsync(http).ConfigureAwait(false);
                return true;
            case FaultKind.CutBefore:
                http.Abort();
                return true;
            case FaultKind.Late:
                await Task.Delay(rule.Delay, http.RequestAborted).ContinueWith(_ => { }, TaskScheduler.Default).ConfigureAwait(false);
                return false;
            default:
                return false;
        }
    }

    /// <summary>The answer 429 with its headers (Rate Limits, Exceeding A Rate Limit).</summary>
    public static ApiAnswer Limited(HttpContext http, TimeSpan wait, LimitScope scope)
    {
        http.Response.Headers.RetryAfter = Whole(wait);
        http.Response.Headers["X-RateLimit-Scope"] = scope.ToString().ToLowerInvariant();
        if (scope == LimitScope.Global)
        {
            http.Response.Headers["X-RateLimit-Global"] = "true";
        }
        else
        {
            http.Response.Headers["X-RateLimit-Remaining"] = "0";
            http.Response.Headers["X-RateLimit-Reset-After"] = LimitState.Seconds(wait.TotalSeconds);
        }

        return new ApiAnswer(429, new JsonObject { ["message"] = "You are being rate limited.", ["retry_after"] = Math.Round(wait.TotalSeconds, 3), ["global"] = scope == LimitScope.Global });
    }

    /// <summary>Waits until the client gives up.</summary>
    public static async Task UntilAbortedAsync(HttpContext http)
    {
        var aborted = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        await using (http.RequestAborted.Register(aborted.SetResult))
        {
            await aborted.Task.ConfigureAwait(false);
        }
    }

    private static string Whole(TimeSpan wait) => ((int)Math.Ceiling(wait.TotalSeconds)).ToString(CultureInfo.InvariantCulture);

    private static async Task WriteAsync(HttpContext http, RecordedRequest record, ApiAnswer answer)
    {
        record.Status = http.Response.StatusCode = answer.Status;
        record.ErrorCode = answer.ErrorCode;
        record.Answer = answer.Body?.ToJsonString();
        http.Response.ContentType = "application/json";
        await http.Response.WriteAsync(record.Answer ?? "", http.RequestAborted).ConfigureAwait(false);
    }
}
