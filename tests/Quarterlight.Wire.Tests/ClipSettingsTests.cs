using Grpc.Core;
using Grpc.Net.Client;
using Quarterlight.Planner;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>A team's thresholds.</summary>
public sealed class ClipSettingsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Settings_NeverSet_DefaultsAtRevisionZero()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        ClipSettings settings = await ReadAsync(planner.Clips);
        Assert.Equal("clipSettings/team", settings.Name);
        Assert.Equal(0, settings.Revision);
        Assert.Equal(new ClipThresholds(), settings.Thresholds);
        Assert.Equal(20, settings.InForce.SpeechToNoiseUseDb);
        Assert.True(settings.InForce.AirConditioningNeedsCare);
    }

    [Fact]
    public async Task Settings_SetAndSetAgain_KeptWithWhatIsInForce()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        ClipSettings first = await WriteAsync(planner.Clips, new ClipThresholds { SpeechToNoiseUseDb = 25, WindNeedsCare = false });
        Assert.Equal(1, first.Revision);
        Assert.NotNull(first.UpdateTime);
        Assert.Equal(first, await ReadAsync(planner.Clips));
        Assert.Equal(25, first.InForce.SpeechToNoiseUseDb);
        Assert.False(first.InForce.WindNeedsCare);
        Assert.False(first.Thresholds.HasTruePeakCareDbtp);
        Assert.Equal(25, (await planner.ReportAsync(Waves.Talk(0.5))).Thresholds.SpeechToNoiseUseDb);

        ClipSettings second = await WriteAsync(planner.Clips, new ClipThresholds(), first.Revision);
        Assert.Equal(2, second.Revision);
        Assert.Equal(20, second.InForce.SpeechToNoiseUseDb);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(1)]
    public async Task Settings_OtherRevision_Aborted(long revision)
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        if (revision == 1)
        {
            await WriteAsync(planner.Clips, new ClipThresholds());
            await WriteAsync(planner.Clips, new ClipThresholds());
        }

        Refused refused = await Refused.ByAsync(planner.Clips.UpdateClipSettingsAsync(new() { Thresholds = new(), Revision = revision }, cancellationToken: Stop));
        Assert.Equal(StatusCode.Aborted, refused.Code);
        Assert.Equal("REVISION_CONFLICT", refused.Info.Reason);
        Assert.Equal(revision == 1 ? "2" : "0", refused.Info.Metadata["revision"]);
    }

    [Fact]
    public async Task Settings_ManyWritersAtOnce_EachAcknowledgedWriteHasARevisionOfItsOwn()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        ClipSettings[] written = await Task.WhenAll(Enumerable.Range(0, 16).Select(i => WriteAsync(planner.Clips, new ClipThresholds { HumCareDb = i })));
        Assert.Equal(Enumerable.Range(1, 16).Select(r => (long)r), written.Select(w => w.Revision).Order());
        Assert.Equal(written.MaxBy(w => w.Revision), await ReadAsync(planner.Clips));
    }

    [Fact]
    public async Task Settings_PlannerStartedAgain_StillThere()
    {
        using var folder = new TempFolder();
        var options = new PlannerHostOptions { DataFolder = folder.Path, Quiet = true };
        ClipSettings written;
        await using (PlannerHost host = await PlannerHost.StartAsync(options, Stop))
        {
            using var channel = GrpcChannel.ForAddress(host.GrpcAddress);
            written = await WriteAsync(new ClipService.ClipServiceClient(channel), new ClipThresholds { LeastSpeechS = 3 });
        }

        await using PlannerHost again = await PlannerHost.StartAsync(options, Stop);
        using var second = GrpcChannel.ForAddress(again.GrpcAddress);
        Assert.Equal(written, await ReadAsync(new ClipService.ClipServiceClient(second)));
    }

    [Fact]
    public async Task Settings_WrongThresholds_EachNamedAndNothingKept()
    {
        await using RunningPlanner planner = await RunningPlanner.StartAsync();
        var wrong = new ClipThresholds { TruePeakCareDbtp = 3, DropoutRedoPerMinute = double.NaN, SpeechToNoiseUseDb = 5 };
        Refused refused = await Refused.ForFieldsAsync(planner.Clips.UpdateClipSettingsAsync(new() { Thresholds = wrong, Revision = -1 }, cancellationToken: Stop));
        refused.Names("thresholds.true_peak_care_dbtp");
        refused.Names("thresholds.dropout_redo_per_minute");
        refused.Names("thresholds.speech_to_noise_care_db");
        refused.Names("revision");
        refused = await Refused.ForFieldsAsync(planner.Clips.UpdateClipSettingsAsync(new(), cancellationToken: Stop));
        refused.Names("thresholds");
        Assert.Equal(0, (await ReadAsync(planner.Clips)).Revision);
    }

    private static async Task<ClipSettings> ReadAsync(ClipService.ClipServiceClient clips) =>
        (await clips.GetClipSettingsAsync(new(), cancellationToken: Stop)).Settings;

    private static async Task<ClipSettings> WriteAsync(ClipService.ClipServiceClient clips, ClipThresholds thresholds, long revision = 0) =>
        (await clips.UpdateClipSettingsAsync(new() { Thresholds = thresholds, Revision = revision }, cancellationToken: Stop)).Settings;
}
