using CsCheck;
using Quarterlight.Quantities;
using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Tests.Link;

public class LinkCheckTests
{
    private static readonly Gen<LinkTask> s_tasks =
        Gen.Select(Gen.OneOf(Gen.Const(98.0), Gen.Const(170.0), Gen.Const(530.0), Gen.Const(600.0), Gen.Const(1905.0), Gen.Const(2450.0)), Gen.Double[0.5, 500], Gen.Double[1, 2.4], Gen.Double[1, 2.4], Gen.Enum<Surroundings>(), Gen.Double[10, 500], Gen.Bool)
            .Select((f, p, h1, h2, where, gap, upright) => Links.RoofUhf with
            {
                GapM = gap,
                Surroundings = where,
                Gear = Links.RoofUhf.Gear with
                {
                    FrequencyMHz = f,
                    Power = p,
                    TransmitAntenna = new Antenna { Kind = AntennaKind.HalfWaveDipole, Place = AntennaPlace.OnRoof, HeightM = h1, Polarisation = upright ? Polarisation.Vertical : Polarisation.Horizontal },
                    ReceiveAntenna = new Antenna { Kind = AntennaKind.HalfWaveDipole, Place = AntennaPlace.OnRoof, HeightM = h2, Polarisation = upright ? Polarisation.Vertical : Polarisation.Horizontal },
                },
            });

    [Fact]
    public void Range_HiddenTransmitterWithoutFading_IsThatOfTheOtherProgram()
    {
        // Another program, same models: 200 mW less 25 dB of car and body, upright, 1.5 m, 30 dB over 1 uV/m: 329 m.
        LinkReport report = LinkCheck.Run(Links.HiddenFm with { GapM = 329 });

        Assert.Equal(30, report.FieldDbuvPerM, 0.5);
        Assert.Equal(PropagationModel.NearGround, report.Path.Model);
    }

    [Fact]
    public void Range_HiddenTransmitter_IsNearWhatTheTradeSays()
    {
        // Common practice, no source: about 200 mW into the FM band reaches about 300 m to a follow car. Within a factor of 1.5 at 90 % on an open
        // road.
        LinkReport report = LinkCheck.Run(Links.HiddenFm);

        Assert.InRange(report.Ranges[1].RangeM, 300 / 1.5, 300 * 1.5);
        Assert.Equal(0.9, report.Ranges[1].AvailabilityFraction);
        Assert.Equal(LawStatus.OverExemptLimit, report.Law.Status);
        Assert.Equal(70.3, report.Law.ExcessDb!.Value, 0.05); // 47 CFR 15.239(b) with ITU-R P.525.
        Assert.Contains("70.3 dB above the licence-exempt limit", report.Law.Words, StringComparison.Ordinal);
        Assert.True(report.LawfulRange!.Value.RangeM < 10);
    }

    [Fact]
    public void Run_AnyLink_KeepsTheRulesOfTheTrade() => s_tasks.Sample(
        task =>
        {
            if (LinkRules.Validate(task).Count > 0)
            {
                return;
            }

            LinkReport report = LinkCheck.Run(task), stronger = LinkCheck.Run(task with { Gear = task.Gear with { Power = task.Gear.Power * 2 } });

            // Surer is never farther; more power never less; the margin at the gap is what the availability there says.
            for (int i = 1; i < report.Ranges.Count; i++)
            {
                Assert.True(report.Ranges[i].RangeM <= report.Ranges[i - 1].RangeM + 1e-9);
            }

            Assert.True(stronger.AskedRange.RangeM >= report.AskedRange.RangeM - 1e-9);
            Assert.Equal(report.MarginDb + (10 * Math.Log10(2)), stronger.MarginDb, 1e-6);
            Assert.Equal(report.MarginDb >= report.FadeMarginDb, report.AvailabilityFraction >= task.AvailabilityFraction - 1e-9);
            Assert.Equal(report.LevelDbm - report.NeededLevelDbm, report.MarginDb, 1e-9);
            Assert.All(report.Changes, c => Assert.True(c.GainDb >= 0.5));
            Assert.Equal(report.Changes.OrderByDescending(c => c.GainDb).Select(c => c.Code), report.Changes.Select(c => c.Code));
            Assert.Contains(report.Advisories, a => a.Code == "local-law-decides" && a.Severity == AdvisorySeverity.Safety);
        },
        iter: 300);

    [Fact]
    public void Range_AtItsOwnDistance_HasJustItsAvailability()
    {
        foreach (LinkTask task in new[] { Links.HiddenFm, Links.RoofUhf with { Surroundings = Surroundings.SuburbanStreet }, Links.GlassDigital with { Surroundings = Surroundings.CityCanyon } })
        {
            foreach (LinkRange range in LinkCheck.Run(task).Ranges.Where(r => r.RangeM > 10 && !r.BeyondModel))
            {
                Assert.Equal(range.AvailabilityFraction, LinkCheck.Run(task with { GapM = range.RangeM }).AvailabilityFraction, 2e-3);
            }
        }
    }

