using BenchmarkDotNet.Attributes;
using Quarterlight.Radio.Link;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Bench;

/// <summary>A whole link check (four availabilities, ranked changes, the law) against plain arithmetic for the four ranges alone: fading integrated
/// anew, range by halving.</summary>
[MemoryDiagnoser]
public class LinkBench
{
    private static readonly LinkTask s_fm = new()
    {
        Gear = new LinkGear
        {
            FrequencyMHz = 98.1,
            PowerBasis = TransmitPowerBasis.Eirp,
            Power = 200,
            TransmitAntenna = new Antenna { Kind = AntennaKind.HiddenWire, Place = AntennaPlace.InCabin, HeightM = 1, StatedShieldingDb = 25 },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.ShortWhip, Place = AntennaPlace.OnRoof, HeightM = 1.6 },
            Emission = new AnalogueFm { Stereo = true },
        },
        GapM = 60,
        SpeedKmPerHour = 50,
        CountryCode = "US",
        Stations = [new HeardStation(98.5, 45), new HeardStation(97.3, 70), new HeardStation(101.1, 62)],
    };

    private static readonly LinkTask s_uhf = s_fm with
    {
        Gear = s_fm.Gear with
        {
            FrequencyMHz = 600,
            Power = 50,
            TransmitAntenna = new Antenna { Kind = AntennaKind.HalfWaveDipole, Place = AntennaPlace.OnRoof, HeightM = 1.6 },
            ReceiveAntenna = new Antenna { Kind = AntennaKind.HalfWaveDipole, Place = AntennaPlace.OnRoof, HeightM = 1.6 },
            Emission = new AnalogueFm { DeviationKHz = 40 },
        },
        Stations = [],
    };

    [GlobalSetup]
    public void Setup()
    {
        double[] plain = PlainLink.Ranges(s_uhf);
        LinkReport report = LinkCheck.Run(s_uhf);
        for (int i = 0; i < plain.Length; i++)
        {
            if (Math.Abs(report.Ranges[i].RangeM - plain[i]) > 0.02 * plain[i])
            {
                throw new InvalidOperationException($"The two ways differ: {report.Ranges[i].RangeM} and {plain[i]} m.");
            }
        }
    }

    [Benchmark(Baseline = true)]
    public double PlainRangesUhf() => PlainLink.Ranges(s_uhf)[0];

    [Benchmark]
    public double CheckUhf() => LinkCheck.Run(s_uhf).AskedRange.RangeM;

    [Benchmark]
    public double CheckFm() => LinkCheck.Run(s_fm).AskedRange.RangeM;
}
