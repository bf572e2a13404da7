using CsCheck;
using Quarterlight.Crew;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>The small parts of understanding, each on its own.</summary>
public sealed class LanguageTests
{
    // Textbook example of an edit distance (kitten, sitting: three single-letter edits).
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("mic", "mic", 0)]
    [InlineData("teh", "the", 1)]
    [InlineData("", "abc", 3)]
    public void Between_TwoWords_CountsSlips(string a, string b, int slips) => Assert.Equal(slips, EditDistance.Between(a, b));

    [Fact]
    public void Between_AnyWords_SymmetricAndBounded() => Gen.Select(Gen.String[Gen.Char['a', 'e'], 0, 8], Gen.String[Gen.Char['a', 'e'], 0, 8]).Sample((a, b) =>
    {
        int slips = EditDistance.Between(a, b);
        Assert.Equal(slips, EditDistance.Between(b, a));
        Assert.InRange(slips, Math.Abs(a.Length - b.Length), Math.Max(a.Length, b.Length));
        Assert.Equal(a == b, slips == 0);
    });

    [Theory]
    [InlineData("visr", "visor")]
    [InlineData("headlinr", "headliner")]
    [InlineData("vosir", "vosir")]
    [InlineData("visor", "visor")]
    [InlineData("xyzzyx", "xyzzyx")]
    [InlineData("mci", "mci")]
    public void Correct_Word_NearestKnownOrItself(string typed, string meant) => Assert.Equal(meant, new Speller(["visor", "headliner", "mirror", "mic"]).Correct(typed));

    [Theory]
    [InlineData("40mph", "40|mph")]
    [InlineData("The driver's mic can't go", "the|driver|mic|can|not|go")]
    [InlineData("80 km/h, A/C on", "80|kmh|ac|on")]
    [InlineData("forty five miles an hour", "forty five|mph")]
    [InlineData("lay-by 2,5", "lay|by|2,5")]
    [InlineData("two hundred and fifty yards", "two hundred fifty|yards")]
    [InlineData("six hundred and six hundred", "six hundred|and|six hundred")]
    [InlineData("470-494 MHz at 99%", "470|to|494|mhz|at|99|percent")]
    public void Split_Text_WordsAndNumbers(string text, string tokens) => Assert.Equal(tokens.Split('|'), Tokenizer.Split(text).Select(t => t.Word));

    [Theory]
    [InlineData("at 40 mph", 64.37376)]
    [InlineData("doing 100 km/h", 100.0)]
    [InlineData("speed 50", 50.0)]
    [InlineData("at 3000 rpm", null)]
    [InlineData("fan at 3", null)]
    [InlineData("3 mics", null)]
    public void SpeedKmPerHour_Text_SpeedOrNone(string text, double? kmPerHour)
    {
        double? read = QuantityReader.SpeedKmPerHour(Tokenizer.Split(text), UnitPreference.Metric);
        Assert.Equal(kmPerHour is null, read is null);
        Assert.Equal(kmPerHour ?? 0, read ?? 0, 6);
    }

    [Theory]
    [InlineData("rear left", "rear-left")]
    [InlineData("left rear", "rear-left")]
    [InlineData("behind the driver", "rear-left")]
    [InlineData("the driver", "driver")]
    [InlineData("back right seat", "rear-right")]
    [InlineData("middle of the road", "")]
    [InlineData("front right", "front-passenger")]
    public void Find_SeatWords_SeatInALeftHandDriveCar(string text, string seatId)
    {
        IReadOnlyList<SeatMention> seats = SeatWords.Find(Tokenizer.Split(text));
        Assert.Equal(seatId, seats.Count == 0 ? "" : seats[0].SeatIds(driverOnLeft: true)[0]);
    }

    [Fact]
    public void SeatIds_BehindTheDriver_FollowsTheDriversSide() =>
        Assert.Equal("rear-right", SeatWords.Find(Tokenizer.Split("behind the driver"))[0].SeatIds(driverOnLeft: false)[0]);

    [Theory]
    [InlineData("windows down", 4, 1)]
    [InlineData("rear windows half down", 2, 0.5)]
    [InlineData("driver window open", 1, 1)]
    [InlineData("windows shut", 0, 0)]
    public void ApplyTo_Windows_OpensThosePanes(string text, int open, double fraction)
    {
        ConditionChanges said = ConditionReader.Read(Tokenizer.Split(text), UnitPreference.Metric);

        DriveConditions after = said.ApplyTo(new DriveConditions(), driverOnLeft: true, ["front-left", "front-right", "rear-left", "rear-right"]);

        Assert.Equal(open, after.OpenWindows.Count);
        Assert.All(after.OpenWindows, w => Assert.Equal(fraction, w.OpenFraction));
        Assert.Equal(after.OpenWindows.Count, after.OpenWindows.Select(w => w.PaneId).Distinct().Count());
    }

    [Fact]
    public void ApplyTo_Conditions_LeavesTheOriginalAlone()
    {
        var before = new DriveConditions { SpeedKmPerHour = 50, EngineSpeedRpm = 2500, OpenWindows = { new WindowOpening { PaneId = "front-left", OpenFraction = 1 } } };
        DriveConditions kept = before.Clone();

        DriveConditions after = ConditionReader.Read(Tokenizer.Split("windows up at 60 mph in heavy rain"), UnitPreference.Metric).ApplyTo(before, true, ["front-left"]);

        Assert.Equal(kept, before);
        Assert.Equal(96.56064, after.SpeedKmPerHour, 6);
        Assert.False(after.HasEngineSpeedRpm);
        Assert.Empty(after.OpenWindows);
        Assert.Equal(Rain.Heavy, after.Rain);
    }
}
