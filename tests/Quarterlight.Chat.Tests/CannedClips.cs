using Grpc.Core;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>A clip service with a canned report; it keeps the headers, the sizes of the pieces and the settings.</summary>
public sealed class CannedClips : ClipService.ClipServiceBase
{
    public ClipReport Report { get; set; } = Clip();

    public Func<ClipHeader, Exception?>? Refusal { get; set; }

    public List<ClipHeader> Headers { get; } = [];

    public List<int> Pieces { get; } = [];

    public ClipSettings Settings { get; private set; } = new() { Name = "clipSettings/team", InForce = Defaults() };

    public List<UpdateClipSettingsRequest> Updates { get; } = [];

    /// <summary>Told before each update is looked at, for somebody else to be faster.</summary>
    public Action<CannedClips>? BeforeUpdate { get; set; }

    public static ClipThresholds Defaults() => new()
    {
        SpeechToNoiseUseDb = 20,
        SpeechToNoiseCareDb = 12,
        TruePeakCareDbtp = -1,
        ClippingRedoPerMinute = 6,
        SpeechLowDbov = -45,
        SpeechHighDbov = -12,
        DropoutRedoPerMinute = 2,
        DcOffsetCareFraction = 0.01,
        HumCareDb = 40,
        LeastSpeechS = 1,
        EngineNeedsCare = false,
        WindNeedsCare = true,
        AirConditioningNeedsCare = true,
    };

    public override async Task JudgeClip(IAsyncStreamReader<JudgeClipRequest> requestStream, IServerStreamWriter<JudgeClipResponse> responseStream, ServerCallContext context)
    {
        Assert.True(await requestStream.MoveNext(context.CancellationToken));
        ClipHeader header = requestStream.Current.Header;
        Headers.Add(header.Clone());
        if (Refusal?.Invoke(header) is { } refusal)
        {
            throw refusal;
        }

        long bytes = 0;
        while (await requestStream.MoveNext(context.CancellationToken))
        {
            bytes += requestStream.Current.Piece.Length;
            Pieces.Add(requestStream.Current.Piece.Length);
            var progress = new ClipProgress { ByteCount = bytes, JudgedS = bytes / 1000.0 };
            if (header.HasByteCount)
            {
                progress.Fraction = (double)bytes / header.ByteCount;
            }

            await responseStream.WriteAsync(new JudgeClipResponse { Progress = progress });
        }

        ClipReport report = Report.Clone();
        report.FileName = header.FileName;
        await responseStream.WriteAsync(new JudgeClipResponse { Judged = new JudgedClip { Report = report, Picture = header.IncludePicture ? Reports.Picture() : null } });
    }

    public override Task<GetClipSettingsResponse> GetClipSettings(GetClipSettingsRequest request, ServerCallContext context) => Task.FromResult(new GetClipSettingsResponse { Settings = Settings });

    public override Task<UpdateClipSettingsResponse> UpdateClipSettings(UpdateClipSettingsRequest request, ServerCallContext context)
    {
        Updates.Add(request);
        BeforeUpdate?.Invoke(this);
        if (request.Revision != Settings.Revision)
        {
            throw FakePlanner.Refusal(Google.Rpc.Code.Aborted, "REVISION", "revision", "1");
        }

        Set(request.Thresholds);
        return Task.FromResult(new UpdateClipSettingsResponse { Settings = Settings });
    }

    public void Set(ClipThresholds thresholds)
    {
        ClipThresholds inForce = Defaults();
        inForce.MergeFrom(thresholds);
        Settings = new ClipSettings { Name = "clipSettings/team", Thresholds = thresholds, InForce = inForce, Revision = Settings.Revision + 1 };
    }

    public Task<FakePlanner> StartAsync() =>
        FakePlanner.StartAsync(r => new PlanPlacementResponse { Plan = Plan(r) }, clips: this);

    public async Task<CrewAnswer> AskAsync(string question, CrewAttachment? file, CrewMemory? memory = null, CrewDeskOptions? options = null, IProgress<CrewClipProgress>? progress = null)
    {
        await using FakePlanner fake = await StartAsync();
        return await new CrewDesk(fake.Invoker, options ?? new CrewDeskOptions()).AskAsync(
            new CrewQuestion { Text = question, Attachment = file, Memory = memory ?? CrewMemory.Empty, Progress = progress }, TestContext.Current.CancellationToken);
    }

    public static CrewAttachment File(int bytes = 1000, string name = "take 3.wav") => new(name, bytes, _ => Task.FromResult<Stream>(new MemoryStream(new byte[bytes])));

