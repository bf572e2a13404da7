using Google.Rpc;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>What goes wrong with questions about the radio, and how they go on from each other.</summary>
public sealed class RadioTalkTests
{
    private readonly CannedRadio radio = new();

    [Fact]
    public async Task Ask_KitWithoutGear_SaysSoAndOffersAQuestionThatWorks()
    {
        Kit[] bare = [.. DemoData.Kits.Select(k => k.Clone())];
        foreach (Kit kit in bare)
        {
            kit.LinkGear = null;
            kit.WirelessTransmitters.Clear();
        }

        CrewAnswer link = await radio.AskAsync("how far can we fall back?", kits: bare);
        Assert.Equal("The Full kit (invented) has no transmitter for a follow car.", link.Headline);
        Assert.Equal(CrewOutcome.Answered, (await radio.AskAsync(link.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal((98.1, 50, 50), (radio.Setup!.Gear.FrequencyMhz, radio.Setup.Gear.Power, radio.Setup.FollowCar.GapM));

        CrewAnswer law = await radio.AskAsync("are we legal", kits: bare);
        Assert.Equal(CrewOutcome.Refused, law.Outcome);
        Assert.Equal(CrewOutcome.Answered, (await radio.AskAsync(law.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal("DE", radio.LawAsked!.CountryCode);

        CrewAnswer channels = await radio.AskAsync("frequencies for the radio mics", kits: bare);
        Assert.Equal("The kit has no wireless transmitters, so no channels can be found.", channels.Headline);
        Assert.Equal(CrewOutcome.Answered, (await radio.AskAsync(channels.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal(8, Assert.Single(radio.Coordination!.Transmitters).Count);
    }

    [Theory]
    [InlineData("setup.follow_car.gap_m", "The value is 5000 m. It must be 1 to 3000 m.", "Please check the follow car's gap: the value is 5000 m. It must be 1 to 3000 m.")]
    [InlineData("setup.gear.transmit_antenna.height_m", "The value is 9 m. It must be 0.2 to 6 m.", "Please check the transmitter's antenna's height: the value is 9 m. It must be 0.2 to 6 m.")]
    [InlineData("setup.gear.frequency_mhz", "The value is 10 MHz. It must be 76 to 2500 MHz.", "Please check the frequency: the value is 10 MHz. It must be 76 to 2500 MHz.")]
    [InlineData("setup.follow_car.stations[1].frequency_mhz", "The value is 5 MHz.", "Please check the follow car's second station's frequency: the value is 5 MHz.")]
    [InlineData("setup.gear.analogue_fm.target_snr_db", "The value is 90 dB.", "Please check the signal over noise: the value is 90 dB.")]
    [InlineData("transmitters[0].tuning_ranges[0].high_mhz", "It is below the lower edge.", "Please check the first transmitter's first tuning range's upper edge: it is below the lower edge.")]
    [InlineData("rules.excluded_blocks[2].low_mhz", "It is missing.", "Please check the third block to keep out of's lower edge: it is missing.")]
    [InlineData("setup.gear.receive_antenna.place", "It is missing.", "Please check the receiver's antenna's place: it is missing.")]
    public async Task Ask_FieldRefused_SaidInPlainWords(string field, string description, string sentence)
    {
        radio.Refusal = () => FakePlanner.Invalid((field, description));

        CrewAnswer answer = await radio.AskAsync("how far can we fall back?");

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Equal(sentence, answer.Headline);
        Assert.DoesNotContain('_', answer.Headline);
    }

    [Fact]
    public async Task Ask_PlannerWithoutRadio_SaysItIsOlder()
    {
        await using FakePlanner old = await FakePlanner.StartAsync(_ => new PlanPlacementResponse());

        CrewAnswer answer = await new CrewDesk(old.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = "how far can we fall back?", Scene = "demo-school-run" }, TestContext.Current.CancellationToken);

        Assert.StartsWith("This planner is older than this program", answer.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("how far can we fall back?")]
    [InlineData("are we legal")]
    [InlineData("frequencies for the radio mics")]
    [InlineData("check 600.0 600.6")]
    [InlineData("which FM channel is quietest?")]
    public async Task Ask_BareReport_IsAnsweredWithoutFailing(string question)
    {
        (radio.Link, radio.Channels) = (new LinkReport(), new ChannelReport());

        Assert.Equal(CrewOutcome.Answered, (await radio.AskAsync(question)).Outcome);
    }

    [Fact]
    public async Task Ask_HostileWordsFromThePlanner_AreCleaned()
    {
        const string hostile = "@everyone **now** `x` <b>\u001b[31m";
        radio.Link.Blocking = radio.Link.ModelReason = radio.Link.Law.Words = radio.Link.Law.Authority = radio.Link.Law.Rule.Limit = radio.Link.Law.Rule.Document = radio.Link.Law.CountryCode = hostile;
        radio.Link.Changes[0].Words = radio.Link.Advisories[0].Message = radio.Channels.Proof = radio.Channels.Assignments[0].TransmitterId = hostile;
        radio.Channels.Hits.Add(new IntermodProduct { Words = hostile });
        radio.Channels.SpacingFaults.Add(hostile);

        foreach (string question in new[] { "details of the link", "are we legal", "check 600.0 600.6", "is the transmitter legal in <b>@here</b> `Ruri`?" })
        {
            CrewAnswer answer = await radio.AskAsync(question);

            Assert.DoesNotContain(answer.Lines.Select(l => l.Text).Append(answer.Headline).Append(answer.Understood).Concat(answer.FollowUps), t => t.Any(c => c is '@' or '*' or '`' or '<' or '>' or '\u001b'));
        }
    }

    [Fact]
    public async Task FollowUps_OfEveryRadioAnswer_AreUnderstoodAsRadio()
    {
        var vocabulary = new CrewVocabulary(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);
        foreach (string question in new[] { "how far can we fall back?", "with the antenna on the roof in stereo", "what range with a truck between with the antenna outside", "are we legal", "what's the limit in Germany at 863 MHz", "which FM channel is quietest?", "frequencies for the radio mics", "check 600.0 600.6 601.0", "check 600.0" })
        {
            CrewAnswer answer = await radio.AskAsync(question);

            Assert.InRange(answer.FollowUps.Count, 1, 3);
            Assert.All(answer.FollowUps, next => Assert.InRange(RequestReader.Read(next, vocabulary, answer.Memory, UnitPreference.Metric).Intent, CrewIntent.LinkCheck, CrewIntent.CheckChannels));
        }
    }

    [Fact]
    public async Task Ask_OneConversation_GoesOnAndTurnsAway()
    {
        await using FakePlanner fake = await RadioDesk.StartAsync(radio);
        var desk = new CrewDesk(fake.Invoker, new CrewDeskOptions());
        CrewMemory memory = CrewMemory.Empty;
        var intents = new List<CrewIntent>();
        foreach (string question in new[] { "will the link hold at 150 m for the school run?", "in a tunnel?", "use imperial", "and what if we do 40 mph", "details", "list scenes", "is that legal?", "what sites are there?", "what if we do 40 mph" })
        {
            CrewAnswer answer = await desk.AskAsync(new CrewQuestion { Text = question, Memory = memory }, TestContext.Current.CancellationToken);
            (memory, _) = (answer.Memory, 0);
            intents.Add(answer.Intent);
        }

        Assert.Equal([CrewIntent.LinkCheck, CrewIntent.LinkCheck, CrewIntent.SetUnits, CrewIntent.LinkCheck, CrewIntent.LinkCheck, CrewIntent.ListScenes, CrewIntent.LinkLaw, CrewIntent.ListSites, CrewIntent.WhatIf], intents);
        Assert.Equal((150, Surroundings.Tunnel), (radio.Setup!.FollowCar.GapM, radio.Setup.FollowCar.Surroundings));
        Assert.Null(memory.LastRadio);
    }

    [Fact]
    public async Task Ask_EmptyStore_StillAnswersFromTheQuestionAlone()
    {
        await using FakePlanner fake = await FakePlanner.StartAsync(_ => new PlanPlacementResponse(), empty: true, radio: radio);
        var desk = new CrewDesk(fake.Invoker, new CrewDeskOptions());

        foreach (string question in new[] { "is 10 mW on 863 MHz legal in Japan?", "coordinate 8 bodypacks between 470 and 494 MHz", "will the link hold at 50 m on 98.1 MHz with 50 mW?", "check 600.0 600.6" })
        {
            Assert.Equal(CrewOutcome.Answered, (await desk.AskAsync(new CrewQuestion { Text = question }, TestContext.Current.CancellationToken)).Outcome);
        }

        Assert.Equal("This scene has no transmitter for a follow car.", (await desk.AskAsync(new CrewQuestion { Text = "how far can we fall back?" }, TestContext.Current.CancellationToken)).Headline);
    }

    [Fact]
    public async Task Ask_Refused_KeepsTheExceptionToItself()
    {
        radio.Refusal = () => FakePlanner.Refusal(Code.Internal, "REASON", "reference", "ab12");

        Assert.DoesNotContain("Exception", (await radio.AskAsync("link check")).Headline, StringComparison.Ordinal);
    }
}
