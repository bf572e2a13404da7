using Quarterlight.Radio.Link;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Tests.Link;

/// <summary>Invented links for tests.</summary>
internal static class Links
{
    /// <summary>200 mW EIRP of FM hidden in the cabin (25 dB of car and body), a car radio's whip on the follow car, open road.</summary>
    public static LinkTask HiddenFm { get; } = new()
    {
        Gear = new LinkGear
        {
            FrequencyMHz = 98,
            PowerBasis = TransmitPowerBasis.Eirp,
            Power = 200,
            TransmitAntenna = new Antenna { Kind = AntennaKind.HiddenWire, Place = AntennaPlace.InCabin, HeightM = 1.5, StatedShieldingDb = 25 },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.ShortWhip, Place = AntennaPlace.OnRoof, HeightM = 1.5 },
            Emission = new AnalogueFm(),
        },
        GapM = 100,
        SpeedKmPerHour = 50,
        CountryCode = "US",
    };

    /// <summary>50 mW at 600 MHz to a receiver on the follow car's roof, narrow analogue FM.</summary>
    public static LinkTask RoofUhf { get; } = HiddenFm with
    {
        Gear = HiddenFm.Gear with
        {
            FrequencyMHz = 600,
            PowerBasis = TransmitPowerBasis.Conducted,
            Power = 50,
            TransmitAntenna = new Antenna { Kind = AntennaKind.QuarterWaveWhip, Place = AntennaPlace.OnRoof, HeightM = 1.6 },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.QuarterWaveWhip, Place = AntennaPlace.OnRoof, HeightM = 1.6 },
            Emission = new AnalogueFm { DeviationKHz = 40 },
        },
    };

    /// <summary>A digital link at 2450 MHz behind glass.</summary>
    public static LinkTask GlassDigital { get; } = HiddenFm with
    {
        Gear = HiddenFm.Gear with
        {
            FrequencyMHz = 2450,
            PowerBasis = TransmitPowerBasis.Eirp,
            Power = 10,
            TransmitAntenna = new Antenna { Kind = AntennaKind.StatedGain, StatedGainDbi = 2, Place = AntennaPlace.OnGlass, HeightM = 1.2 },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.StatedGain, StatedGainDbi = 2, Place = AntennaPlace.OnGlass, HeightM = 1.2 },
            Emission = new DigitalLink { RequiredCnDb = 12, FilterBandwidthKHz = 2000, LatencyMs = 20 },
        },
        GapM = 30,
    };
}
