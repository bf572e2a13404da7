using System.Text;

namespace Quarterlight.Audio.Tests;

/// <summary>The iXML chunk, written in each Unicode coding, and what must not be followed.</summary>
public sealed class IxmlTests
{
    private const string Body = """
        <BWFXML><IXML_VERSION>1.5</IXML_VERSION><PROJECT>Night drive</PROJECT><SCENE>12A</SCENE><SCENE>99</SCENE><TAKE>3PU</TAKE><TAPE>D04</TAPE>
        <CIRCLED>TRUE</CIRCLED><FILE_UID>Q-77</FILE_UID><NOTE>Größe &amp; <![CDATA[<fan off>]]></NOTE>
        <SPEED><NOTE>not this one</NOTE><TIMECODE_RATE>25/1</TIMECODE_RATE><TIMESTAMP_SAMPLE_RATE>96000</TIMESTAMP_SAMPLE_RATE>
        <TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI>1</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI>
        <TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>370632704</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO></SPEED>
        <TRACK_LIST><TRACK_COUNT>2</TRACK_COUNT>
        <TRACK><CHANNEL_INDEX>1</CHANNEL_INDEX><INTERLEAVE_INDEX>2</INTERLEAVE_INDEX><NAME>Driver</NAME><FUNCTION>LAV</FUNCTION></TRACK>
        <TRACK><CHANNEL_INDEX>x</CHANNEL_INDEX><NAME>Visor</NAME></TRACK></TRACK_LIST></BWFXML>
        """;

    public static TheoryData<string, bool, int> Codings => new()
    {
        { "utf-8", false, 0 }, { "utf-8", true, 3 }, { "utf-16", true, 4 }, { "utf-16BE", true, 3 }, { "utf-32", true, 8 },
    };

    [Theory]
    [MemberData(nameof(Codings))]
    public async Task Parse_AnyUnicodeCoding_ReadsEveryField(string coding, bool mark, int padding)
    {
        var encoding = Encoding.GetEncoding(coding);
        byte[] chunk = [.. mark ? encoding.GetPreamble() : [], .. encoding.GetBytes($"<?xml version=\"1.0\" encoding=\"{coding}\"?>{Body}"), .. new byte[padding]];
        IxmlMetadata ixml = (await IxmlAsync(chunk))!;
        Assert.Equal("Night drive", ixml.Project);
        Assert.Equal("12A", ixml.Scene);
        Assert.Equal("3PU", ixml.Take);
        Assert.Equal("D04", ixml.Tape);
        Assert.True(ixml.Circled);
        Assert.Equal("Größe & <fan off>", ixml.Note);
        Assert.Equal("Q-77", ixml.FileUid);
        Assert.Equal("25/1", ixml.TimecodeRate);
        Assert.Equal(96_000, ixml.TimestampSampleRateHz);
        Assert.Equal(4_665_600_000ul, ixml.TimestampSamples);
        Assert.Equal([new IxmlTrack(1, 2, "Driver", "LAV"), new IxmlTrack(null, null, "Visor", null)], ixml.Tracks);
    }

    [Fact]
    public async Task Parse_EmptyRoot_GivesNothingButIsPresent()
    {
        IxmlMetadata ixml = (await IxmlAsync("<BWFXML/>"u8.ToArray()))!;
        Assert.Null(ixml.Scene);
        Assert.Null(ixml.Circled);
        Assert.Null(ixml.TimestampSamples);
        Assert.Empty(ixml.Tracks);
    }

    [Theory]
    [InlineData("<!DOCTYPE BWFXML [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><BWFXML><SCENE>&b;</SCENE></BWFXML>")]
    [InlineData("<!DOCTYPE BWFXML SYSTEM \"file:///etc/hostname\"><BWFXML/>")]
    [InlineData("<OTHER><SCENE>1</SCENE></OTHER>")]
    [InlineData("<BWFXML><SCENE>1</BWFXML>")]
    [InlineData("<BWFXML><SCENE>1</SCENE>")]
    [InlineData("<?xml version=\"1.0\" encoding=\"no-such\"?><BWFXML/>")]
    [InlineData("not xml")]
    [InlineData("")]
    public async Task Parse_WhatIsNotIxml_IsNull(string text) => Assert.Null(await IxmlAsync(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public async Task Parse_DeepAndWide_IsBounded()
    {
        string deep = "<BWFXML>" + string.Concat(Enumerable.Repeat("<A>", 50_000));
        Assert.Null(await IxmlAsync(Encoding.UTF8.GetBytes(deep)));
        string wide = "<BWFXML><TRACK_LIST>" + string.Concat(Enumerable.Repeat("<TRACK><NAME>n</NAME></TRACK>", 500)) + "</TRACK_LIST><NOTE>" + new string('n', 9_000) + "</NOTE></BWFXML>";
        IxmlMetadata ixml = (await IxmlAsync(Encoding.UTF8.GetBytes(wide)))!;
        Assert.Equal(64, ixml.Tracks.Count);
        Assert.Equal(4096, ixml.Note!.Length);
    }

    private static async Task<IxmlMetadata?> IxmlAsync(byte[] chunk)
    {
        byte[] file = new WaveBuilder().Chunk("iXML", chunk).Fmt(1, 1, 48_000, 16).Chunk("data", new byte[8]).Build();
        Reading read = await Reading.AllAsync(file, 777);
        Assert.Equal(read.Metadata?.Ixml is null ? 1 : 0, read.Remarks.Count);
        return read.Metadata?.Ixml;
    }
}
