using Google.Rpc;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Answers about the radio: what the planner is asked, and what the crew is told.</summary>
public sealed class RadioTopicTests
{
    private readonly CannedRadio radio = new();

    [Fact]
    public async Task Ask_HowFar_DecisionFirstThenTenLinesAtMost()
    {
        CrewAnswer answer = await AskAsync("how far can we fall back?");

        Assert.Equal("Keep within 45 m (about 9 car lengths) for a link that holds 95 % of the time.", answer.Headline);
        Assert.InRange(answer.Lines.Count, 6, 10);
        Assert.Equal("At 60 m and 50 km/h: holds 91 % of the time, 2.4 drop-outs a minute of about 130 ms; SNR 37 dB (wanted 40), level -85 dBm, 8 dB to spare, delay 0.3 ms.", answer.Lines[0].Text);
        Assert.Equal("Holds 50 % of the time to 210 m, 90 % of the time to 80 m, 95 % of the time to 45 m, 99 % of the time to 20 m.", answer.Lines[1].Text);
        Assert.Equal("To get more: put the transmitter's antenna on the roof (+21.4 dB, +95 m); raise the receiver's antenna to 2.5 m (+3.9 dB, +12 m); go mono (0 dB, +0 m).", answer.Lines[2].Text);
        Assert.Equal("Law: not lawful without a licence in the United States: 41 dB over the limit of 250 uV/m at 3 m; at the lawful level it reaches 2 m; ask the invented radio office.", answer.Lines[3].Text);
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("How sure: level ±8 dB; path taken as direct and ground wave: the antennas see", StringComparison.Ordinal));
        Assert.Equal(60, radio.Setup!.FollowCar.GapM);
        Assert.Equal(50, radio.Setup.SpeedKmPerHour);
    }

    [Fact]
    public async Task Ask_Picture_ComesWithItsTextAlternative()
    {
        CrewPicture picture = Assert.Single((await AskAsync("link check")).Pictures);

        Assert.Equal("Level against distance: 95 % to 45.7 m.", picture.TextAlternative);
        Assert.Equal("demo-school-run-link.png", picture.FileName);
        Assert.Single((await AskAsync("frequencies for the radio mics")).Pictures);
        Assert.Empty((await AskAsync("link check", picture: false)).Pictures);
    }

    [Fact]
    public async Task Ask_Imperial_EverythingInFeetYardsAndMiles()
    {
        CrewAnswer answer = await AskAsync("will the link hold at 200 yards?", units: UnitPreference.Imperial);

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

        Assert.Equal(headline, (await AskAsync(question)).Headline);
    }

    [Fact]
    public async Task Ask_OverridesOfEveryKind_ReachThePlanner()
    {
        CrewAnswer answer = await AskAsync("will the link hold at 120 m in a tunnel at 30 mph with the antenna on the roof, 50 mW ERP, on 98.3, in stereo, in Germany with a truck between for 99 % of the time?");
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

        await AskAsync("with 5 mW on 99.9 with the antenna on a mast");

        Assert.Equal(before, DemoData.Kits.Single(k => k.Name == "kits/demo-full"));
        Assert.Equal(2.5, radio.Setup!.Gear.TransmitAntenna.HeightM);
    }

    [Fact]
    public async Task Ask_CarLengths_SaysWhatOneIsTakenAs() =>
        Assert.Contains("gap 15 m (3 car lengths at 5 m each)", (await AskAsync("does the link hold at three car lengths?")).Understood, StringComparison.Ordinal);

    [Fact]
    public async Task Ask_SafetyAdvisories_AreNeverCut()
    {
        radio.Link.Advisories.Add(Enumerable.Range(0, 5).Select(i => new Advisory { Code = "s", Message = $"Danger {i}.", Severity = AdvisorySeverity.Safety }));

        CrewAnswer answer = await AskAsync("link check");

        Assert.Equal(7, answer.Lines.Count(l => l.Text.StartsWith("Safety: ", StringComparison.Ordinal)));
        Assert.Equal("And 3 more: ask for details.", answer.Lines[^1].Text);
    }

    [Fact]
    public async Task Ask_NoFollowCar_SaysSoAndOffersAQuestionThatWorks()
    {
        CrewAnswer answer = await AskAsync("how far can we fall back?", scene: "demo-lay-by");

        Assert.Equal(CrewOutcome.Refused, answer.Outcome);
        Assert.Equal("The scene Argument in a lay-by (invented) has no follow car, so the gap is not known.", answer.Headline);
        CrewAnswer next = await AskAsync(answer.FollowUps[0], scene: "demo-lay-by");
        Assert.Equal(CrewOutcome.Answered, next.Outcome);
        Assert.Equal(50, radio.Setup!.FollowCar.GapM);
    }

    [Fact]
    public async Task Ask_KitWithoutGear_SaysSoAndOffersAQuestionThatWorks()
    {
        Kit[] bare = [.. DemoData.Kits.Select(k => k.Clone())];
        foreach (Kit kit in bare)
        {
            kit.LinkGear = null;
            kit.WirelessTransmitters.Clear();
        }

        CrewAnswer link = await AskAsync("how far can we fall back?", kits: bare);
        Assert.Equal("The Full kit (invented) has no transmitter for a follow car.", link.Headline);
        Assert.Equal(CrewOutcome.Answered, (await AskAsync(link.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal((98.1, 50, 50), (radio.Setup!.Gear.FrequencyMhz, radio.Setup.Gear.Power, radio.Setup.FollowCar.GapM));

        CrewAnswer law = await AskAsync("are we legal", kits: bare);
        Assert.Equal(CrewOutcome.Refused, law.Outcome);
        Assert.Equal(CrewOutcome.Answered, (await AskAsync(law.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal("DE", radio.LawAsked!.CountryCode);

        CrewAnswer channels = await AskAsync("frequencies for the radio mics", kits: bare);
        Assert.Equal("The kit has no wireless transmitters, so no channels can be found.", channels.Headline);
        Assert.Equal(CrewOutcome.Answered, (await AskAsync(channels.FollowUps[0], kits: bare)).Outcome);
        Assert.Equal(8, Assert.Single(radio.Coordination!.Transmitters).Count);
    }

    [Fact]
    public async Task Ask_Law_DecisionRuleAuthorityAndCautions()
    {
        CrewAnswer answer = await AskAsync("what can I legally radiate?");

        Assert.Equal("No, on 98.1 MHz: not lawful without a licence in the United States: 41 dB over the limit of 250 uV/m at 3 m.", answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text == "Rule: any, 88.0 MHz to 108.0 MHz, 250 uV/m at 3 m (Invented rule book, clause 7, 2020).");
        Assert.Contains(answer.Lines, l => l.Text.StartsWith("With a licence: broadcasting", StringComparison.Ordinal));
        Assert.Contains(answer.Lines, l => l.Text == "Ask: the invented radio office.");
        Assert.Contains(answer.Lines, l => l.Text == "Safety: Local law decides; this is not legal advice.");
        Assert.Contains(answer.Lines, l => l.Text.EndsWith("with that the link reaches 2 m.", StringComparison.Ordinal));
    }

    // -47.3 dBm in mW by the definition of the decibel: 10^-4.73 = 1.862e-5 mW = 18.62 nW.
    [Fact]
    public async Task Ask_Law_SaysTheLawfulPowerInWatts() =>
        Assert.Contains((await AskAsync("are we legal")).Lines, l => l.Text.StartsWith("Most that may be radiated: -47.3 dBm EIRP, that is 18.621 nW", StringComparison.Ordinal));

    // 250 uV/m at 3 m is -47.3 dBm EIRP with e = sqrt(30 p)/d (ITU-R P.525); 10 mW is 10 dBm; ERP to EIRP is 2.15 dB.
    [Theory]
    [InlineData("is 10 mW EIRP on 863 MHz legal in Japan?", "JP", 863, 10, null)]
    [InlineData("is 10 mW ERP on 863 MHz legal in Japan?", "JP", 863, 12.15, null)]
    [InlineData("is 10 mW on 863 MHz legal in Japan?", "JP", 863, 12.15, 10.0)]
    [InlineData("is 250 uV/m at 3 m on 322 MHz legal in Japan?", "JP", 322, -47.27, null)]
    public async Task Ask_LawOfAnotherBand_IsLookedUpFromTheQuestionAlone(string question, string country, double mhz, double eirpDbm, double? conductedDbm)
    {
        await AskAsync(question);

        Assert.Equal((country, mhz), (radio.LawAsked!.CountryCode, radio.LawAsked.FrequencyMhz));
        Assert.Equal(eirpDbm, radio.LawAsked.EirpDbm, 1);
        Assert.Equal(conductedDbm is not null, radio.LawAsked.HasConductedPowerDbm);
        Assert.Equal(conductedDbm ?? 0, radio.LawAsked.ConductedPowerDbm, 6);
    }

    [Fact]
    public async Task Ask_LimitWithoutPower_TellsTheLimitAlone()
    {
        CrewAnswer answer = await AskAsync("what's the limit in Japan at 863 MHz");

        Assert.False(radio.LawAsked!.HasEirpDbm);
        Assert.StartsWith("The limit without a licence on 863.0 MHz in the United States is 250 uV/m at 3 m.", answer.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_UnknownCountry_SaysStrictestWasTaken()
    {
        radio.Law.CountryCode = "";

        CrewAnswer answer = await AskAsync("is 10 mW on 863 MHz legal in Ruritania?");

        Assert.Equal("Ruritania", radio.LawAsked!.CountryCode);
        Assert.Contains("the strictest limit known, as the country is not known", answer.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(LawStatus.WithinExemptLimit, "Yes, on 98.1 MHz: lawful without a licence")]
    [InlineData(LawStatus.NeedsLicence, "No, on 98.1 MHz: only with a licence")]
    [InlineData(LawStatus.Forbidden, "No, on 98.1 MHz: forbidden")]
    [InlineData(LawStatus.NoRuleKnown, "Not known, on 98.1 MHz: no rule is known here")]
    public async Task Ask_EveryVerdict_DecisionFirst(LawStatus status, string start)
    {
        radio.Link.Law.Status = status;

        Assert.StartsWith(start, (await AskAsync("are we legal")).Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_QuietChannel_RanksAndSendsTheStationsHeard()
    {
        CrewAnswer answer = await AskAsync("find a clear frequency, I hear 97.7 strong and 98.5 faint");

        Assert.Equal("Quietest: 91.3 MHz, then 104.9 MHz.", answer.Headline);
        Assert.Equal("91.3 MHz: reaches 62 m, stations cost nothing; Nothing disturbs it.", answer.Lines[0].Text);
        Assert.Equal("104.9 MHz: reaches 41 m, stations cost 6 dB, 104.5 MHz most; The station 400 kHz below is heard in pauses.", answer.Lines[1].Text);
        Assert.Equal([StationStrength.Strong, StationStrength.Faint], radio.Setup!.FollowCar.Stations.Select(s => s.Strength));
    }

    [Fact]
    public async Task Ask_QuietChannelOfADigitalKit_OffersTheKitThatIsFm()
    {
        CrewAnswer answer = await AskAsync("which FM channel is quietest?", scene: "demo-driving-lesson");

        Assert.Equal("The link of the Small kit (invented) is not analogue FM, so no FM channel is needed.", answer.Headline);
        Assert.Equal(CrewOutcome.Answered, (await AskAsync(answer.FollowUps[0], scene: "demo-driving-lesson")).Outcome);
        Assert.Equal(98.1, radio.Setup!.Gear.FrequencyMhz);
    }

    [Fact]
    public async Task Ask_Channels_CompactLinesAndProof()
    {
        CrewAnswer answer = await AskAsync("coordinate 12 bodypacks between 470 and 490 with 25 kHz steps, 400 kHz apart, keep out of 474 to 482, fifth order too");
        CoordinateChannelsRequest asked = radio.Coordination!;

        Assert.Equal("A clean channel for each of 3: nothing they make together falls on any of them, proved.", answer.Headline);
        Assert.Equal("bodypack 1: 470.100 MHz, bodypack 2: 470.475 MHz, bodypack 3: 471.225 MHz", answer.Lines[0].Text);
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

        CrewAnswer answer = await AskAsync("check 600.0 600.6 601.225");

        Assert.Equal([600.0, 600.6, 601.225], radio.Check!.FrequenciesMhz);
        Assert.Equal("They do not go together: 1 product falls on or near a channel and 1 pair is too close.", answer.Headline);
        Assert.Contains(answer.Lines, l => l.Text == "2 × 600.600 − 600.000 falls on 601.200 MHz, 25 kHz from 601.225.");
        Assert.Contains(answer.Lines, l => l.Text == "Too close: 600.000 and 600.200 MHz are 200 kHz apart.");
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

        CrewAnswer answer = await AskAsync("how far can we fall back?");

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

        Assert.Equal(CrewOutcome.Answered, (await AskAsync(question)).Outcome);
    }

    [Fact]
    public async Task Ask_HostileWordsFromThePlanner_AreCleaned()
    {
        const string hostile = "@everyone **now** `x` <b>\u001b[31m";
        radio.Link.Blocking = radio.Link.ModelReason = radio.Link.Law.Words = radio.Link.Law.Authority = radio.Link.Law.Rule.Limit = radio.Link.Law.Rule.Document = radio.Link.Law.CountryCode = hostile;
        radio.Link.Changes[0].Words = radio.Link.Advisories[0].Message = radio.Channels.Proof = radio.Channels.Assignments[0].TransmitterId = hostile;
        radio.Channels.Hits.Add(new IntermodProduct { Words = hostile });
        radio.Channels.SpacingFaults.Add(hostile);

        foreach (string question in new[] { "details of the link check", "are we legal", "check 600.0 600.6", "is the transmitter legal in <b>@here</b> `Ruri`?" })
        {
            CrewAnswer answer = await AskAsync(question);

            Assert.DoesNotContain(answer.Lines.Select(l => l.Text).Append(answer.Headline).Append(answer.Understood).Concat(answer.FollowUps), t => t.Any(c => c is '@' or '*' or '`' or '<' or '>' or '\u001b'));
        }
    }

    [Fact]
    public async Task FollowUps_OfEveryRadioAnswer_AreUnderstoodAsRadio()
    {
        var vocabulary = new CrewVocabulary(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);
        foreach (string question in new[] { "how far can we fall back?", "with the antenna on the roof in stereo", "what range with a truck between with the antenna outside", "are we legal", "what's the limit in Germany at 863 MHz", "which FM channel is quietest?", "frequencies for the radio mics", "check 600.0 600.6 601.0", "check 600.0" })
        {
            CrewAnswer answer = await AskAsync(question);

            Assert.InRange(answer.FollowUps.Count, 1, 3);
            Assert.All(answer.FollowUps, next => Assert.InRange(RequestReader.Read(next, vocabulary, answer.Memory, UnitPreference.Metric).Intent, CrewIntent.LinkCheck, CrewIntent.CheckChannels));
        }
    }

    [Fact]
    public async Task Ask_OneConversation_GoesOnAndTurnsAway()
    {
        await using FakePlanner fake = await StartAsync(null);
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

        Assert.DoesNotContain("Exception", (await AskAsync("link check")).Headline, StringComparison.Ordinal);
    }

    private async Task<FakePlanner> StartAsync(IReadOnlyList<Kit>? kits) => await FakePlanner.StartAsync(_ => new PlanPlacementResponse { Plan = new Plan { Scene = DemoData.Scenes[^1].Clone(), Best = new PlanOption() } }, radio: radio, kits: kits);

    private async Task<CrewAnswer> AskAsync(string question, string scene = "demo-school-run", UnitPreference? units = null, bool picture = true, IReadOnlyList<Kit>? kits = null)
    {
        await using FakePlanner fake = await StartAsync(kits);
        return await new CrewDesk(fake.Invoker, new CrewDeskOptions()).AskAsync(new CrewQuestion { Text = question, Scene = scene, Units = units, IncludePicture = picture }, TestContext.Current.CancellationToken);
    }
}
