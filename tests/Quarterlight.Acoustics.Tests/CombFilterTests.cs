using System.Numerics;
using CsCheck;

namespace Quarterlight.Acoustics.Tests;

public class CombFilterTests
{
    // The 3:1 rule is 20 lg 3 = 9.542 dB and leaves +2.50/-3.52 dB of ripple, by arithmetic.
    [Fact]
    public void RippleDb_ThreeToOneRule_LeavesMoreThanOneDecibel()
    {
        (double peak, double dip) = CombFilter.RippleDb(20 * Math.Log10(3));
        Assert.Equal(2.50, peak, 0.005);
        Assert.Equal(-3.52, dip, 0.005);
    }

    // Arithmetic: 1 dB of peak needs about 18.3 dB of separation, 1 dB of dip about 19.3 dB.
    [Theory]
    [InlineData(18.3, 1, -1.13)]
    [InlineData(19.3, 0.9, -1)]
    public void RippleDb_OneDecibel_NeedsEighteenToNineteenDecibels(double leadDb, double peakDb, double dipDb)
    {
        (double peak, double dip) = CombFilter.RippleDb(leadDb);
        Assert.Equal(peakDb, peak, 0.015);
        Assert.Equal(dipDb, dip, 0.015);
    }

    // c = 343 m/s and 0.343 m give notches at 500, 1500 and 2500 Hz, peaks at 0, 1000 and 2000 Hz.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void NotchAndPeakHz_ThirtyFourCentimetres_FallOnRoundFrequencies(int n)
    {
        Assert.Equal(500 + (1000 * n), CombFilter.NotchHz(n, 0.343), 1e-9);
        Assert.Equal(1000 * n, CombFilter.PeakHz(n, 0.343), 1e-9);
    }

    // The definition as the outside check: add the two tones as phasors at the frequencies named.
    [Fact]
    public void NotchAndPeak_TonesAddedAsPhasors_Agree() => Gen.Select(Gen.Double[0.05, 2], Gen.Double[0.5, 40], Gen.Int[0, 20]).Sample((difference, lead, n) =>
    {
        (double peakDb, double dipDb) = CombFilter.RippleDb(lead);
        Assert.Equal(dipDb, Sum(CombFilter.NotchHz(n, difference)), 1e-6);
        Assert.Equal(peakDb, Sum(CombFilter.PeakHz(n, difference)), 1e-6);

        double Sum(double hz) => 20 * Math.Log10((1 + Complex.FromPolarCoordinates(Math.Pow(10, -lead / 20), -2 * Math.PI * hz * difference / 343)).Magnitude);
    });

    // A cabin that heats from 20 to 60 degrees moves every notch up by 6.6 %.
    [Fact]
    public void NotchHz_HotCabin_MovesUp() =>
        Assert.Equal(1.066, CombFilter.NotchHz(0, 0.343, SpeedOfSound.AtCelsius(60)) / CombFilter.NotchHz(0, 0.343, SpeedOfSound.AtCelsius(20)), 0.0005);

    [Fact]
    public void Arguments_OutsideTheirRange_Throw()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CombFilter.RippleDb(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => CombFilter.RippleDb(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => CombFilter.NotchHz(-1, 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => CombFilter.PeakHz(0, 0));
    }
}
