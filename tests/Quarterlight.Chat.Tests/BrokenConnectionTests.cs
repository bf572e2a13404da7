using Grpc.Core;
using Grpc.Core.Interceptors;
using Quarterlight.Crew;
using Quarterlight.CrewBot;
using GrpcStatus = Grpc.Core.Status;

namespace Quarterlight.Chat.Tests;

/// <summary>The connection to the planner breaks in the middle of a call, as when it is started anew: that is no mistake of the planner's, and the asker is told so.</summary>
public sealed class BrokenConnectionTests
{
    private static CancellationToken Cancellation => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(StatusCode.Internal)]
    [InlineData(StatusCode.Unknown)]
    [InlineData(StatusCode.Cancelled)]
    public async Task Ask_BreaksInMidCall_SaysThatThePlannerCannotBeReached(StatusCode code)
    {
        await using FakePlanner fake = await new CannedClips().StartAsync();
        var breaking = new Breaking(code);
        var desk = new CrewDesk(fake.Invoker.Intercept(breaking), new CrewDeskOptions());

        CrewAnswer plan = await desk.AskAsync(new CrewQuestion { Text = "where do the mics go?" }, Cancellation);
        CrewAnswer clip = await desk.AskAsync(new CrewQuestion { Text = "judge this", Attachment = CannedClips.File(1_000_000) }, Cancellation);

        Assert.Equal(2, breaking.Broken);
        Assert.Equal((CrewOutcome.PlannerUnreachable, CrewOutcome.PlannerUnreachable), (plan.Outcome, clip.Outcome));
        Assert.Equal(plan.Headline, clip.Headline);
        Assert.Contains("cannot be reached", plan.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public void Remote_PlannerAway_IsLookedForEveryFewSeconds()
    {
        // Left to itself the library waits up to two minutes (GrpcChannelOptions.MaxReconnectBackoff).
        Assert.InRange(RemotePlanner.Options().MaxReconnectBackoff!.Value, TimeSpan.FromMilliseconds(500), TimeSpan.FromSeconds(5));
        Assert.True(RemotePlanner.Options().InitialReconnectBackoff < RemotePlanner.Options().MaxReconnectBackoff);
    }

    // What the library throws then: a status of its own with the broken connection beneath it, and while sending the broken connection itself.
    private sealed class Breaking(StatusCode code) : Interceptor
    {
        public int Broken { get; private set; }

        public override AsyncUnaryCall<TResponse> AsyncUnaryCall<TRequest, TResponse>(TRequest request, ClientInterceptorContext<TRequest, TResponse> context, AsyncUnaryCallContinuation<TRequest, TResponse> continuation)
        {
            if (!context.Method.Name.Contains("Plan", StringComparison.Ordinal))
            {
                return continuation(request, context);
            }

            Broken++;
            return new AsyncUnaryCall<TResponse>(Task.FromException<TResponse>(Fault()), Task.FromResult(Metadata.Empty), () => Fault().Status, () => [], () => { });
        }

        public override AsyncDuplexStreamingCall<TRequest, TResponse> AsyncDuplexStreamingCall<TRequest, TResponse>(ClientInterceptorContext<TRequest, TResponse> context, AsyncDuplexStreamingCallContinuation<TRequest, TResponse> continuation)
        {
            Broken++;
            return new AsyncDuplexStreamingCall<TRequest, TResponse>(new Writer<TRequest>(), new Reader<TResponse>(Fault()), Task.FromResult(Metadata.Empty), () => Fault().Status, () => [], () => { });
        }

        private RpcException Fault() => new(new GrpcStatus(code, "not for the crew", new HttpRequestException("not for the crew either")));
    }

    private sealed class Writer<T> : IClientStreamWriter<T>
    {
        public WriteOptions? WriteOptions { get; set; }

        public Task WriteAsync(T message) => throw new HttpRequestException("the connection broke");

        public Task WriteAsync(T message, CancellationToken cancellationToken) => WriteAsync(message);

        public Task CompleteAsync() => Task.CompletedTask;
    }

    private sealed class Reader<T>(RpcException fault) : IAsyncStreamReader<T>
    {
        public T Current => throw fault;

        public Task<bool> MoveNext(CancellationToken cancellationToken) => throw fault;
    }
}
