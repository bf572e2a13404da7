using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.Logging;
using Quarterlight.Planner;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Watching;
using Quarterlight.Tests.Shared;

namespace Quarterlight.Wire.Tests;

/// <summary>What a caller sees of a mistake of ours: a reference and nothing else.</summary>
public sealed class CallGuardTests
{
    [Fact]
    public async Task AnyCall_ThrowsInside_InternalWithAReferenceThatTheLogHas()
    {
        var log = new LogBook();
        using ILoggerFactory factory = LoggerFactory.Create(b => b.AddProvider(log));
        using var meters = new PlannerMeters();
        var guard = new CallGuard(
            new TeamDirectory(new Dictionary<string, string>(), new Dictionary<string, string>()), new PlannerHostOptions { DataFolder = "unused" }, TimeProvider.System, meters, factory.CreateLogger<CallGuard>());

        RpcException seen = await Assert.ThrowsAsync<RpcException>(
            () => guard.UnaryServerHandler<string, string>("request", new OneCall(), (_, _) => throw new InvalidOperationException("the secret of a folder")));

        Google.Rpc.Status status = seen.GetRpcStatus()!;
        Assert.Equal(StatusCode.Internal, seen.StatusCode);
        Assert.DoesNotContain("secret", status.ToString(), StringComparison.Ordinal);
        ErrorInfo info = status.GetDetail<ErrorInfo>()!;
        Assert.Equal(ErrorReasons.Internal, info.Reason);
        string reference = info.Metadata["reference"];
        Assert.Contains(reference, status.Message, StringComparison.Ordinal);
        (LogLevel level, _, string text) = Assert.Single(log.Lines, l => l.Level == LogLevel.Error);
        Assert.Equal(LogLevel.Error, level);
        Assert.Contains(reference, text, StringComparison.Ordinal);
        Assert.Contains("the secret", text, StringComparison.Ordinal);
        Assert.Throws<Xunit.Sdk.TrueException>(log.VerifyNoErrors);
    }

    [Fact]
    public void Reasons_EachListedInTheDocumentation()
    {
        string documented = File.ReadAllText(Path.Combine(RepositoryFolder.Top, "docs", "errors.md"));
        string[] reasons = [.. typeof(ErrorReasons).GetFields().Where(f => f.Name != nameof(ErrorReasons.Domain)).Select(f => (string)f.GetRawConstantValue()!)];
        Assert.NotEmpty(reasons);
        Assert.All(reasons, r => Assert.Contains($"`{r}`", documented, StringComparison.Ordinal));
    }

    private sealed class OneCall : ServerCallContext
    {
        protected override string MethodCore => "/quarterlight.v1.CabinService/GetCabin";

        protected override string HostCore => "localhost";

        protected override string PeerCore => "ipv4:127.0.0.1:1";

        protected override DateTime DeadlineCore => DateTime.MaxValue;

        protected override Metadata RequestHeadersCore { get; } = [];

        protected override CancellationToken CancellationTokenCore => TestContext.Current.CancellationToken;

        protected override Metadata ResponseTrailersCore { get; } = [];

        protected override Grpc.Core.Status StatusCore { get; set; }

        protected override WriteOptions? WriteOptionsCore { get; set; }

        protected override AuthContext AuthContextCore { get; } = new(null, []);

        protected override ContextPropagationToken CreatePropagationTokenCore(ContextPropagationOptions? options) => throw new NotSupportedException();

        protected override Task WriteResponseHeadersAsyncCore(Metadata responseHeaders) => Task.CompletedTask;
    }
}
