using System.Diagnostics;
using System.Security.Cryptography;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Quarterlight.Planner.Errors;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Access;

/// <summary>Round every call: whose it is, how long it may take, what is logged of it, and no exception text to anybody.</summary>
internal sealed class CallGuard(TeamDirectory teams, PlannerHostOptions options, TimeProvider time, ILogger<CallGuard> logger) : Interceptor
{
    private const string TeamState = "quarterlight-team";

    /// <summary>The team of a call under way.</summary>
    public static string TeamOf(ServerCallContext context) => (string)context.UserState[TeamState];

    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        long start = Stopwatch.GetTimestamp();
        string team = "-";
        var status = StatusCode.OK;
        try
        {
            if (context.Method.StartsWith("/quarterlight.", StringComparison.Ordinal))
            {
                team = teams.TeamOf(context);
                context.UserState[TeamState] = team;
            }

            return await continuation(request, context).WaitAsync(options.CallLimit, time, context.CancellationToken).ConfigureAwait(false);
        }
        catch (RpcException refusal)
        {
            status = refusal.StatusCode;
            throw;
        }
        catch (InvalidInputException invalid)
        {
            status = StatusCode.InvalidArgument;
            throw Refusals.Invalid(invalid.Violations);
        }
        catch (TimeoutException)
        {
            status = StatusCode.DeadlineExceeded;
            throw Refusals.TooSlow(options.CallLimit);
        }
        catch (OperationCanceledException) when (context.CancellationToken.IsCancellationRequested)
        {
            status = StatusCode.Cancelled;
            throw new RpcException(new Status(StatusCode.Cancelled, "The caller gave up."));
        }
        catch (Exception exception)
        {
            status = StatusCode.Internal;
            string reference = RandomNumberGenerator.GetHexString(8, lowercase: true);
            logger.CallFailed(exception, context.Method, reference);
            throw Refusals.Internal(reference);
        }
        finally
        {
            if (logger.IsEnabled(LogLevel.Information))
            {
                logger.CallEnded(context.Method, team, status.ToString(), Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }
    }
}
