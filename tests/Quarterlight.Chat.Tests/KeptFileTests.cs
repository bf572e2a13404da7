using System.IO.Compression;
using System.Text;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Keeping;
using Quarterlight.V1;
using static Quarterlight.Chat.Tests.KeepingTalk;

namespace Quarterlight.Chat.Tests;

/// <summary>What a team keeps, as files, against the real planner.</summary>
public sealed class KeptFileTests(KeepingPlanner planner) : IClassFixture<KeepingPlanner>
{
    [Fact]
    public async Task Import_OwnExport_IsKeptAlreadyJustSo()
    {
        KeepingTalk talk = planner.Talk;
        (int, int, int) before = await talk.CountAsync();
        foreach ((string kind, string id) in DemoData.Scenes.Select(s => ("scene", s.Name)).Concat(DemoData.Cabins.Select(c => ("car", c.Name))).Concat(DemoData.Kits.Select(k => ("kit", k.Name))).Select(t => (t.Item1, t.Item2[(t.Item2.IndexOf('/', StringComparison.Ordinal) + 1)..])))
        {
            CrewAnswer exported = await talk.AnswerAsync(kind + " export", (kind, id));
            CrewFile file = Assert.Single(exported.Files);
            Assert.Equal(($"{kind}-{id}.json", "application/json"), (file.FileName, file.MediaType));
            string text = Encoding.UTF8.GetString(file.Bytes.Span);
            Assert.DoesNotContain("revision", text, StringComparison.Ordinal);
            Assert.DoesNotContain("updateTime", text, StringComparison.Ordinal);
            CrewAnswer imported = await talk.ImportAsync(kind, file.Bytes.ToArray());
            Assert.Contains("kept already just so", imported.Headline, StringComparison.Ordinal);
        }

        Assert.Equal(before, await talk.CountAsync());
    }

    [Fact]
    public async Task Import_InAnotherTeam_BringsCarAndKitAlong()
    {
        byte[] file = await ExportAsync("scene", "demo-school-run");
        byte[] alone = await ExportAsync("scene", "demo-ferry-queue", ("alone", "true"));
        await using KeepingTalk strangers = await planner.StrangersAsync();

        CrewAnswer answer = await strangers.ImportAsync("scene", file);

        Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
        Assert.Equal((1, 1, 1), await strangers.CountAsync());
        Assert.Equal("scenes/demo-school-run", answer.Memory.SceneName);
        Scene here = await planner.Talk.SceneAsync("demo-school-run"), there = await strangers.SceneAsync("demo-school-run");
        (there.Revision, there.UpdateTime) = (here.Revision, here.UpdateTime);
        Assert.Equal(here, there);

        CrewAnswer lost = await strangers.ImportAsync("scene", alone);
        Assert.Equal(CrewOutcome.Refused, lost.Outcome);
        Assert.Contains("Nothing taken in", lost.Headline, StringComparison.Ordinal);
        Assert.Contains("demo-people-carrier", All(lost), StringComparison.Ordinal);
        Assert.Equal((1, 1, 1), await strangers.CountAsync());
    }

    [Fact]
    public async Task Import_IdsTaken_GetsIdsOfItsOwnAndSaysWhich()
    {
        string text = Encoding.UTF8.GetString(await ExportAsync("scene", "demo-lay-by")).Replace("\"upholstery\": \"UPHOLSTERY_LEATHER\"", "\"upholstery\": \"UPHOLSTERY_CLOTH\"", StringComparison.Ordinal);
        KeepingTalk talk = planner.Talk;

        CrewAnswer answer = await talk.ImportAsync("scene", Encoding.UTF8.GetBytes(text.Replace("\"revision\"", "", StringComparison.Ordinal)));

        Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
        Assert.Contains("as id demo-lay-by-2, because demo-lay-by is taken", answer.Headline, StringComparison.Ordinal);
        Assert.Contains("demo-classic-2", All(answer), StringComparison.Ordinal);
        Assert.Contains("Small kit (invented) is kept already", All(answer), StringComparison.Ordinal);
        Assert.Equal(("cabins/demo-classic-2", "kits/demo-small"), ((await talk.SceneAsync("demo-lay-by-2")).Cabin, (await talk.SceneAsync("demo-lay-by-2")).Kit));
    }

    [Fact]
    public async Task Import_SceneRefused_TakesItsCarAndKitBack()
    {
        string text = Encoding.UTF8.GetString(await ExportAsync("scene", "demo-school-run")).Replace("\"speedKmPerHour\": 50", "\"speedKmPerHour\": 5000", StringComparison.Ordinal);
        await using KeepingTalk strangers = await planner.StrangersAsync();

        CrewAnswer answer = await strangers.ImportAsync("scene", Encoding.UTF8.GetBytes(text));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Contains("speed", answer.Headline, StringComparison.Ordinal);
        Assert.Equal((0, 0, 0), await strangers.CountAsync());
    }

    [Fact]
    public async Task Import_ServerOwnedFieldsAndMark_AreIgnored()
    {
        KeepingTalk talk = planner.Talk;
        string text = Encoding.UTF8.GetString(await ExportAsync("car", "demo-saloon")).Replace("\"displayName\"", "\"revision\": {\"x\": 1}, \"updateTime\": 17, \"displayName\"", StringComparison.Ordinal);

        CrewAnswer answer = await talk.ImportAsync("car", [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)]);

