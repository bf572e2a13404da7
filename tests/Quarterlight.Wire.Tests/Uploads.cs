using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Uploads a clip as a client does.</summary>
public static class Uploads
{
    /// <summary>Sends a header and a file in pieces; gives what came back.</summary>
    public static Task<(List<ClipProgress> Progress, JudgedClip Judged)> JudgeAsync(
        this RunningPlanner planner, byte[] file, ClipHeader? header = null, int pieceBytes = 65_536, TimeSpan pause = default) =>
        planner.Clips.SendAsync([new JudgeClipRequest { Header = header ?? new ClipHeader() }, .. Pieces(file, pieceBytes)], pause);

    /// <summary>The same, for the report alone.</summary>
    public static async Task<ClipReport> ReportAsync(this RunningPlanner planner, byte[] file, ClipHeader? header = null, int pieceBytes = 65_536) =>
        (await planner.JudgeAsync(file, header, pieceBytes)).Judged.Report;

    /// <summary>The pieces of a file.</summary>
    public static IEnumerable<JudgeClipRequest> Pieces(byte[] file, int pieceBytes) =>
        file.Chunk(pieceBytes).Select(p => new JudgeClipRequest { Piece = UnsafeByteOperations.UnsafeWrap(p) });

    /// <summary>Sends any messages; throws what the planner refused with.</summary>
    public static async Task<(List<ClipProgress> Progress, JudgedClip Judged)> SendAsync(
        this ClipService.ClipServiceClient clips, IEnumerable<JudgeClipRequest> requests, TimeSpan pause = default)
    {
        CancellationToken stop = TestContext.Current.CancellationToken;
        using AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = clips.JudgeClip(cancellationToken: stop);
        Task<(List<ClipProgress>, JudgedClip)> reading = ReadAsync(call.ResponseStream, stop);
        try
        {
            foreach (JudgeClipRequest request in requests)
            {
                await call.RequestStream.WriteAsync(request, stop);
                if (pause > TimeSpan.Zero)
                {
                    await Task.Delay(pause, stop);
                }
            }

            await call.RequestStream.CompleteAsync();
        }
        catch (Exception refused) when (refused is RpcException or InvalidOperationException)
        {
            // The planner ended the call while we were sending; what it said comes from reading.
        }

        return await reading;
    }

    private static async Task<(List<ClipProgress> Progress, JudgedClip Judged)> ReadAsync(IAsyncStreamReader<JudgeClipResponse> responses, CancellationToken stop)
    {
        var progress = new List<ClipProgress>();
        JudgedClip? judged = null;
        while (await responses.MoveNext(stop))
        {
            Assert.Null(judged);
            if (responses.Current.PartCase == JudgeClipResponse.PartOneofCase.Progress)
            {
                progress.Add(responses.Current.Progress);
            }
            else
            {
                judged = responses.Current.Judged;
            }
        }

        Assert.NotNull(judged);
        return (progress, judged);
    }
}
