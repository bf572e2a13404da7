using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>The radio service over real gRPC. Links and transmitters are invented.</summary>
public sealed class RadioTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private static readonly Dictionary<string, (Action<LinkSetup> Spoil, string Field)> s_wrong = new()
    {
        ["no gear"] = (s => s.Gear = null, "setup.gear"),
        ["no follow car"] = (s => s.FollowCar = null, "setup.follow_car"),
        ["no power"] = (s => s.Gear.Power = 0, "setup.gear.power"),
        ["negative power"] = (s => s.Gear.Power = -1, "setup.gear.power"),
        ["power is not a number"] = (s => s.Gear.Power = double.NaN, "setup.gear.power"),
        ["no basis"] = (s => s.Gear.PowerBasis = TransmitPowerBasis.Unspecified, "setup.gear.power_basis"),
        ["unknown basis"] = (s => s.Gear.PowerBasis = (TransmitPowerBasis)77, "setup.gear.power_basis"),
        ["field without a distance"] = (s => (s.Gear.PowerBasis, s.Gear.Power) = (TransmitPowerBasis.Field, 250), "setup.gear.field_distance_m"),
        ["short wave"] = (s => s.Gear.FrequencyMhz = 27, "setup.gear.frequency_mhz"),
        ["nothing sent"] = (s => s.Gear.ClearEmission(), "setup.gear.emission"),
        ["no antenna"] = (s => s.Gear.ReceiveAntenna = null, "setup.gear.receive_antenna"),
        ["no kind"] = (s => s.Gear.TransmitAntenna.Kind = AntennaKind.Unspecified, "setup.gear.transmit_antenna.kind"),
        ["no height"] = (s => s.Gear.TransmitAntenna.HeightM = 0, "setup.gear.transmit_antenna.height_m"),
        ["whip lying down"] = (s => s.Gear.ReceiveAntenna.Polarisation = Polarisation.Horizontal, "setup.gear.receive_antenna.polarisation"),
        ["gain of its own"] = (s => s.Gear.ReceiveAntenna.GainDbi = 3, "setup.gear.receive_antenna.gain_dbi"),
        ["no gap"] = (s => s.FollowCar.GapM = 0, "setup.follow_car.gap_m"),
        ["gap is endless"] = (s => s.FollowCar.GapM = double.PositiveInfinity, "setup.follow_car.gap_m"),
        ["inside the near field"] = (s => s.FollowCar.GapM = 2.5, "setup.follow_car.gap_m"),
        ["round a corner at 98 MHz"] = (s => s.FollowCar.Sight = LinkSight.RoundACorner, "setup.follow_car.sight"),
        ["unknown road"] = (s => s.FollowCar.Surroundings = (Surroundings)42, "setup.follow_car.surroundings"),
        ["always"] = (s => s.FollowCar.AvailabilityFraction = 1, "setup.follow_car.availability_fraction"),
        ["station without strength"] = (s => s.FollowCar.Stations.Add(new HeardStation { FrequencyMhz = 98.5 }), "setup.follow_car.stations[0].field_dbuv_per_m"),
        ["station twice as strong"] = (s => s.FollowCar.Stations.Add(new HeardStation { FrequencyMhz = 98.5, FieldDbuvPerM = 40, Strength = StationStrength.Clear }), "setup.follow_car.stations[0].field_dbuv_per_m"),
        ["too fast"] = (s => s.SpeedKmPerHour = 300, "setup.speed_km_per_hour"),
    };

    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Wrong => [.. s_wrong.Keys];

    private static LinkSetup Setup() => new()
    {
        Gear = new LinkGear
        {
            FrequencyMhz = 98.1,
            PowerBasis = TransmitPowerBasis.Eirp,
            Power = 200,
            TransmitAntenna = new Antenna { Kind = AntennaKind.HiddenWire, Place = AntennaPlace.InCabin, HeightM = 1, ShieldingDb = 25 },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.ShortWhip, Place = AntennaPlace.OnRoof, HeightM = 1.6 },
            AnalogueFm = new AnalogueFm { Stereo = true },
        },
        FollowCar = new FollowCar { GapM = 60, CountryCode = "US" },
        SpeedKmPerHour = 50,
    };

    private static WirelessTransmitter Packs(int count, double highMhz = 494) => new()
    {
        Id = "pack",
        DisplayName = "Bodypack",
        TuningRanges = { new TuningRange { LowMhz = 470, HighMhz = highMhz } },
        StepKhz = 25,
        Count = count,
    };

    [Fact]
    public async Task CheckLink_GoodSetup_AnswersWhole()
    {
        CheckLinkResponse response = await _planner.Radio.CheckLinkAsync(new CheckLinkRequest { Setup = Setup(), IncludePicture = true }, cancellationToken: Stop);
        LinkReport report = response.Report;
        Assert.Equal([0.5, 0.9, 0.95, 0.99], report.Ranges.Select(r => r.AvailabilityFraction));
        Assert.Equal(report.Ranges.Select(r => r.RangeM).OrderDescending(), report.Ranges.Select(r => r.RangeM));
        Assert.Equal(PropagationModel.NearGround, report.Model);
        Assert.Equal(LawStatus.OverExemptLimit, report.Law.Status);
        Assert.Equal(70.3, report.Law.ExcessDb, 0.05); // 47 CFR 15.239(b): 250 uV/m at 3 m, as EIRP by ITU-R P.525.
        Assert.Contains(report.Changes, c => c.Code == "mono");
        Assert.Contains(report.Advisories, a => a.Code == "local-law-decides" && a.Severity == AdvisorySeverity.Safety);
        Assert.InRange(report.Curve.Count, 20, 80);
        Assert.True(report.HasSnrDb && report.HasDelayMs);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], response.Picture.Png.Take(4));
        Assert.InRange(response.Picture.TextAlternative.Length, 100, 1024);
        Assert.NotNull(response.Setup);
    }

    [Fact]
    public async Task CheckLink_UnknownCountry_SaysSoAndTakesTheStrictest()
    {
        LinkSetup setup = Setup();
        setup.FollowCar.CountryCode = "";
        LawVerdict law = (await _planner.Radio.CheckLinkAsync(new CheckLinkRequest { Setup = setup }, cancellationToken: Stop)).Report.Law;
        Assert.Equal("", law.CountryCode);
        Assert.Contains(law.Advisories, a => a.Code == "unknown-country");
        Assert.True(law.ExcessDb >= 70.2);
    }

    [Theory]
    [MemberData(nameof(Wrong))]
    public async Task CheckLink_WrongSetup_NamesTheField(string what)
    {
        LinkSetup setup = Setup();
        s_wrong[what].Spoil(setup);
        (await Refused.ForFieldsAsync(_planner.Radio.CheckLinkAsync(new CheckLinkRequest { Setup = setup }, cancellationToken: Stop))).Names(s_wrong[what].Field);
    }

    [Fact]
    public async Task CheckLink_KeptScene_UsesItsFollowCarAndItsKitsGear()
    {
        Scene scene = await _planner.KeepSceneAsync("radio");
        (await Refused.ForFieldsAsync(_planner.Radio.CheckLinkAsync(new CheckLinkRequest { Scene = scene.Name }, cancellationToken: Stop))).Names("scene.follow_car");
        scene.FollowCar = Setup().FollowCar;
        scene = (await _planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = scene }, cancellationToken: Stop)).Scene;
        (await Refused.ForFieldsAsync(_planner.Radio.CheckLinkAsync(new CheckLinkRequest { Scene = scene.Name }, cancellationToken: Stop))).Names("kit.link_gear");
        Kit kit = (await _planner.Kits.GetKitAsync(new GetKitRequest { Name = scene.Kit }, cancellationToken: Stop)).Kit;
        kit.LinkGear = Setup().Gear;
        await _planner.Kits.UpdateKitAsync(new UpdateKitRequest { Kit = kit }, cancellationToken: Stop);
        LinkReport kept = (await _planner.Radio.CheckLinkAsync(new CheckLinkRequest { Scene = scene.Name }, cancellationToken: Stop)).Report;
        LinkReport sent = (await _planner.Radio.CheckLinkAsync(new CheckLinkRequest { Setup = Setup() }, cancellationToken: Stop)).Report;
        Assert.Equal(sent, kept);
        Assert.Equal(Grpc.Core.StatusCode.NotFound, (await Refused.ByAsync(_planner.Radio.CheckLinkAsync(new CheckLinkRequest { Scene = "scenes/nowhere" }, cancellationToken: Stop))).Code);
        (await Refused.ForFieldsAsync(_planner.Radio.CheckLinkAsync(new CheckLinkRequest(), cancellationToken: Stop))).Names("source");
    }

    [Fact]
    public async Task Keep_WrongGearOrFollowCar_IsRefusedByField()
    {
        SceneBundle bundle = Samples.Bundle();
        bundle.Kit.LinkGear = Setup().Gear;
        bundle.Kit.LinkGear.Power = -3;
        bundle.Kit.WirelessTransmitters.Add(Packs(0));
        Refused kit = await Refused.ForFieldsAsync(_planner.Kits.CreateKitAsync(new CreateKitRequest { KitId = "bad-radio", Kit = bundle.Kit }, cancellationToken: Stop));
        kit.Names("kit.link_gear.power");
        kit.Names("kit.wireless_transmitters[0].count");
        Scene scene = await _planner.KeepSceneAsync("bad-radio-scene");
        scene.FollowCar = new FollowCar { GapM = -1 };
        (await Refused.ForFieldsAsync(_planner.Scenes.UpdateSceneAsync(new UpdateSceneRequest { Scene = scene }, cancellationToken: Stop))).Names("scene.follow_car.gap_m");
    }

    [Fact]
    public async Task FindQuietChannels_WithStations_KeepsOffThem()
    {
        LinkSetup setup = Setup();
        setup.FollowCar.Stations.Add(new HeardStation { FrequencyMhz = 88.3, Strength = StationStrength.Strong });
        setup.FollowCar.Stations.Add(new HeardStation { FrequencyMhz = 90.1, FieldDbuvPerM = 70 });
        FindQuietChannelsResponse response = await _planner.Radio.FindQuietChannelsAsync(new FindQuietChannelsRequest { Setup = setup, ChannelCount = 20 }, cancellationToken: Stop);
        Assert.Equal(20, response.Channels.Count);
        Assert.All(response.Channels, c => Assert.True(Math.Abs(c.FrequencyMhz - 88.3) > 0.35 && Math.Abs(c.FrequencyMhz - 90.1) > 0.35));
        Assert.Contains(response.Advisories, a => a.Code == "quiet-is-not-lawful" && a.Severity == AdvisorySeverity.Safety);
        setup.FollowCar.CountryCode = "Atlantis";
        (await Refused.ForFieldsAsync(_planner.Radio.FindQuietChannelsAsync(new FindQuietChannelsRequest { Setup = setup }, cancellationToken: Stop))).Names("setup.follow_car.country_code");
        (await Refused.ForFieldsAsync(_planner.Radio.FindQuietChannelsAsync(new FindQuietChannelsRequest { ChannelCount = 500 }, cancellationToken: Stop))).Names("channel_count");
        setup.FollowCar.CountryCode = "GB";
        setup.Gear.Digital = new DigitalLink { RequiredCnDb = 10, BandwidthKhz = 200 };
        (await Refused.ForFieldsAsync(_planner.Radio.FindQuietChannelsAsync(new FindQuietChannelsRequest { Setup = setup }, cancellationToken: Stop))).Names("setup.gear.emission");
    }

    [Fact]
    public async Task LookUpLaw_WithAndWithoutAPower_GivesDocumentAndCaution()
    {
        LawVerdict over = (await _planner.Radio.LookUpLawAsync(new LookUpLawRequest { CountryCode = "US", FrequencyMhz = 98, EirpDbm = 23.01 }, cancellationToken: Stop)).Verdict;
        Assert.Equal(70.3, over.ExcessDb, 0.05); // 47 CFR 15.239(b).
        Assert.Equal(("15.239(b)", "250 µV/m at 3 m"), (over.Rule.Clause, over.Rule.Limit));
        LawVerdict limit = (await _planner.Radio.LookUpLawAsync(new LookUpLawRequest { CountryCode = "us", FrequencyMhz = 98 }, cancellationToken: Stop)).Verdict;
        Assert.False(limit.HasExcessDb);
        Assert.Equal(-47.27, limit.LawfulEirpDbm, 0.01);
        LawVerdict forbidden = (await _planner.Radio.LookUpLawAsync(new LookUpLawRequest { CountryCode = "US", FrequencyMhz = 750, EirpDbm = 10 }, cancellationToken: Stop)).Verdict;
        Assert.Equal(LawStatus.Forbidden, forbidden.Status); // 698 to 806 MHz closed since 12 June 2010.
        Assert.All(new[] { over, limit, forbidden }, v => Assert.Contains(v.Advisories, a => a.Code == "local-law-decides"));
        (await Refused.ForFieldsAsync(_planner.Radio.LookUpLawAsync(new LookUpLawRequest { FrequencyMhz = 5800 }, cancellationToken: Stop))).Names("frequency_mhz");
    }

    [Fact]
    public async Task CoordinateChannels_EightPacks_CleanAndChecked()
    {
        var request = new CoordinateChannelsRequest
        {
            Transmitters = { Packs(8) },
            Rules = new ChannelRules { Neighbours = { new FixedCarrier { DisplayName = "monitor", FrequencyMhz = 480.2 } }, ExcludedBlocks = { new ExcludedBlock { LowMhz = 474, HighMhz = 478, Reason = "television" } }, TransmitterDistanceM = 0.5 },
            IncludePicture = true,
        };
        request.Transmitters[0].PowerMw = 50;
        request.Transmitters[0].InterceptDbm = 40;
        CoordinateChannelsResponse response = await _planner.Radio.CoordinateChannelsAsync(request, cancellationToken: Stop);
        double[] carriers = [.. response.Report.Assignments.Select(a => a.FrequencyMhz)];
        Assert.True(response.Report.Complete && response.Report.Proved);
        Assert.Equal(8, carriers.Length);
        Assert.All(carriers, f => Assert.True(f is >= 470 and <= 494 and not (>= 474 and <= 478)));
        Assert.Equal(50, response.Report.Products.Count);

        // 3 P - 2 OIP3 less the coupling over 0.5 m (free space, ITU-R P.525: about 20 dB), by hand: 51 - 80 - 20 = -49 dBm; three signals 6 dB and
        // one more coupling: -63.
        Assert.InRange(response.Report.Products[0].LevelDbm, -50, -48);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], response.Picture.Png.Take(4));
        ChannelReport check = (await _planner.Radio.CheckChannelsAsync(new CheckChannelsRequest { FrequenciesMhz = { carriers }, Rules = request.Rules }, cancellationToken: Stop)).Report;
        Assert.True(check.Complete, check.Headline);
        Assert.Equal(response.Report.LeastThirdOrderOffsetKhz, check.LeastThirdOrderOffsetKhz);
    }

    [Fact]
    public async Task CoordinateChannels_TooManyForTheRoom_GivesTheBestPartAndTheProof()
    {
        // Six carriers need 17 steps (OEIS A003022): on 17 channels, spans up to 16, only five are clean.
        var request = new CoordinateChannelsRequest
        {
            Transmitters = { Packs(6, 470.4) },
            Rules = new ChannelRules { MinSpacingKhz = 25, ThirdOrderGuardKhz = 0 },
        };
        ChannelReport report = (await _planner.Radio.CoordinateChannelsAsync(request, cancellationToken: Stop)).Report;
        Assert.False(report.Complete);
        Assert.True(report.Proved, report.Proof);
        Assert.Equal((6, 5), (report.Assignments.Count, report.Assignments.Count(a => a.HasFrequencyMhz && a.Clean)));
        Assert.Equal(6, report.FewestHitsAssignments.Count(a => a.HasFrequencyMhz));
        Assert.Contains(report.FewestHitsAssignments, a => !a.Clean);
        Assert.NotEmpty(report.Hits);
        Assert.StartsWith("Only 5 of 6 can be clear", report.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CoordinateChannels_InACountry_KeepsOutOfItsForbiddenBands()
    {
        WirelessTransmitter packs = Packs(4);
        packs.TuningRanges[0] = new TuningRange { LowMhz = 606, HighMhz = 616 };
        ChannelReport report = (await _planner.Radio.CoordinateChannelsAsync(
            new CoordinateChannelsRequest { Transmitters = { packs }, Rules = new ChannelRules { CountryCode = "United States" } }, cancellationToken: Stop)).Report;

        // 47 CFR 73.603(c): 608 to 614 MHz is radio astronomy's.
        Assert.True(report.Complete);
        Assert.All(report.Assignments, a => Assert.True(a.FrequencyMhz is < 608 or > 614));
        Assert.Contains(report.Advisories, a => a.Code is "within-exempt-limit" or "licence-needed");
    }

    [Fact]
    public async Task CheckChannels_EvenlySpaced_ListsEveryHit()
    {
        // Carriers 1 2 3 4 on a grid: four two-signal and six three-signal hits (counted by exhaustion in the reference tables of difference sets).
        ChannelReport report = (await _planner.Radio.CheckChannelsAsync(
            new CheckChannelsRequest { FrequenciesMhz = { 600, 600.4, 600.8, 601.2 }, Rules = new ChannelRules { ThirdOrderGuardKhz = 0 } }, cancellationToken: Stop)).Report;
        Assert.Equal((4, 6), (report.Hits.Count(h => h.Kind == ProductKind.ThirdTwoSignal), report.Hits.Count(h => h.Kind == ProductKind.ThirdThreeSignal)));
        Assert.All(report.Assignments, a => Assert.False(a.Clean));
    }

    [Fact]
    public async Task Channels_WrongInput_NamesTheField()
    {
        await Named(new CoordinateChannelsRequest(), "transmitters");
        await Named(new CoordinateChannelsRequest { Transmitters = { Packs(41) } }, "transmitters[0].count");
        await Named(new CoordinateChannelsRequest { Transmitters = { Packs(2), Spoilt(p => p.StepKhz = 0) } }, "transmitters[1].step_khz");
        await Named(new CoordinateChannelsRequest { Transmitters = { Packs(2), Spoilt(p => p.TuningRanges[0].HighMhz = 400) } }, "transmitters[1].tuning_ranges[0].high_mhz");
        await Named(new CoordinateChannelsRequest { Transmitters = { Packs(2) }, Rules = new ChannelRules { MinSpacingKhz = double.NaN } }, "rules.min_spacing_khz");
        await Named(new CoordinateChannelsRequest { Transmitters = { Packs(2) }, Rules = new ChannelRules { FifthOrder = (FifthOrder)9 } }, "rules.fifth_order");
        (await Refused.ForFieldsAsync(_planner.Radio.CheckChannelsAsync(new CheckChannelsRequest { FrequenciesMhz = { 600, -2 } }, cancellationToken: Stop))).Names("frequencies_mhz[1]");
        (await Refused.ForFieldsAsync(_planner.Radio.CheckChannelsAsync(new CheckChannelsRequest(), cancellationToken: Stop))).Names("frequencies_mhz");

        async Task Named(CoordinateChannelsRequest request, string field) => (await Refused.ForFieldsAsync(_planner.Radio.CoordinateChannelsAsync(request, cancellationToken: Stop))).Names(field);

        static WirelessTransmitter Spoilt(Action<WirelessTransmitter> spoil)
        {
            WirelessTransmitter packs = Packs(2);
            packs.Id = "other";
            spoil(packs);
            return packs;
        }
    }
}
