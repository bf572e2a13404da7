using CsCheck;

namespace Quarterlight.Acoustics.Tests;

public class ReverberationTests
{
    // Published example: 500 m3, 1.2 s, Q = 2: 1.65 m with the rounded constant 0.057; the exact one (0.0566) gives 1 % less.
    [Fact]
    public void CriticalDistanceM_PublishedExample_Agrees() => Assert.Equal(1.65, Reverberation.CriticalDistanceM(500, 1.2, 2), 0.02);

    // Room-constant form, published example: 100 m2 at 0.2 give 25 m2 and 0.705 m.
    [Fact]
    public void CriticalDistanceFromAbsorptionM_PublishedExample_Agrees()
    {
        double constant = Reverberation.RoomConstantM2(100, 0.2);
        Assert.Equal(25, constant, 1e-9);
        Assert.Equal(0.705, Reverberation.CriticalDistanceFromAbsorptionM(constant), 0.0005);
    }

    // Kuttruff, Room Acoustics: 200 m3, 1 s: 141 Hz.
    [Fact]
    public void SchroederFrequencyHz_KuttruffsExample_Agrees() => Assert.Equal(141, Reverberation.SchroederFrequencyHz(200, 1), 1.0);

    // Independent library's theory functions for the box of tests/vectors/soundfield/ism_cabin.csv: 0.13590 and 0.11431 s.
    [Fact]
    public void Times_OfTheCarSizedBox_AgreeWithTheIndependentLibrary()
    {
        const double Volume = 2.4 * 1.45 * 1.15, Surface = 2 * ((2.4 * 1.45) + (2.4 * 1.15) + (1.45 * 1.15));
        Assert.Equal(0.13590, Reverberation.SabineTimeS(Volume, Surface, 0.3), 0.0003);
        Assert.Equal(0.11431, Reverberation.EyringTimeS(Volume, Surface, 0.3), 0.0003);
    }

    // Theory: Eyring is below Sabine, the two meet for little absorption, and a dead room does not ring.
    [Fact]
    public void EyringTimeS_AnyAbsorption_IsBelowSabine() => Gen.Double[0.001, 0.999].Sample(a =>
    {
        double sabine = Reverberation.SabineTimeS(3, 15.8, a), eyring = Reverberation.EyringTimeS(3, 15.8, a);
        Assert.True(eyring < sabine);
        Assert.True(eyring > sabine * (1 - a));
    });

    [Fact]
    public void EyringTimeS_FullAbsorption_IsZero() => Assert.Equal(0, Reverberation.EyringTimeS(3, 15.8, 1));

    // By definition: at the critical distance Q/(4 pi r^2) equals 4/A.
    [Fact]
    public void CriticalDistance_DirectAndReverberantEnergy_AreEqual() => Gen.Double[0.2, 60].Select(Gen.Double[0.5, 8]).Sample((area, q) =>
    {
        double r = Reverberation.CriticalDistanceFromAbsorptionM(area, q);
        Assert.Equal(4 / area, q / (4 * Math.PI * r * r), 1e-9 * 4 / area);
    });

    [Theory]
    [InlineData(0, 15.8, 0.3)]
    [InlineData(3, -1, 0.3)]
    [InlineData(3, 15.8, 0)]
    [InlineData(3, 15.8, 1.01)]
    [InlineData(double.NaN, 15.8, 0.3)]
    [InlineData(3, 15.8, double.NaN)]
    public void Times_ImpossibleRoom_Throw(double volumeM3, double surfaceM2, double absorption)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Reverberation.SabineTimeS(volumeM3, surfaceM2, absorption));
        Assert.Throws<ArgumentOutOfRangeException>(() => Reverberation.EyringTimeS(volumeM3, surfaceM2, absorption));
    }
}
