using System.Diagnostics;
using System.Security.Cryptography;
using Grpc.Core;
using Grpc.Core.Interceptors;
using Quarterlight.Audio;
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
    public override Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation) =>
        GuardAsync(context, () => continuation(request, context).WaitAsync(options.CallLimit, time, context.CancellationToken));

    /// <inheritdoc/>
    public override Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context, ServerStreamingServerMethod<TRequest, TResponse> continuation) =>
        GuardAsync(context, () => DoneAsync(continuation(request, responseStream, context)));

    /// <inheritdoc/>
    public override Task<TResponse> ClientStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream, ServerCallContext context, ClientStreamingServerMethod<TRequest, TResponse> continuation) =>
        GuardAsync(context, () => continuation(new CallerStream<TRequest>(requestStream), context));

    /// <inheritdoc/>
    public override Task DuplexStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream,
        IServerStreamWriter<TResponse> responseStream,
        ServerCallContext context,
        DuplexStreamingServerMethod<TRequest, TResponse> continuation) =>
        GuardAsync(context, () => DoneAsync(continuation(new CallerStream<TRequest>(requestStream), responseStream, context)));

    /// <summary>
    /// The same round a call that did not come over gRPC. Streams keep their own time: they must end by themselves, since nothing else ends what
    /// is under way.
    /// </summary>
    /// <param name="method">What is called, for the log.</param>
    /// <param name="key">The key, as sent.</param>
    /// <param name="asked">The team it is for, as sent.</param>
    /// <param name="call">The work, for a team.</param>
    /// <param name="cancellation">The caller gives up.</param>
    /// <exception cref="RpcException">Whatever went wrong, in the caller's words.</exception>
    public async Task<T> RunAsync<T>(string method, string? key, string? asked, Func<string, Task<T>> call, CancellationToken cancellation)
    {
        long start = Stopwatch.GetTimestamp();
        string team = "-";
        var status = StatusCode.OK;
        try
        {
            team = IsOurs(method) ? teams.TeamOf(key, asked) : team;
            return await call(team).ConfigureAwait(false);
        }
        catch (Exception exception)
        {
            RpcException refusal = Refusal(exception, method, cancellation);
            status = refusal.StatusCode;
            if (ReferenceEquals(refusal, exception))
            {
                throw;
            }

            throw refusal;
        }
        finally
        {
            if (logger.IsEnabled(LogLevel.Information))
            {
                logger.CallEnded(method, team, status.ToString(), Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }
    }

    private static bool IsOurs(string method) => !method.StartsWith("/grpc.", StringComparison.Ordinal);

    private static async Task<bool> DoneAsync(Task call)
    {
        await call.ConfigureAwait(false);
        return true;
    }

    private Task<T> GuardAsync<T>(ServerCallContext context, Func<Task<T>> call) => RunAsync(
        context.Method,
        context.RequestHeaders.GetValue(TeamDirectory.KeyHeader),
        context.RequestHeaders.GetValue(TeamDirectory.TeamHeader),
        team =>
        {
            context.UserState[TeamState] = team;
            return call();
        },
        context.CancellationToken);

    private RpcException Refusal(Exception exception, string method, CancellationToken cancellation)
    {
        switch (exception)
        {
            case RpcException refusal:
                return refusal;
            case InvalidInputException invalid:
                return Refusals.Invalid(invalid.Violations);
            case AudioFaultException bad:
                return Refusals.Of(bad.Fault, "piece");
            case TimeoutException:
                return Refusals.TooSlow(options.CallLimit);
            // What reading and writing throw once a caller has hung up.
            case OperationCanceledException or IOException or InvalidOperationException when cancellation.IsCancellationRequested:
                return Refusals.GaveUp();
            default:
                string reference = RandomNumberGenerator.GetHexString(8, lowercase: true);
                logger.CallFailed(exception, method, reference);
                return Refusals.Internal(reference);
        }
    }
}
