using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Keeping;

namespace Quarterlight.Chat.Tests;

/// <summary>An option that is not understood to its end is refused by name, with the way out, and nothing is asked.</summary>
public sealed class CommandRefusalTests
{
    public static TheoryData<string, string> Options => new(CrewCommands.All.Where(c => KeepingCommands.All.All(k => k.Name != c.Name) && c.Name != "ask")
        .SelectMany(c => c.Options.Where(o => o.Kind != CrewOptionKind.File).Select(o => (c.Name, o.Name))));

    [Theory]
    [MemberData(nameof(Options))]
    public async Task Run_Nonsense_IsRefusedWithTheOptionNamed(string command, string option)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();
        foreach (string nonsense in new[] { "qwzx", "7 qwzx 12", "-5 %%", "300 m qwzx", "1e9 parsecs", "visor qwzx", "   ", "\u0007\u200b", new string('9', 300) })
        {
            CrewAnswer answer = await desk.RunAsync(Call(command, (option, nonsense)));

            Assert.Equal(CrewOutcome.Refused, answer.Outcome);
            Assert.True(answer.Private);
            string said = string.Join('\n', answer.Lines.Select(l => l.Text).Prepend(answer.Headline));
            Assert.Contains(said.Split('\n'), l => l.StartsWith(option + ": ", StringComparison.Ordinal) || l.StartsWith(option + " is needed", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("link", "distance", "0.5 m", "1 m", "3 km", "3.1 km")]
    [InlineData("what-if", "speed", null, "0 km/h", "130 km/h", "131 km/h")]
    [InlineData("what-if", "speed", null, "0 mph", "80 mph", "81 mph")]
    [InlineData("link", "frequency", "75 MHz", "76 MHz", "2500 MHz", "2501 MHz")]
    [InlineData("link", "power", "0.0000001 mW", "-60 dBm", "40 dBm", "11 W")]
    [InlineData("link", "reliability", "49", "50", "99.9", "100")]
    [InlineData("channels", "count", "0", "1", "40", "41")]
    [InlineData("channels", "range", null, "20-30 MHz", "5990-6000 MHz", "5990-6001 MHz")]
    [InlineData("channels", "spacing", "0.5 kHz", "1 kHz", "10 MHz", "10.1 MHz")]
    [InlineData("heat", "outside", "-31 C", "-30 C", "55 C", "132 F")]
    [InlineData("heat", "humidity", "0", "1", "100", "101")]
    [InlineData("heat", "roll", "0.4 min", "0.5 min", "4 hours", "241 min")]
    [InlineData("heat", "people", null, "0 adults", "9", "10")]
    [InlineData("heat", "cool-to", "4 C", "5 C", "30 C", "31 C")]
    [InlineData("levels", "headroom", "-1", "0", "30", "31")]
    [InlineData("run-time", "for", "0.5 min", "1 min", "24 hours", "25 hours")]
    [InlineData("run-time", "tracks", "0", "1", "64", "65")]
    [InlineData("run-time", "card-size", "0.4 GB", "0.5 GB", "16 TB", "17 TB")]
    [InlineData("run-time", "sample-rate", "7 kHz", "8 kHz", "384 kHz", "385 kHz")]
    [InlineData("run-time", "reserve", "-1", "0", "60", "61")]
    public async Task Run_BoundsOfTheContract_HoldOnBothSides(string command, string option, string? below, string least, string most, string above)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();
        foreach (string inside in new[] { least, most })
        {
            CrewAnswer answer = await desk.RunAsync(Call(command, (option, inside)));
            Assert.False(answer.Headline.StartsWith(option + ": ", StringComparison.Ordinal), answer.Headline);
        }

        foreach (string outside in new[] { below, above }.OfType<string>())
        {
            CrewAnswer answer = await desk.RunAsync(Call(command, (option, outside)));
            Assert.StartsWith(option + ": ", answer.Headline, StringComparison.Ordinal);
            Assert.Contains("out of range", answer.Headline, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("distance", "300 m")]
    [InlineData("distance", "a quarter mile")]
    [InlineData("distance", "3/4 mile")]
    [InlineData("distance", "0.25 mi")]
    [InlineData("distance", "about 1,000 ft")]
    [InlineData("distance", "5 car lengths")]
    [InlineData("distance", "three hundred metres")]
    [InlineData("distance", "300 metters")]
    [InlineData("distance", "300")]
    [InlineData("speed", "60")]
    [InlineData("speed", "60km/h")]
    [InlineData("speed", "thirty mph")]
    [InlineData("speed", "stationary")]
    [InlineData("country", "the UK")]
    [InlineData("country", "us")]
    [InlineData("country", "New Zealand")]
    [InlineData("frequency", "98.1")]
    [InlineData("frequency", "2.4 GHz")]
    [InlineData("power", "0.05 W")]
    [InlineData("power", "-10 dBm EIRP")]
    [InlineData("power", "250 uV/m at 3 m")]
    [InlineData("surroundings", "Open road")]
    [InlineData("stereo", "yes")]
    [InlineData("kit", "demo-full")]
    [InlineData("kit", "the small kit")]
    [InlineData("scene", "School run that goes wrong (invented)")]
    [InlineData("scene", "driving lesson")]
    public async Task Run_WaysToPutIt_AreUnderstood(string option, string value)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.RunAsync(Call("link", (option, value)), new CrewQuestion { Text = "", Scene = "demo-school-run" });

        Assert.False(answer.Headline.StartsWith(option + ": ", StringComparison.Ordinal), answer.Headline);
    }

    [Theory]
    [InlineData("heat", "outside", "-5")]
    [InlineData("heat", "outside", "minus 5 °C")]
    [InlineData("heat", "outside", "95 degrees F")]
    [InlineData("heat", "start", "2 pm")]
    [InlineData("heat", "start", "9")]
    [InlineData("heat", "start", "half past two")]
    [InlineData("heat", "people", "two adults, a child and a dog")]
    [InlineData("heat", "parked-for", "an hour and a half")]
    [InlineData("run-time", "until", "6:30 pm")]
    [InlineData("run-time", "card-size", "1 TB")]
    [InlineData("channels", "range", "470-494 and 510 to 520 MHz")]
    [InlineData("channels", "avoid", "482-488, 600.5")]
    [InlineData("why", "site", "center console")]
    [InlineData("why", "site", "the parent's visor")]
    [InlineData("why", "site", "driver's sunvisor, inner end")]
    [InlineData("what-if", "without-mic", "omni lavalier")]
    [InlineData("what-if", "without-shot", "camera hood")]
    public async Task Run_MoreWaysToPutIt_AreUnderstood(string command, string option, string value)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.RunAsync(Call(command, (option, value)), new CrewQuestion { Text = "", Scene = "demo-school-run" });

        Assert.False(answer.Headline.StartsWith(option + ": ", StringComparison.Ordinal), answer.Headline);
    }

    [Fact]
    public async Task Run_SeveralBadOptions_AreAllNamedAtOnceAndNothingIsAsked()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.RunAsync(Call("link", ("distance", "300 bananas"), ("country", "Germny"), ("speed", "warp"), ("stereo", "maybe")));

        Assert.Equal("distance: \"300 bananas\" was not understood: say it like \"300 m\", \"1/4 mile\" or \"5 car lengths\", 1 m to 3 km.", answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text == "country: \"Germny\" is no country known here; did you mean Germany?");
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("speed: \"warp\"", StringComparison.Ordinal));
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("stereo: \"maybe\"", StringComparison.Ordinal));
        Assert.Null(desk.Radio.Setup);
    }

    [Theory]
    [InlineData("plann", "There is no command \"plann\": did you mean plan?")]
    [InlineData("whatif", "There is no command \"whatif\": did you mean what-if?")]
    [InlineData("scene lst", "There is no command \"scene lst\": did you mean scene list?")]
    [InlineData("qqqqqqqq", "There is no command \"qqqqqqqq\": say help for what there is, or ask in plain words.")]
    public async Task Run_UnknownCommand_OffersTheNearest(string command, string headline)
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.RunAsync(new CrewCommandCall(command, new Dictionary<string, string>()));

        Assert.Equal(headline, answer.Headline);
        Assert.True(answer.Private);
    }

    [Fact]
    public async Task Run_UnknownOptionAndMissingOne_AreNamed()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.RunAsync(Call("why", ("talkr", "driver")));

        Assert.Equal("why has no option \"talkr\": did you mean talker?", answer.Headline);
        Assert.StartsWith("site is needed: ", answer.Lines[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_WhatIfWithoutAChange_AsksForOne()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        CrewAnswer answer = await desk.RunAsync(Call("what-if", ("scene", "demo-lay-by")));

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Contains("windows: down", answer.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_ClipWithoutAFile_SaysThatOneIsNeeded()
    {
        await using CommandDesk desk = await CommandDesk.StartAsync();

        Assert.StartsWith("file is needed: ", (await desk.RunAsync("clip")).Headline, StringComparison.Ordinal);
        Assert.Equal("plan takes no file.", (await desk.RunAsync(new CrewCommandCall("plan", new Dictionary<string, string>()) { File = DemoClip.Attachment })).Headline);
    }

    private static CrewCommandCall Call(string command, params (string Name, string Value)[] values)
    {
        CrewCommand known = CrewCommands.Find(command)!;
        return new CrewCommandCall(command, values.ToDictionary(v => v.Name, v => v.Value)) { File = known.Options.Any(o => o is { Kind: CrewOptionKind.File, Required: true }) ? DemoClip.Attachment : null };
    }
}
