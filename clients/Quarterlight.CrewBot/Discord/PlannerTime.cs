using Grpc.Core;
using Grpc.Core.Interceptors;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Adds up the time in which at least one call to the planner was under way, for one interaction.</summary>
internal sealed class PlannerTime(TimeProvider time)
{
    private static readonly AsyncLocal<PlannerTime?> Now = new();

    private readonly Lock gate = new();
    private TimeSpan total;
    private int underWay;
    private long since;

    /// <summary>The time so far.</summary>
    public TimeSpan Total
    {
        get
        {
            lock (gate)
            {
                return underWay > 0 ? total + time.GetElapsedTime(since) : total;
            }
        }
    }

    /// <summary>Calls from here on, in this flow of control, count here.</summary>
    public void CountHere() => Now.Value = this;

    /// <summary>Counts the time until the task is done.</summary>
    public async Task WatchAsync(Task task)
    {
        Began();
        try
        {
            await task.ConfigureAwait(false);
        }
        finally
        {
            Ended();
        }
    }

    private void Began()
    {
        lock (gate)
        {
            since = underWay++ == 0 ? time.GetTimestamp() : since;
        }
    }

    private void Ended()
    {
        lock (gate)
        {
            if (--underWay == 0)
            {
                total += time.GetElapsedTime(since);
            }
        }
    }

    /// <summary>Watches calls of one answer each; streams are left out, they last as long as their file.</summary>
    internal sealed class Watch : Interceptor
    {
        public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(
            TRequest request, ClientInterceptorContext<TRequest, TResponse> context, AsyncUnaryCallContinuation<TRequest, TResponse> continuation)
        {
            if (Now.Value is not { } watch)
            {
                return continuation(request, context);
            }

            AsyncUnaryCall<TResponse> call = continuation(request, context);
            return new AsyncUnaryCall<TResponse>(WatchedAsync(call.ResponseAsync, watch), call.ResponseHeadersAsync, call.GetStatus, call.GetTrailers, call.Dispose);
        }

        private static async Task<TResponse> WatchedAsync<TResponse>(Task<TResponse> response, PlannerTime watch)
        {
            await watch.WatchAsync(response).ConfigureAwait(false);
            return await response.ConfigureAwait(false);
        }
    }
}
