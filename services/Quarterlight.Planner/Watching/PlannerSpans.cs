using System.Diagnostics;
using Grpc.Core;

namespace Quarterlight.Planner.Watching;

/// <summary>A span for each call: its method, its team, how it ended. Nothing of what was asked or answered.</summary>
internal static class PlannerSpans
{
    /// <summary>Name of the source.</summary>
    public const string Name = "Quarterlight.Planner";

    /// <summary>Request header by which a caller says which span the call belongs to (W3C Trace Context).</summary>
    public const string ParentHeader = "traceparent";

    private static readonly ActivitySource s_source = new(Name);

    /// <summary>Begins one; null when nobody listens.</summary>
    /// <param name="method">What is called.</param>
    /// <param name="parent">What the call sent as <see cref="ParentHeader"/>; null when nothing.</param>
    public static Activity? Begin(string method, string? parent)
    {
        if (!s_source.HasListeners())
        {
            return null;
        }

        // The server has an activity of its own for each request, which nobody sees: the span belongs to the caller's, or to none.
        Activity.Current = null;
        ActivityContext.TryParse(parent, null, isRemote: true, out ActivityContext context);
        return s_source.StartActivity(method.TrimStart('/'), ActivityKind.Server, context)?.SetTag("rpc.method", method);
    }

    /// <summary>Says how a call ended.</summary>
    public static void End(Activity? span, string team, StatusCode status)
    {
        span?.SetTag("quarterlight.team", team).SetTag("rpc.response.status_code", status.ToString());
        if (status is StatusCode.Internal or StatusCode.Unknown or StatusCode.DeadlineExceeded or StatusCode.Unavailable or StatusCode.DataLoss)
        {
            span?.SetStatus(ActivityStatusCode.Error);
        }
    }
}
