using Quarterlight.Crew;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about FM channels and about channels for several transmitters.</summary>
public sealed class ChannelTopicTests
{
    private readonly CannedRadio radio = new();

    [Fact]
    public async Task Ask_QuietChannel_RanksAndSendsTheStationsHeard()
    {
        CrewAnswer answer = await radio.AskAsync("find a clear frequency, I hear 97.7 strong and 98.5 faint");

        Assert.Equal("Quietest: 91.3 MHz, then 91.5 MHz and 104.9 MHz.", answer.Headline);
        Assert.Equal("91.3 and 91.5 MHz: reaches 62 m, stations cost nothing; nothing disturbs it.", answer.Lines[0].Text);
        Assert.Equal("104.9 MHz: reaches 41 m, stations cost 6 dB, 104.5 MHz most; the station 400 kHz below is heard in pauses.", answer.Lines[1].Text);
        Assert.Equal([StationStrength.Strong, StationStrength.Faint], radio.Setup!.FollowCar.Stations.Select(s => s.Strength));
    }

    [Fact]
    public async Task Ask_QuietChannelOfADigitalKit_OffersTheKitThatIsFm()
    {
        CrewAnswer answer = await radio.AskAsync("which FM channel is quietest?", scene: "demo-driving-lesson");

        Assert.Equal("The link of the Small kit (invented) is not analogue FM, so no FM channel is needed.", answer.Headline);
        Assert.Equal(CrewOutcome.Answered, (await radio.AskAsync(answer.FollowUps[0], scene: "demo-driving-lesson")).Outcome);
        Assert.Equal(98.1, radio.Setup!.Gear.FrequencyMhz);
    }

    [Fact]
    public async Task Ask_Channels_CompactLinesAndProof()
    {
        CrewAnswer answer = await radio.AskAsync("coordinate 12 bodypacks between 470 and 490 with 25 kHz steps, 400 kHz apart, keep out of 474 to 482, fifth order too");
        CoordinateChannelsRequest asked = radio.Coordination!;

        Assert.Equal("A clean channel for each of 3: nothing they make together falls on any of them, proved.", answer.Headline);
        Assert.Equal("1: 470.100 MHz, 2: 470.475 MHz, 3: 471.225 MHz", answer.Lines[0].Text);
        WirelessTransmitter transmitter = Assert.Single(asked.Transmitters);
        Assert.Equal((12, 25.0, 470.0, 490.0), (transmitter.Count, transmitter.StepKhz, transmitter.TuningRanges.Single().LowMhz, transmitter.TuningRanges.Single().HighMhz));
        Assert.Equal((400, FifthOrder.TwoAndThreeSignal), (asked.Rules.MinSpacingKhz, asked.Rules.FifthOrder));
        Assert.Equal((474.0, 482.0), (asked.Rules.ExcludedBlocks.Single().LowMhz, asked.Rules.ExcludedBlocks.Single().HighMhz));
        Assert.Equal(98.1, asked.Rules.Neighbours.Single().FrequencyMhz);
    }

    [Fact]
    public async Task Ask_ChannelsThatHit_SaysWhichAndHowFarOff()
    {
        radio.Channels.Complete = false;
        radio.Channels.Hits.Add(new IntermodProduct { Words = "2 × 600.600 − 600.000", FrequencyMhz = 601.2, NearestCarrierMhz = 601.225, OffsetKhz = -25 });
        radio.Channels.SpacingFaults.Add("600.000 and 600.200 MHz are 200 kHz apart");

        CrewAnswer answer = await radio.AskAsync("check 600.0 600.6 601.225");

        Assert.Equal([600.0, 600.6, 601.225], radio.Check!.FrequenciesMhz);
        Assert.Equal("They do not go together: 1 product falls on or near a channel and 1 pair is too close.", answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text == "2 × 600.600 − 600.000 falls on 601.200 MHz, 25 kHz from 601.225.");
        Assert.Contains(answer.Lines, l => l.Text == "Too close: 600.000 and 600.200 MHz are 200 kHz apart.");
    }
}
