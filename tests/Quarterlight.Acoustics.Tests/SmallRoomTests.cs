namespace Quarterlight.Acoustics.Tests;

public class SmallRoomTests
{
    // Published example: 500 m3, 1.2 s, Q = 2: 1.65 m with the rounded constant 0.057; the exact one (0.0566) gives 1 % less.
    [Fact]
    public void CriticalDistanceM_PublishedExample_Agrees() => Assert.Equal(1.65, SmallRoom.CriticalDistanceM(500, 1.2, 2), 0.02);

    // Kuttruff, Room Acoustics: 200 m3, 1 s: 141 Hz.
    [Fact]
    public void SchroederFrequencyHz_KuttruffsExample_Agrees() => Assert.Equal(141, SmallRoom.SchroederFrequencyHz(200, 1), 1.0);

    // The form of ISO 9613-1: 0, 20, 35, 60 degrees.
    [Theory]
    [InlineData(0, 331.29)]
    [InlineData(20, 343.20)]
    [InlineData(35, 351.87)]
    [InlineData(60, 365.87)]
    public void SpeedOfSoundMps_ByTemperature_Agrees(double celsius, double expected) => Assert.Equal(expected, SmallRoom.SpeedOfSoundMps(celsius), 0.01);

    // The 3:1 rule is 20 lg 3 = 9.542 dB and leaves +2.50/-3.52 dB of ripple, by arithmetic.
    [Fact]
    public void CombRippleDb_ThreeToOneRule_LeavesMoreThanOneDecibel()
    {
        (double peak, double dip) = SmallRoom.CombRippleDb(20 * Math.Log10(3));
        Assert.Equal(2.50, peak, 0.005);
        Assert.Equal(-3.52, dip, 0.005);
    }

    // c = 343 m/s and 0.343 m give 500 and 1500 Hz.
    [Fact]
    public void CombNotchHz_ThirtyFourCentimetres_Are500And1500Hertz()
    {
        Assert.Equal(500, SmallRoom.CombNotchHz(0, 0.343), 0.01);
        Assert.Equal(1500, SmallRoom.CombNotchHz(1, 0.343), 0.01);
    }

    // Independent library's theory functions for the box of tests/vectors/soundfield/ism_cabin.csv: 0.13590 and 0.11431 s.
    [Fact]
    public void ReverberationTimes_OfTheCarSizedBox_AgreeWithTheIndependentLibrary()
    {
        const double Volume = 2.4 * 1.45 * 1.15, Surface = 2 * ((2.4 * 1.45) + (2.4 * 1.15) + (1.45 * 1.15));
        Assert.Equal(0.13590, SmallRoom.SabineTimeS(Volume, Surface, 0.3), 0.0003);
        Assert.Equal(0.11431, SmallRoom.EyringTimeS(Volume, Surface, 0.3), 0.0003);
    }
}
