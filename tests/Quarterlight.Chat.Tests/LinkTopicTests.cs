using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about the link: what the planner is asked, and what the crew is told.</summary>
public sealed class LinkTopicTests
{
    private readonly CannedRadio radio = new();

    [Fact]
    public async Task Ask_HowFar_DecisionFirstThenTenLinesAtMost()
    {
        CrewAnswer answer = await radio.AskAsync("how far can we fall back?");

        Assert.Equal("Keep within 45 m (about 9 car lengths) for a link that holds 95 % of the time.", answer.Headline);
        Assert.InRange(answer.Lines.Count, 6, 10);
        Assert.Equal("At 60 m and 50 km/h: holds 91 % of the time, about 2 drop-outs a minute of 130 ms; SNR 37 dB (wanted 40), level -85 dBm, 8 dB to spare, delay under 1 ms.", answer.Lines[0].Text);
        Assert.Equal("Holds 50 % of the time to 210 m, 90 % to 80 m, 95 % to 45 m, 99 % to 20 m.", answer.Lines[1].Text);
        Assert.Equal("To get more: put the transmitter's antenna on the roof (+21.4 dB, +95 m); raise the receiver's antenna to 2.5 m (+3.9 dB, +12 m).", answer.Lines[2].Text);
        Assert.Equal("Law: not lawful without a licence in the United States: 41 dB over the limit of 250 uV/m at 3 m; at the lawful level it reaches 2 m; ask the invented radio office.", answer.Lines[3].Text);
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("How sure: level ±8 dB; path taken as direct and ground wave: the antennas see", StringComparison.Ordinal));
        Assert.Equal(60, radio.Setup!.FollowCar.GapM);
        Assert.Equal(50, radio.Setup.SpeedKmPerHour);
    }

    [Fact]
    public async Task Ask_Picture_ComesWithItsTextAlternative()
    {
        CrewPicture picture = Assert.Single((await radio.AskAsync("link check")).Pictures);

        Assert.Equal("Level against distance: 95 % to 45.7 m.", picture.TextAlternative);
        Assert.Equal("demo-school-run-link.png", picture.FileName);
        Assert.Single((await radio.AskAsync("frequencies for the radio mics")).Pictures);
        Assert.Empty((await radio.AskAsync("link check", picture: false)).Pictures);
    }

    [Fact]
    public async Task Ask_Imperial_EverythingInFeetYardsAndMiles()
    {
        CrewAnswer answer = await radio.AskAsync("will the link hold at 200 yards?", units: UnitPreference.Imperial);

        Assert.Equal("No: at 200 yd the link holds 91 % of the time; keep within 149 ft (about 9 car lengths) for 95 %.", answer.Headline);
        Assert.Contains("31 mph", answer.Lines[0].Text, StringComparison.Ordinal);
        Assert.Contains("limit of 250 uV/m at 3 m", answer.Lines[3].Text, StringComparison.Ordinal);
        Assert.DoesNotContain(answer.Lines, l => System.Text.RegularExpressions.Regex.IsMatch(l.Text.Replace("V/m at 3 m", "", StringComparison.Ordinal), @"\d ?(k?m|km/h)\b"));
        Assert.Equal("Level against distance: 95 % to 150 ft.", answer.Pictures[0].TextAlternative);
    }

    [Theory]
    [InlineData(0.95, 60, "will the link hold at 40 m?", "Yes: at 40 m the link holds 91 % of the time; 95 % is kept up to 60 m (about 12 car lengths).")]
    [InlineData(0.95, 60, "can they follow three car lengths back on the link?", "Yes: at 15 m the link holds 91 % of the time; 95 % is kept up to 60 m (about 12 car lengths).")]
    [InlineData(0.99, 0, "how far can we fall back?", "Do not count on this link: at no distance does it hold 99 % of the time.")]
    [InlineData(0.95, 3.9, "how far can we fall back?", "Keep within 3.5 m (less than a car length) for a link that holds 95 % of the time.")]
    [InlineData(0.95, 1260, "how far can we fall back?", "Keep within 1.2 km for a link that holds 95 % of the time.")]
    public async Task Ask_Ranges_HeadlineNeverPromisesMore(double share, double metres, string question, string headline)
    {
        radio.Link.AskedRange = new LinkRange { AvailabilityFraction = share, RangeM = metres };

        Assert.Equal(headline, (await radio.AskAsync(question)).Headline);
    }

    [Fact]
    public async Task Ask_OverridesOfEveryKind_ReachThePlanner()
    {
        CrewAnswer answer = await radio.AskAsync("will the link hold at 120 m in a tunnel at 30 mph with the antenna on the roof, 50 mW ERP, on 98.3, in stereo, in Germany with a truck between for 99 % of the time?");
        LinkSetup setup = radio.Setup!;

        Assert.Equal((120, Surroundings.Tunnel, LinkSight.TruckBetween, "DE", 0.99), (setup.FollowCar.GapM, setup.FollowCar.Surroundings, setup.FollowCar.Sight, setup.FollowCar.CountryCode, setup.FollowCar.AvailabilityFraction));
        Assert.Equal((98.3, 50, TransmitPowerBasis.Erp), (setup.Gear.FrequencyMhz, setup.Gear.Power, setup.Gear.PowerBasis));
        Assert.True(setup.Gear.AnalogueFm.Stereo);
        Assert.Equal(48.28032, setup.SpeedKmPerHour, 6);
        Assert.Equal((AntennaPlace.OnRoof, AntennaKind.QuarterWaveWhip, false), (setup.Gear.TransmitAntenna.Place, setup.Gear.TransmitAntenna.Kind, setup.Gear.TransmitAntenna.HasShieldingDb));
        Assert.Equal(DemoData.Kits[0].LinkGear.ReceiveAntenna, setup.Gear.ReceiveAntenna);
        Assert.Contains("transmitter's antenna on the roof at 1.60 m as a quarter-wave whip", answer.Understood, StringComparison.Ordinal);
        Assert.Contains("tunnel, a truck or bus between, 48 km/h, Germany", answer.Understood, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_DemoKeptUntouched_ByOverrides()
    {
        Kit before = DemoData.Kits.Single(k => k.Name == "kits/demo-full").Clone();

        await radio.AskAsync("with 5 mW on 99.9 with the antenna on a mast");

        Assert.Equal(before, DemoData.Kits.Single(k => k.Name == "kits/demo-full"));
        Assert.Equal(2.5, radio.Setup!.Gear.TransmitAntenna.HeightM);
    }

    [Fact]
    public async Task Ask_CarLengths_SaysWhatOneIsTakenAs() =>
        Assert.Contains("gap 15 m (3 car lengths at 5 m each)", (await radio.AskAsync("does the link hold at three car lengths?")).Understood, StringComparison.Ordinal);

    [Fact]
    public async Task Ask_SafetyAdvisories_AreNeverCut()
    {
        radio.Link.Advisories.Add(Enumerable.Range(0, 5).Select(i => new Advisory { Code = "s", Message = $"Danger {i}.", Severity = AdvisorySeverity.Safety }));

        CrewAnswer answer = await radio.AskAsync("link check");

        Assert.Equal(7, answer.Lines.Count(l => l.Text.StartsWith("Safety: ", StringComparison.Ordinal)));
        Assert.Equal("Caution: Watch the third thing.", answer.Lines[^2].Text);
        Assert.Equal("And 2 more: ask for details.", answer.Lines[^1].Text);
    }

    [Fact]
    public async Task Ask_NoFollowCar_SaysSoAndOffersAQuestionThatWorks()
    {
        CrewAnswer answer = await radio.AskAsync("how far can we fall back?", scene: "demo-lay-by");

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Equal("The scene Argument in a lay-by (invented) has no follow car, so the gap is not known.", answer.Headline);
        CrewAnswer next = await radio.AskAsync(answer.FollowUps[0], scene: "demo-lay-by");
        Assert.Equal(CrewOutcome.Answered, next.Outcome);
        Assert.Equal(50, radio.Setup!.FollowCar.GapM);
    }
}
