using Grpc.Core;
using Grpc.Health.V1;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Whether the planner answers, by its own health service.</summary>
internal sealed class PlannerWatch(CallInvoker invoker, TimeProvider time)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(2);

    private readonly Health.HealthClient health = new(invoker);

    /// <summary>True when it serves. Never throws but for the cancellation.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<bool> ServesAsync(CancellationToken cancellation)
    {
        try
        {
            HealthCheckResponse answer = await health.CheckAsync(new HealthCheckRequest(), deadline: (time.GetUtcNow() + Patience).UtcDateTime, cancellationToken: cancellation);
            return answer.Status == HealthCheckResponse.Types.ServingStatus.Serving;
        }
        catch (RpcException)
        {
            cancellation.ThrowIfCancellationRequested();
            return false;
        }
    }
}