        Assert.Contains("kept already just so", answer.Headline, StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Hostile => new()
    {
        { "", "empty" },
        { "not json", "not JSON: something is wrong at line 1" },
        { "{\"a\":\n,}", "not JSON: something is wrong at line 2" },
        { "[1]", "header \"quarterlight\" is missing" },
        { "{}", "header \"quarterlight\" is missing" },
        { Car("{}", "kit"), "holds a kit, not a car. Use \"kit import\"" },
        { "{\"quarterlight\":{\"kind\":\"car\",\"format\":2},\"car\":{}}", "format 2" },
        { "{\"quarterlight\":{\"kind\":\"car\",\"format\":1}}", "the car itself is missing" },
        { "{\"quarterlight\":{\"kind\":\"car\",\"format\":1,\"x\":1},\"car\":{}}", "quarterlight.x is not known here" },
        { Car("{\"displayName\":\"A\",\"horns\":2}"), "car.horns is not known here; take it out" },
        { Car("{\"displayName\":\"A\",\"displayName\":\"B\"}"), "car.displayName is there twice" },
        { Car("{\"displayName\":\"A\",\"display_name\":\"B\"}"), "car.display name is there twice" },
        { Car("{\"displayName\":7}"), "car.displayName must be text in quotes" },
        { Car("{\"displayName\":\"A\\u0000B\"}"), "car.displayName must be text" },
        { Car("{\"displayName\":\"\\ud800\"}"), "half a character" },
        { Car("{\"bodyStyle\":\"BODY_STYLE_TANK\"}"), "car.bodyStyle must be one of BODY_STYLE_SMALL_HATCH" },
        { Car("{\"measurements\":[]}"), "car.measurements must be an object" },
        { Car("{\"measurements\":{\"shoulderWidthM\":\"wide\"}}"), "car.measurements.shoulderWidthM must be a number" },
        { Car("{\"measurements\":{\"shoulderWidthM\":1e999}}"), "car.measurements.shoulderWidthM must be a number" },
        { Car("{\"measurements\":{\"shoulderWidthM\":" + new string('9', 400) + "}}"), "shoulderWidthM must be a number" },
        { Car("{\"cylinderCount\":99999999999}"), "car.cylinderCount must be a whole number" },
        { Car("{\"glassRoof\":\"yes\"}"), "car.glassRoof must be true or false" },
        { Car("null"), "car must be an object" },
        { Car(string.Concat(Enumerable.Repeat("{\"a\":", 5000)) + "1" + new string('}', 5000)), "deeper than 24 levels" },
        { Car("{\"displayName\":\"\",\"bodyStyle\":\"BODY_STYLE_SALOON\"}"), "name is missing" },
        { "PK\u0003\u0004", "packed" },
        { "{\0}", "zero bytes" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task Import_HostileFile_IsOneClearAnswer(string text, string expected)
    {
        KeepingTalk talk = planner.Talk;
        CrewAnswer answer = await talk.ImportAsync("car", Encoding.UTF8.GetBytes(text));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.True(answer.Private);
        Assert.Contains(expected, All(answer), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Import_BytesThatAreNoText_IsOneClearAnswer()
    {
        var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            archive.CreateEntry("car.json").Open().Dispose();
        }

        KeepingTalk talk = planner.Talk;
        Assert.Contains("packed", (await talk.ImportAsync("car", zip.ToArray())).Headline, StringComparison.Ordinal);
        Assert.Contains("UTF-16", (await talk.ImportAsync("car", Encoding.Unicode.GetPreamble())).Headline, StringComparison.Ordinal);
        Assert.Contains("UTF-8", (await talk.ImportAsync("car", [0x7b, 0xc3, 0x28, 0x7d])).Headline, StringComparison.Ordinal);
        Assert.Contains("256 KiB", (await talk.ImportAsync("car", new byte[KeptFile.LargestBytes + 1])).Headline, StringComparison.Ordinal);
        Assert.Contains("missing", (await talk.RunAsync("car import")).Answer!.Headline, StringComparison.Ordinal);
        Assert.Contains("could not be read", (await talk.RunAsync("car import", new CrewAttachment("a.json", null, _ => throw new IOException("raw")))).Answer!.Headline, StringComparison.Ordinal);
        Assert.Contains("256 KiB", (await talk.RunAsync("car import", new CrewAttachment("a.json", null, _ => Task.FromResult<Stream>(new MemoryStream(new byte[5_000_000]))))).Answer!.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Read_AnyByteChanged_NeverThrows()
    {
        byte[] file = await ExportAsync("kit", "demo-small");
        var random = new Random(3);
        for (int i = 0; i < 3000; i++)
        {
            byte[] changed = [.. file];
            for (int n = random.Next(1, 4); n > 0; n--)
            {
                changed[random.Next(changed.Length)] = (byte)random.Next(256);
            }

            FileRead read = KeptFileReader.Read(changed.AsSpan(0, random.Next(10) == 0 ? random.Next(changed.Length) : changed.Length), "kit");
            Assert.True((read.File is null) != (read.Problems.Count == 0));
        }
    }

    private static string Car(string car, string kind = "car") => $"{{\"quarterlight\":{{\"kind\":\"{kind}\",\"format\":1}},\"car\":{car}}}";

    private async Task<byte[]> ExportAsync(string kind, string id, params (string Option, string Value)[] options) =>
        (await planner.Talk.AnswerAsync(kind + " export", [(kind, id), .. options])).Files[0].Bytes.ToArray();
}
