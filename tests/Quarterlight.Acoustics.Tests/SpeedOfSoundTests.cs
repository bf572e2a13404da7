namespace Quarterlight.Acoustics.Tests;

public class SpeedOfSoundTests
{
    // The form of ISO 9613-1: 0, 20, 35, 60 degrees.
    [Theory]
    [InlineData(0, 331.29)]
    [InlineData(20, 343.20)]
    [InlineData(35, 351.87)]
    [InlineData(60, 365.87)]
    public void AtCelsius_ByTemperature_Agrees(double celsius, double expectedMps) => Assert.Equal(expectedMps, SpeedOfSound.AtCelsius(celsius), 0.01);

    [Theory]
    [InlineData(-273.15)]
    [InlineData(-300)]
    [InlineData(double.NaN)]
    public void AtCelsius_NoSuchTemperature_Throws(double celsius) => Assert.Throws<ArgumentOutOfRangeException>(() => SpeedOfSound.AtCelsius(celsius));
}
