using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Crew.Clips;

/// <summary>How sending a clip ended: judged, or a problem of the file that the crew can mend.</summary>
/// <param name="Judged">What the planner said of it; null with a problem.</param>
/// <param name="Problem">What was wrong; <see cref="ClipProblem.None"/> when it was judged.</param>
internal sealed record ClipSent(JudgedClip? Judged, ClipProblem Problem);

/// <summary>What can be wrong with a file before the planner has an opinion.</summary>
internal enum ClipProblem
{
    None,
    Empty,
    TooLarge,
    NotReadable,
    Stalled,
    NoVerdict,
}

/// <summary>Sends a clip in pieces and reads the progress meanwhile. Never holds more of the file than a piece.</summary>
internal static class ClipUpload
{
    /// <summary>Bytes of a piece, as the contract suggests.</summary>
    public const int PieceBytes = 64 * 1024;

    /// <summary>Sends the file behind the header.</summary>
    /// <exception cref="RpcException">The planner refused the clip or could not be reached.</exception>
    public static async Task<ClipSent> SendAsync(PlannerClients planner, ClipHeader header, CrewAttachment file, IProgress<CrewClipProgress>? progress, CancellationToken cancellation)
    {
        if (file.ByteCount is 0 or > CrewAttachment.LargestBytes)
        {
            return new ClipSent(null, file.ByteCount is 0 ? ClipProblem.Empty : ClipProblem.TooLarge);
        }

        CrewDeskOptions desk = planner.Desk;
        using var silence = new CancellationTokenSource(desk.ClipStall, desk.Clock);
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancellation, silence.Token);
        ClipProblem problem = ClipProblem.None;
        void Alive() => silence.CancelAfter(desk.ClipStall);
        try
        {
            Stream? stream = await OpenAsync(file, ends.Token).ConfigureAwait(false);
            if (stream is null)
            {
                return new ClipSent(null, ClipProblem.NotReadable);
            }

            await using (stream.ConfigureAwait(false))
            {
                var options = new CallOptions(deadline: desk.Clock.GetUtcNow().UtcDateTime + desk.ClipDeadline, cancellationToken: ends.Token);
                using AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = planner.Clips.JudgeClip(options);
                Task writing = WriteAsync();
                try
                {
                    JudgedClip? judged = await ReadAsync(call.ResponseStream, progress, Alive, ends.Token).ConfigureAwait(false);
                    return new ClipSent(judged, judged is null ? ClipProblem.NoVerdict : ClipProblem.None);
                }
                finally
                {
                    // Whatever ended the reading, the writer must not outlive the stream it reads from.
                    await ends.CancelAsync().ConfigureAwait(false);
                    await writing.ConfigureAwait(false);
                }

                async Task WriteAsync()
                {
                    problem = await WriteAllAsync(call.RequestStream, header, stream, Alive, ends.Token).ConfigureAwait(false);
                    if (problem != ClipProblem.None)
                    {
                        await ends.CancelAsync().ConfigureAwait(false);
                    }
                }
            }
        }
        catch (Exception e) when (e is RpcException { StatusCode: StatusCode.Cancelled } or OperationCanceledException && !cancellation.IsCancellationRequested && (problem != ClipProblem.None || silence.IsCancellationRequested))
        {
            return new ClipSent(null, problem != ClipProblem.None ? problem : ClipProblem.Stalled);
        }
    }

    // What a transport's stream throws is not known here, and none of it may reach the crew.
    private static async Task<Stream?> OpenAsync(CrewAttachment file, CancellationToken cancellation)
    {
        try
        {
            return await file.OpenAsync(cancellation).ConfigureAwait(false);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return null;
        }
    }

    private static async Task<JudgedClip?> ReadAsync(IAsyncStreamReader<JudgeClipResponse> responses, IProgress<CrewClipProgress>? progress, Action alive, CancellationToken cancellation)
    {
        JudgedClip? judged = null;
        while (await responses.MoveNext(cancellation).ConfigureAwait(false))
        {
            alive();
            switch (responses.Current.PartCase)
            {
                case JudgeClipResponse.PartOneofCase.Progress:
                    ClipProgress p = responses.Current.Progress;
                    progress?.Report(new CrewClipProgress(p.ByteCount, p.JudgedS, p.HasFraction ? p.Fraction : null));
                    break;
                case JudgeClipResponse.PartOneofCase.Judged:
                    judged = responses.Current.Judged;
                    break;
            }
        }

        return judged;
    }

    private static async Task<ClipProblem> WriteAllAsync(IClientStreamWriter<JudgeClipRequest> requests, ClipHeader header, Stream stream, Action alive, CancellationToken cancellation)
    {
        byte[] piece = new byte[PieceBytes];
        long sent = 0;
        try
        {
            await requests.WriteAsync(new JudgeClipRequest { Header = header }, cancellation).ConfigureAwait(false);
            while (true)
            {
                int count;
                try
                {
                    count = await stream.ReadAtLeastAsync(piece, PieceBytes, throwOnEndOfStream: false, cancellation).ConfigureAwait(false);
                }
                catch (Exception e) when (e is not OperationCanceledException)
                {
                    return ClipProblem.NotReadable;
                }

                if (count == 0)
                {
                    break;
                }

                sent += count;
                if (sent > CrewAttachment.LargestBytes)
                {
                    return ClipProblem.TooLarge;
                }

                await requests.WriteAsync(new JudgeClipRequest { Piece = ByteString.CopyFrom(piece, 0, count) }, cancellation).ConfigureAwait(false);
                alive();
            }

            if (sent == 0)
            {
                return ClipProblem.Empty;
            }

            await requests.CompleteAsync().ConfigureAwait(false);
        }
        catch (Exception e) when (e is not ArgumentException)
        {
            // Whatever the connection throws when it breaks: the call ended before the file did, and the reader has the reason.
        }

        return ClipProblem.None;
    }
}
