using Grpc.Core;
using Quarterlight.Planner.Access;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Upload;
using Quarterlight.V1;

namespace Quarterlight.Planner.Services;

/// <summary>ClipService.</summary>
internal sealed class ClipAdapter(ClipGate gate, ClipAskReader asks, ClipDesk desk, ClipSettingsDesk settings, PlannerHostOptions options, TimeProvider time)
    : ClipService.ClipServiceBase
{
    /// <inheritdoc/>
    public override async Task JudgeClip(IAsyncStreamReader<JudgeClipRequest> requestStream, IServerStreamWriter<JudgeClipResponse> responseStream, ServerCallContext context)
    {
        using WorkGate.Pass pass = gate.Enter();
        ClipHeader header = await HeaderAsync(requestStream, context.CancellationToken);
        ClipAsk ask = await asks.ReadAsync(CallGuard.TeamOf(context), header, "header.", context.CancellationToken);
        await using var bytes = new PieceStream(requestStream);
        JudgedClip judged = await desk.JudgeAsync(
            ask, bytes, (progress, cancellation) => responseStream.WriteAsync(new JudgeClipResponse { Progress = progress }, cancellation), context.CancellationToken);
        await responseStream.WriteAsync(new JudgeClipResponse { Judged = judged }, context.CancellationToken);
    }

    /// <inheritdoc/>
    public override async Task<GetClipSettingsResponse> GetClipSettings(GetClipSettingsRequest request, ServerCallContext context) =>
        new() { Settings = await settings.ReadAsync(CallGuard.TeamOf(context), context.CancellationToken) };

    /// <inheritdoc/>
    public override async Task<UpdateClipSettingsResponse> UpdateClipSettings(UpdateClipSettingsRequest request, ServerCallContext context) =>
        new() { Settings = await settings.WriteAsync(CallGuard.TeamOf(context), request.Thresholds, request.Revision, context.CancellationToken) };

    private async Task<ClipHeader> HeaderAsync(IAsyncStreamReader<JudgeClipRequest> requests, CancellationToken cancellation)
    {
        try
        {
            if (await requests.MoveNext(cancellation).WaitAsync(options.UploadIdleLimit, time, cancellation) && requests.Current.PartCase == JudgeClipRequest.PartOneofCase.Header)
            {
                return requests.Current.Header;
            }
        }
        catch (TimeoutException)
        {
            throw Refusals.Stalled(options.UploadIdleLimit);
        }

        throw Refusals.Invalid("header", "the header is missing", "Send it first, then the pieces of the file");
    }
}