    [Fact]
    public void Change_Named_IsWhatCheckingTheChangedLinkSays()
    {
        LinkTask task = Links.HiddenFm with { Gear = Links.HiddenFm.Gear with { Emission = new AnalogueFm { Stereo = true } } };
        LinkReport before = LinkCheck.Run(task), after = LinkCheck.Run(Links.HiddenFm);
        LinkChange mono = Assert.Single(before.Changes, c => c.Code == "mono");

        Assert.Equal(after.MarginDb - before.MarginDb, mono.GainDb, 1e-9);
        Assert.Equal(after.AskedRange.RangeM, mono.RangeM, 1e-9);
        Assert.Equal(after.AskedRange.RangeM - before.AskedRange.RangeM, mono.RangeGainM, 1e-9);
        Assert.Equal("transmit-antenna-outside", before.Changes[0].Code);
    }

    [Fact]
    public void DropOuts_TwiceTheSpeed_AreTwiceAsManyAndHalfAsLong()
    {
        LinkReport slow = LinkCheck.Run(Links.RoofUhf with { SpeedKmPerHour = 40 }), fast = LinkCheck.Run(Links.RoofUhf with { SpeedKmPerHour = 80 });
        LinkReport standing = LinkCheck.Run(Links.RoofUhf with { SpeedKmPerHour = 0 });

        Assert.Equal(2, fast.DropOutsPerMinute / slow.DropOutsPerMinute, 1e-9);
        Assert.Equal(0.5, fast.MeanDropOutMs / slow.MeanDropOutMs, 1e-9);
        Assert.Equal((0, 0), (standing.DropOutsPerMinute, standing.MeanDropOutMs));

        // Time spent below is rate times length, whatever the speed.
        Assert.Equal(1 - fast.AvailabilityFraction, fast.DropOutsPerMinute / 60 * fast.MeanDropOutMs / 1000, 1e-9);
    }

    [Fact]
    public void Delay_OfADigitalSystem_IsItsOwnAndTheTravel()
    {
        // 30 m of travel are 0.1 us by hand.
        Assert.Equal(20.0001, LinkCheck.Run(Links.GlassDigital).DelayMs!.Value, 1e-5);
        Assert.Equal(0.00033, LinkCheck.Run(Links.HiddenFm).DelayMs!.Value, 1e-5);
        Assert.Null(LinkCheck.Run(Links.GlassDigital with { Gear = Links.GlassDigital.Gear with { Emission = new DigitalLink { RequiredCnDb = 12, FilterBandwidthKHz = 2000 } } }).DelayMs);
    }

    [Theory]
    [InlineData(98, Surroundings.OpenRoad, PropagationModel.NearGround)]
    [InlineData(98, Surroundings.CityCanyon, PropagationModel.NearGround)]
    [InlineData(600, Surroundings.OpenRoad, PropagationModel.TwoRay)]
    [InlineData(600, Surroundings.SuburbanStreet, PropagationModel.StreetUhf)]
    [InlineData(600, Surroundings.CityCanyon, PropagationModel.StreetUhf)]
    [InlineData(2450, Surroundings.CityCanyon, PropagationModel.StreetCanyon)]
    [InlineData(2450, Surroundings.SuburbanStreet, PropagationModel.StreetUhf)]
    [InlineData(600, Surroundings.Tunnel, PropagationModel.Tunnel)]
    public void Model_ByRoadAndFrequency_IsTheOneThatHoldsThere(double frequencyMHz, Surroundings surroundings, PropagationModel model)
    {
        LinkReport report = LinkCheck.Run(Links.RoofUhf with { Surroundings = surroundings, Gear = Links.RoofUhf.Gear with { FrequencyMHz = frequencyMHz } });

        Assert.Equal(model, report.Path.Model);
        Assert.NotEmpty(report.Path.Reason);
        Assert.All(report.Path.Refused, r => Assert.NotEqual(model, r.Model));
    }

    [Fact]
    public void Stations_OnTheChannel_CostWhatTheirProtectionAsks()
    {
        // A station of 40 dB over 1 uV/m one channel (200 kHz) away asks mono for 46: far over the 23 that noise asks for.
        LinkReport report = LinkCheck.Run(Links.HiddenFm with { Stations = [new HeardStation(98.2, 40)] });
        LinkChange move = Assert.Single(report.Changes, c => c.Code == "quieter-channel");

        Assert.Equal(46, report.NeededFieldDbuvPerM, 0.1);
        Assert.Equal(report.NeededFieldDbuvPerM - LinkCheck.Run(Links.HiddenFm).NeededFieldDbuvPerM, move.GainDb, 0.5);
    }