    public static Plan Plan(PlanPlacementRequest? request = null)
    {
        Scene scene = DemoData.Scenes.First(s => s.Name == (request?.Scene ?? DemoData.MainScene)).Clone();
        if (request?.Changes?.DriveConditions is { } drive)
        {
            scene.DriveConditions = drive;
        }

        return new Plan { Scene = scene, Best = new PlanOption() };
    }

    /// <summary>A report as the planner might send it; every figure is invented and only carried through.</summary>
    public static ClipReport Clip() => new()
    {
        Verdict = new ClipVerdict
        {
            Outcome = ClipOutcome.UseWithCare,
            Headline = "Use with care: the fan runs. Switch it off",
            Reasons =
            {
                new ClipReason { Code = "air-conditioning", Outcome = ClipOutcome.UseWithCare, Words = "A fan is heard", Remedy = "Switch it off for the take", Stretches = { new ClipStretch { StartS = 12, EndS = 31.4 }, new ClipStretch { StartS = 71, EndS = 71.2 } }, Channel = 1 },
                new ClipReason { Code = "speech-to-noise", Outcome = ClipOutcome.UseWithCare, Words = "Speech stands 16.5 dB over the noise", Remedy = "Move closer", Channel = 1, Measured = 16.5, Limit = 20, Unit = "dB" },
            },
        },
        Format = new ClipFormat { Words = "WAV, 24-bit", SampleRateHz = 48000, ChannelCount = 1, DurationS = 95.3, ByteCount = 1000 },
        Channels = { Channel(1) },
        Programme = new Loudness { IntegratedLufs = -23.4, RangeLu = 5 },
        Thresholds = Defaults(),
        Tagger = new TaggerInfo { Name = "tagger", Version = "1" },
    };

    public static ClipChannel Channel(int number) => new()
    {
        Number = number,
        Outcome = ClipOutcome.UseWithCare,
        TruePeakDbtp = -3.24,
        TruePeakAtS = 14,
        ActiveSpeechLevelDbov = -26,
        ActivityFraction = 0.6,
        Loudness = new Loudness { IntegratedLufs = -23.4 },
        Clipping = new ClipStretches(),
        Dropouts = new ClipStretches { Count = 1, TotalS = 0.01, First = { new ClipStretch { StartS = 61, EndS = 61.01 } } },
        SpeechAndNoise = new SpeechAndNoise { NoiseDbfsA = new Estimate { Value = -52, PlusMinus = 1 }, SpeechToNoiseDb = new Estimate { Value = 16.5, PlusMinus = 2 }, SpeechS = 40 },
        Engine = new EngineReading { Cylinders = 4, Rpm = 1804, FiringHz = 60.1, Confidence = 0.9 },
        Tags = new TagReport
        {
            Findings =
            {
                new TagFinding { Tag = ClipTag.Engine, State = TagState.Unsure, Chance = 0.5 },
                new TagFinding { Tag = ClipTag.Wind, State = TagState.Absent, Chance = 0.03 },
                new TagFinding { Tag = ClipTag.AirConditioning, State = TagState.Present, Chance = 0.93 },
                new TagFinding { Tag = ClipTag.Clean, State = TagState.Absent, Chance = 0.01 },
            },
        },
    };

    public static PlanComparison Comparison(string talker = "parent", double shift = 4) => new()
    {
        Channel = 1,
        TalkerId = talker,
        SpeechToNoiseDb = new ComparedLevel { PredictedDb = 21, MeasuredDb = 16.5 },
        PlusMinusDb = 5,
        TiedToSpeech = true,
        Words = "Less than planned, within what the forecast is good for",
        NoiseCorrection = new NoiseCorrection { Shifts = new OctaveLevels { LevelsDb = { Enumerable.Repeat(shift, 7) } } },
    };
}

/// <summary>A clip service that hands every call on to the one a test made; without one it has none of the calls, as an older planner.</summary>
public sealed class FakeClips(ClipService.ClipServiceBase? inner) : ClipService.ClipServiceBase
{
    public override Task JudgeClip(IAsyncStreamReader<JudgeClipRequest> requestStream, IServerStreamWriter<JudgeClipResponse> responseStream, ServerCallContext context) => Inner.JudgeClip(requestStream, responseStream, context);

    public override Task<GetClipSettingsResponse> GetClipSettings(GetClipSettingsRequest request, ServerCallContext context) => Inner.GetClipSettings(request, context);

    public override Task<UpdateClipSettingsResponse> UpdateClipSettings(UpdateClipSettingsRequest request, ServerCallContext context) => Inner.UpdateClipSettings(request, context);

    private ClipService.ClipServiceBase Inner => inner ?? throw new RpcException(new Status(StatusCode.Unimplemented, ""));
}
