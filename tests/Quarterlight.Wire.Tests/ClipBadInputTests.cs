using System.IO.Compression;
using Google.Protobuf;
using Grpc.Core;
using Quarterlight.Audio.Tests;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>Uploads that cannot be judged: each is refused in words of its own, and the next one is judged.</summary>
public sealed class ClipBadInputTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Dictionary<string, (Func<byte[]> File, string Words)> s_files = new()
    {
        ["cut off"] = (() => Waves.Talk(1)[..50_000], "ends after"),
        ["nothing"] = (() => [], "no bytes"),
        ["no samples"] = (() => Waves.Pcm16(1, []), "no samples"),
        ["corrupt chunk"] = (() => new WaveBuilder().Chunk("fmt ", [1, 0, 1, 0]).Chunk("data", new byte[1000]).Build(), ""),
        ["more sound said than sent"] = (() => new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", new byte[1000], size: 100_000).Build(), "ends after"),
        ["more sound said than allowed"] = (() => new WaveBuilder().Fmt(1, 1, 48_000, 16).Chunk("data", new byte[1000], size: 0x7FFF_FFFF).Build(), "200 MB"),
        ["no channels"] = (() => new WaveBuilder().Fmt(1, 0, 48_000, 16, blockAlign: 2).Chunk("data", new byte[1000]).Build(), "channels"),
        ["rate of 1 Hz"] = (() => new WaveBuilder().Fmt(1, 1, 1, 16).Chunk("data", new byte[1000]).Build(), "1 Hz"),
        ["rate beyond reason"] = (() => new WaveBuilder().Fmt(1, 1, 4_000_000_000, 16).Chunk("data", new byte[1000]).Build(), "4000000000 Hz"),
        ["archive"] = (Zip, "Upload the sound file itself"),
        ["picture"] = (() => [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, .. new byte[500]], "Upload the sound file itself"),
        ["text"] = (() => [.. Enumerable.Repeat((byte)'a', 500)], "Upload the sound file itself"),
        ["half a FLAC file"] = (() => Waves.Corpus("flac-48k-mono.flac")[..2000], ""),
    };

    private static readonly Dictionary<string, (JudgeClipRequest[] Requests, string Field)> s_messages = new()
    {
        ["nothing"] = ([], "header"),
        ["empty message"] = ([new()], "header"),
        ["piece first"] = ([new() { Piece = ByteString.CopyFrom(1, 2, 3) }], "header"),
        ["second header"] = ([new() { Header = new() }, new() { Header = new() }], "header"),
        ["header between pieces"] = ([new() { Header = new() }, .. Uploads.Pieces(Waves.Talk(0.1), 1000).Take(3), new() { Header = new() }], "header"),
        ["empty piece"] = ([new() { Header = new() }, new() { Piece = ByteString.Empty }], "piece"),
        ["neither"] = ([new() { Header = new() }, new()], "piece"),
        ["piece too large"] = ([new() { Header = new() }, new() { Piece = ByteString.CopyFrom(new byte[(1024 * 1024) + 1]) }], "piece"),
        ["too many bytes said"] = ([new() { Header = new() { ByteCount = 209_715_201 } }], "header.byte_count"),
        ["no bytes said"] = ([new() { Header = new() { ByteCount = 0 } }], "header.byte_count"),
        ["other number of bytes said"] = ([new() { Header = new() { ByteCount = 10_000 } }, .. Uploads.Pieces(Waves.Talk(0.1), 1000)], "header.byte_count"),
        ["name too long"] = ([new() { Header = new() { FileName = new string('a', 201) } }], "header.file_name"),
        ["engine of one cylinder"] = ([new() { Header = new() { Cylinders = 1 } }], "header.cylinders"),
        ["full scale of a whisper"] = ([new() { Header = new() { FullScaleSplDb = 20 } }], "header.full_scale_spl_db"),
        ["full scale is no number"] = ([new() { Header = new() { FullScaleSplDb = double.NaN } }], "header.full_scale_spl_db"),
        ["channel before the first"] = ([new() { Header = new() { PictureChannel = -1 } }], "header.picture_channel"),
        ["threshold out of range"] = ([new() { Header = new() { Thresholds = new() { HumCareDb = 99 } } }], "header.thresholds.hum_care_db"),
        ["care above use"] = ([new() { Header = new() { Thresholds = new() { SpeechToNoiseCareDb = 30 } } }], "header.thresholds.speech_to_noise_care_db"),
        ["talker of no plan"] = ([new() { Header = new() { TalkerId = "driver" } }], "header.talker_id"),
        ["plan is no name"] = ([new() { Header = new() { Plan = "my plan" } }], "header.plan"),
        ["scene is no name"] = ([new() { Header = new() { Scene = "" } }], "header.scene"),
        ["plan is not whole"] = ([new() { Header = new() { SentPlan = new() } }], "header.sent_plan"),
    };

    private readonly RunningPlanner _planner = fixture.Planner;

    public static TheoryData<string> Files => [.. s_files.Keys];

    public static TheoryData<string> Messages => [.. s_messages.Keys];

    [Theory]
    [MemberData(nameof(Files))]
    public async Task JudgeClip_BadFileNamedWav_RefusedThenTheNextIsJudged(string which)
    {
        (Func<byte[]> file, string words) = s_files[which];
        if (which == "half a FLAC file" && !Decoder.IsInstalled)
        {
            await Decoder.MissingAsync(() => _planner.JudgeAsync(file(), new ClipHeader { FileName = "take.wav" }, 1000));
            return;
        }

        Refused refused = await Refused.ForFieldsAsync(() => _planner.JudgeAsync(file(), new ClipHeader { FileName = "take.wav" }, 1000));
        Assert.Equal("piece", Assert.Single(refused.Fields).Field);
        Assert.Contains(words, refused.Fields[0].Description, StringComparison.OrdinalIgnoreCase);
        Assert.Single((await _planner.ReportAsync(Waves.Talk(0.2))).Channels);
    }

    [Theory]
    [MemberData(nameof(Messages))]
    public async Task JudgeClip_WrongMessages_FieldNamedThenTheNextIsJudged(string which)
    {
        (JudgeClipRequest[] requests, string field) = s_messages[which];
        Refused refused = await Refused.ForFieldsAsync(() => _planner.Clips.SendAsync(requests));
        refused.Names(field);
        Assert.Single((await _planner.ReportAsync(Waves.Talk(0.2))).Channels);
    }

    [Fact]
    public async Task JudgeClip_SeveralFieldsWrong_AllNamedAtOnce()
    {
        var header = new ClipHeader { ByteCount = -1, Cylinders = 99, FullScaleSplDb = 300, Thresholds = new() { DcOffsetCareFraction = 2 } };
        Refused refused = await Refused.ForFieldsAsync(() => _planner.JudgeAsync([1], header));
        Assert.Equal(4, refused.Fields.Count);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task JudgeClip_UnknownPlanOrScene_NotFound(bool plan)
    {
        ClipHeader header = plan ? new() { Plan = "plans/never" } : new() { Scene = "scenes/never" };
        Refused refused = await Refused.ByAsync(() => _planner.JudgeAsync(Waves.Talk(0.2), header));
        Assert.Equal(StatusCode.NotFound, refused.Code);
        Assert.EndsWith("/never", refused.Info.Metadata["name"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task JudgeClip_NothingButZeros_JudgedAndSaid()
    {
        ClipReport report = await _planner.ReportAsync(Waves.Silence(2));
        Assert.Equal(ClipOutcome.Redo, report.Verdict.Outcome);
        Assert.Contains("silent", report.Verdict.Reasons.Select(r => r.Code));
        Assert.False(report.Channels[0].HasSamplePeakDbfs);
    }

    // 20 MB of zeros behind the name of a sound.
    private static byte[] Zip()
    {
        using var bytes = new MemoryStream();
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            using Stream entry = zip.CreateEntry("take.wav").Open();
            entry.Write(new byte[20_000_000]);
        }

        return bytes.ToArray();
    }
}