    [Fact]
    public void Stations_OnTheChannelItself_BringTheWarningOfTheirListeners()
    {
        LinkReport report = LinkCheck.Run(Links.HiddenFm with { Stations = [new HeardStation(98, 55)] });

        Assert.Contains(report.Advisories, a => a.Code == "on-a-local-station" && a.Severity == AdvisorySeverity.Safety);
        Assert.Contains(report.Advisories, a => a.Code == "disturbs-listeners");
    }

    [Fact]
    public void Range_ShorterThanTwoSeconds_WarnsAgainstClosingUp()
    {
        // Common practice, no source: two seconds to the car in front.
        LinkTask lawful = Links.HiddenFm with { Gear = Links.HiddenFm.Gear with { PowerBasis = TransmitPowerBasis.Field, Power = 250, FieldDistanceM = 3 }, SpeedKmPerHour = 60, GapM = 20 };

        Assert.Contains(LinkCheck.Run(lawful).Advisories, a => a.Code == "shorter-than-safe-gap" && a.Severity == AdvisorySeverity.Safety);
        Assert.DoesNotContain(LinkCheck.Run(Links.HiddenFm).Advisories, a => a.Code == "shorter-than-safe-gap");
    }

    [Fact]
    public void Sight_ATruckBetween_CostsAndRayleighFades()
    {
        LinkReport clear = LinkCheck.Run(Links.RoofUhf), truck = LinkCheck.Run(Links.RoofUhf with { Sight = LinkSight.TruckBetween });

        // ITU-R P.526 by hand: 2.4 m over the line, 50 m to each side, λ 0.5 m: ν 0.96, 13.6 dB.
        Assert.Equal(13.6, truck.PathLossDb - clear.PathLossDb, 0.1);
        Assert.True(truck.FadeMarginDb > clear.FadeMarginDb);
        Assert.Contains(truck.Changes, c => c.Code == "clear-sight");
    }

    [Fact]
    public void Street_InSight_SaysTheBoundsOfTheRecommendation()
    {
        // ITU-R P.1411-12, 4.1.2, 600 MHz, antennas 1.5 m high, 100 m: 76.88, 82.88 and 96.88 dB: 6 dB above and 14 dB below the median level.
        LinkTask task = Links.RoofUhf with
        {
            Surroundings = Surroundings.SuburbanStreet,
            Gear = Links.RoofUhf.Gear with { TransmitAntenna = Links.RoofUhf.Gear.TransmitAntenna with { HeightM = 1.5 }, ReceiveAntenna = Links.RoofUhf.Gear.ReceiveAntenna with { HeightM = 1.5 } },
        };
        LinkReport report = LinkCheck.Run(task);

        Assert.Equal(82.88, report.PathLossDb, 0.05);
        Assert.Contains(report.Advisories, a => a.Code == "street-bounds"
            && a.Message.Contains(FormattableString.Invariant($"between {report.LevelDbm - 14:0} and {report.LevelDbm + 6:0} dBm"), StringComparison.Ordinal));
    }

    [Theory] // 49 CFR 393.60(e)(1)(ii) as amended by 87 FR 12596: 8.5 in (216 mm) below the top of the swept area.
    [InlineData(0.200, true)]
    [InlineData(0.230, false)]
    public void Windscreen_DropBelowTheSweptTop_IsAllowedOrNot(double dropM, bool allowed)
    {
        LinkTask task = Links.GlassDigital with { Gear = Links.GlassDigital.Gear with { TransmitAntenna = Links.GlassDigital.Gear.TransmitAntenna with { WindscreenDropM = dropM } } };

        Assert.Equal(allowed, WindscreenRule.Allows(dropM));
        Assert.Equal(!allowed, LinkCheck.Run(task).Advisories.Any(a => a.Code == "windscreen-too-low" && a.Severity == AdvisorySeverity.Safety));
    }

    [Fact]
    public void Polarisation_Crosswise_IsNamedAsAChange()
    {
        LinkTask task = Links.RoofUhf with { Gear = Links.RoofUhf.Gear with { TransmitAntenna = new Antenna { Kind = AntennaKind.HalfWaveDipole, Place = AntennaPlace.OnRoof, HeightM = 1.6, Polarisation = Polarisation.Horizontal } } };

        Assert.Contains(LinkCheck.Run(task).Changes, c => c.Code == "both-upright" && c.GainDb > 8);
    }

    [Fact]
    public void Words_OfTheAnswer_SayWhatToDo()
    {
        LinkReport near = LinkCheck.Run(Links.HiddenFm), far = LinkCheck.Run(Links.HiddenFm with { GapM = 1500 });

        Assert.StartsWith("It holds 95 % of the time up to ", near.Headline, StringComparison.Ordinal);
        Assert.StartsWith("Too far: at 1500 m it holds ", far.Headline, StringComparison.Ordinal);
        Assert.Contains("car lengths", near.Blocking, StringComparison.Ordinal);
    }
}
