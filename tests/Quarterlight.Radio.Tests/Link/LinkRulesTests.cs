using Quarterlight.Quantities;
using Quarterlight.Radio.Link;
using Quarterlight.Radio.Propagation;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Tests.Link;

public class LinkRulesTests
{
    public static TheoryData<string, LinkTask> Bad
    {
        get
        {
            LinkTask fm = Links.HiddenFm;
            LinkGear gear = fm.Gear;
            return new()
            {
                { "setup.gear.power", With(gear with { Power = 0 }) },
                { "setup.gear.power", With(gear with { Power = -200 }) },
                { "setup.gear.power", With(gear with { Power = double.NaN }) },
                { "setup.gear.frequency_mhz", With(gear with { FrequencyMHz = 27 }) },
                { "setup.gear.frequency_mhz", With(gear with { FrequencyMHz = 5800 }) },
                { "setup.gear.field_distance_m", With(gear with { PowerBasis = TransmitPowerBasis.Field, Power = 250 }) },
                { "setup.gear.field_distance_m", With(gear with { FieldDistanceM = 3 }) },
                { "setup.gear.noise_figure_db", With(gear with { NoiseFigureDb = -1 }) },
                { "setup.gear.transmit_antenna.height_m", With(gear with { TransmitAntenna = gear.TransmitAntenna with { HeightM = 0 } }) },
                { "setup.gear.transmit_antenna.height_m", With(gear with { TransmitAntenna = gear.TransmitAntenna with { HeightM = 4 } }) },
                { "setup.gear.receive_antenna.height_m", With(gear with { ReceiveAntenna = gear.ReceiveAntenna with { HeightM = 0.5 } }) },
                { "setup.gear.receive_antenna.polarisation", With(gear with { ReceiveAntenna = gear.ReceiveAntenna with { Polarisation = Polarisation.Horizontal } }) },
                { "setup.gear.receive_antenna.gain_dbi", With(gear with { ReceiveAntenna = gear.ReceiveAntenna with { StatedGainDbi = 3 } }) },
                { "setup.gear.receive_antenna.gain_dbi", With(gear with { ReceiveAntenna = gear.ReceiveAntenna with { Kind = AntennaKind.StatedGain } }) },
                { "setup.gear.receive_antenna.shielding_db", With(gear with { ReceiveAntenna = gear.ReceiveAntenna with { StatedShieldingDb = 10 } }) },
                { "setup.gear.receive_antenna.windscreen_drop_m", With(gear with { ReceiveAntenna = gear.ReceiveAntenna with { WindscreenDropM = 0.1 } }) },
                { "setup.gear.transmit_antenna.place", With(gear with { TransmitAntenna = gear.TransmitAntenna with { Kind = AntennaKind.QuarterWaveWhip } }) },
                { "setup.gear.transmit_antenna.place", With(gear with { TransmitAntenna = gear.TransmitAntenna with { Kind = AntennaKind.GlassFilm } }) },
                { "setup.gear.analogue_fm.deviation_khz", With(gear with { Emission = new AnalogueFm { DeviationKHz = 0 } }) },
                { "setup.gear.digital.bandwidth_khz", With(gear with { Emission = new DigitalLink { RequiredCnDb = 10, FilterBandwidthKHz = 0 } }) },
                { "setup.follow_car.gap_m", fm with { GapM = 0 } },
                { "setup.follow_car.gap_m", fm with { GapM = -5 } },
                { "setup.follow_car.gap_m", fm with { GapM = 3 } }, // Inside the near field: λ is 3.06 m.
                { "setup.follow_car.gap_m", Links.GlassDigital with { Surroundings = Surroundings.CityCanyon, GapM = 700 } },
                { "setup.follow_car.sight", fm with { Sight = LinkSight.RoundACorner } },
                { "setup.follow_car.availability_fraction", fm with { AvailabilityFraction = 1 } },
                { "setup.follow_car.stations[0].field_dbuv_per_m", fm with { Stations = [new HeardStation(98, 200)] } },
                { "setup.follow_car.country_code", fm with { CountryCode = new string('x', 61) } },
                { "setup.speed_km_per_hour", fm with { SpeedKmPerHour = 200 } },
            };

            LinkTask With(LinkGear changed) => fm with { Gear = changed };
        }
    }

    [Theory]
    [MemberData(nameof(Bad))]
    public void Validate_OneThingWrong_NamesItsFieldAndTheWayOut(string field, LinkTask task)
    {
        Violation violation = Assert.Single(LinkRules.Validate(task));

        Assert.Equal(field, violation.Field);
        Assert.NotEmpty(violation.Problem);
        Assert.NotEmpty(violation.Remedy);
        Assert.Throws<InvalidInputException>(() => LinkCheck.Run(task));
    }

    [Fact]
    public void Validate_GoodLinks_FindsNothing()
    {
        Assert.Empty(LinkRules.Validate(Links.HiddenFm));
        Assert.Empty(LinkRules.Validate(Links.RoofUhf));
        Assert.Empty(LinkRules.Validate(Links.GlassDigital));
        LinkTask corner = Links.RoofUhf with { Sight = LinkSight.RoundACorner, Surroundings = Surroundings.CityCanyon };
        Assert.Empty(LinkRules.Validate(corner with
        {
            Gear = corner.Gear with { TransmitAntenna = corner.Gear.TransmitAntenna with { HeightM = 2 }, ReceiveAntenna = corner.Gear.ReceiveAntenna with { HeightM = 2 } },
        }));
    }

    [Fact]
    public void Validate_SeveralThingsWrong_NamesThemAll()
    {
        LinkTask task = Links.HiddenFm with { GapM = 0, SpeedKmPerHour = -1, Gear = Links.HiddenFm.Gear with { Power = 0 } };

        Assert.Equal(["setup.gear.power", "setup.follow_car.gap_m", "setup.speed_km_per_hour"], LinkRules.Validate(task).Select(v => v.Field));
    }
}
