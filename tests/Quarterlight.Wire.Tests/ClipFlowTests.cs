using Google.Protobuf;
using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Uploads that stop, hang up, come all at once, or meet a planner that lacks something.</summary>
public sealed class ClipFlowTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public async Task JudgeClip_FallsSilent_RefusedAsStalled(int messages)
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { UploadIdleLimit = TimeSpan.FromMilliseconds(300) });
        using AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = planner.Clips.JudgeClip(cancellationToken: Stop);
        foreach (JudgeClipRequest request in Begun().Take(messages))
        {
            await call.RequestStream.WriteAsync(request, Stop);
        }

        Refused refused = await Refused.ByAsync(() => ReadToEndAsync(call));
        Assert.Equal(StatusCode.DeadlineExceeded, refused.Code);
        Assert.Equal("STALLED", refused.Info.Reason);
        Assert.Single((await planner.ReportAsync(Waves.Talk(0.2))).Channels);
        planner.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task JudgeClip_TakesTooLong_GivenUp()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { UploadLimit = TimeSpan.FromMilliseconds(300) });
        using AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = planner.Clips.JudgeClip(cancellationToken: Stop);
        await call.RequestStream.WriteAsync(Begun()[0], Stop);
        Refused refused = await Refused.ByAsync(() => ReadToEndAsync(call));
        Assert.Equal(StatusCode.DeadlineExceeded, refused.Code);
        Assert.Equal("TOO_SLOW", refused.Info.Reason);
    }

    [Fact]
    public async Task JudgeClip_LongerThanAUnaryCallMayBe_Judged()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { CallLimit = TimeSpan.FromMilliseconds(50) });
        (_, JudgedClip judged) = await planner.JudgeAsync(Waves.Talk(1), pieceBytes: 10_000, pause: TimeSpan.FromMilliseconds(30));
        Assert.Equal(1, judged.Report.Format.DurationS, 6);
    }

    [Fact]
    public async Task JudgeClip_TwentyAtOnce_AllTheSame()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        byte[] file = Waves.Talk(5);
        ClipReport[] reports = await Task.WhenAll(Enumerable.Range(0, 20).Select(_ => planner.ReportAsync(file)));
        Assert.All(reports, r => Assert.Equal(reports[0], r));
        planner.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task JudgeClip_OneMoreThanMayBeIn_BusyUntilOneHasGone()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { MostClips = 1 });
        using (AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> first = planner.Clips.JudgeClip(cancellationToken: Stop))
        {
            await BeginAsync(first);
            Refused refused = await Refused.ByAsync(() => planner.JudgeAsync(Waves.Talk(0.1)));
            Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
            Assert.Equal("BUSY", refused.Info.Reason);
        }

        await EventuallyAsync(async () =>
        {
            try
            {
                return (await planner.ReportAsync(Waves.Talk(0.1))).Channels.Count == 1;
            }
            catch (RpcException busy) when (busy.StatusCode == StatusCode.ResourceExhausted)
            {
                return false;
            }
        });
    }

    [Fact]
    public async Task JudgeClip_ManyHangUp_NoErrorInTheLog()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        for (int i = 1; i <= 10; i++)
        {
            using AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = planner.Clips.JudgeClip(cancellationToken: Stop);
            foreach (JudgeClipRequest request in Begun().Take(i))
            {
                await call.RequestStream.WriteAsync(request, Stop);
            }
        }

        await EventuallyAsync(() => Task.FromResult(planner.Log.Lines.Count(l => l.Text.Contains("JudgeClip for team local: Cancelled", StringComparison.Ordinal)) == 10));
        planner.Log.VerifyNoErrors();
    }

    [Fact]
    public async Task JudgeClip_DecoderNotInstalled_SaidAndTheNextIsJudged()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync(o => o with { FfmpegPath = "/nowhere/ffmpeg" });
        Refused refused = await Refused.ByAsync(() => planner.JudgeAsync(Waves.Corpus("flac-48k-mono.flac")));
        Assert.Equal(StatusCode.FailedPrecondition, refused.Code);
        Assert.Equal("NO_DECODER", refused.Info.Reason);
        Assert.Contains("WAV", refused.Message, StringComparison.Ordinal);
        Assert.Single((await planner.ReportAsync(Waves.Talk(0.2))).Channels);
    }

    [Theory]
    [InlineData("hang up")]
    [InlineData("stop the planner")]
    public async Task JudgeClip_BrokenOffWhileAFileIsKeptForTheDecoder_NothingStaysOnDisk(string how)
    {
        using var data = new TempFolder();
        using var temp = new TempFolder();
        await using PlannerProcess planner = await PlannerProcess.StartAsync(data.Path, Stop, temp.Path);
        var clips = new ClipService.ClipServiceClient(planner.Channel);
        byte[] flac = Waves.Corpus("flac-48k-mono.flac");
        if (!Decoder.IsInstalled)
        {
            await Decoder.MissingAsync(() => clips.SendAsync([new JudgeClipRequest { Header = new() }, .. Uploads.Pieces(flac, 1000)]));
            Assert.Equal(0, Kept(temp.Path));
            return;
        }

        using (AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = clips.JudgeClip(cancellationToken: Stop))
        {
            await call.RequestStream.WriteAsync(new JudgeClipRequest { Header = new() }, Stop);
            await call.RequestStream.WriteAsync(new JudgeClipRequest { Piece = ByteString.CopyFrom(flac[..(flac.Length / 2)]) }, Stop);
            await EventuallyAsync(() => Task.FromResult(Kept(temp.Path) == 1));
            if (how != "hang up")
            {
                Assert.Equal(0, await planner.TerminateAsync(Stop));
            }
        }

        await EventuallyAsync(() => Task.FromResult(Kept(temp.Path) == 0));
        if (how == "hang up")
        {
            Assert.Equal("FLAC", (await clips.SendAsync([new JudgeClipRequest { Header = new() }, .. Uploads.Pieces(flac, 1000)])).Judged.Report.Format.Words);
            Assert.Equal(0, Kept(temp.Path));
        }
    }

    [Fact]
    public async Task JudgeClip_PlannerKilledWhileAWaveArrives_NothingStaysOnDisk()
    {
        using var data = new TempFolder();
        using var temp = new TempFolder();
        await using PlannerProcess planner = await PlannerProcess.StartAsync(data.Path, Stop, temp.Path);
        using AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call = new ClipService.ClipServiceClient(planner.Channel).JudgeClip(cancellationToken: Stop);
        await BeginAsync(call);
        planner.Kill();
        Assert.Equal(0, Kept(temp.Path));
    }

    // Sends the beginning of a clip until the planner tells how far it is, so until it is being judged.
    private static async Task BeginAsync(AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call)
    {
        byte[] file = Waves.Talk(20);
        Task<bool> told = call.ResponseStream.MoveNext(Stop);
        await call.RequestStream.WriteAsync(new JudgeClipRequest { Header = new() }, Stop);
        foreach (JudgeClipRequest piece in Uploads.Pieces(file, 2000))
        {
            if (told.IsCompleted)
            {
                break;
            }

            await call.RequestStream.WriteAsync(piece, Stop);
            await Task.Delay(10, Stop);
        }

        Assert.True(await told);
    }

    // A header and the first quarter of a clip.
    private static JudgeClipRequest[] Begun()
    {
        byte[] file = Waves.Talk(1);
        return [new JudgeClipRequest { Header = new() }, .. Uploads.Pieces(file[..(file.Length / 4)], 8000)];
    }

    private static int Kept(string folder) => Directory.GetDirectories(folder, "quarterlight-*").Length;

    private static async Task ReadToEndAsync(AsyncDuplexStreamingCall<JudgeClipRequest, JudgeClipResponse> call)
    {
        while (await call.ResponseStream.MoveNext(Stop))
        {
            // Progress, until it ends.
        }
    }

    private static async Task EventuallyAsync(Func<Task<bool>> holds)
    {
        for (int attempt = 0; !await holds(); attempt++)
        {
            Assert.True(attempt < 1000, "it never came to hold");
            await Task.Delay(20, Stop);
        }
    }
}
