namespace Quarterlight.Acoustics.Tests;

public class ListeningDoseTests
{
    // NIOSH: times to a dose of 100 %.
    [Fact]
    public void AllowedMinutes_TableOfNiosh_Agrees() => Assert.All(Vectors.Read("noise_dose"), row =>
    {
        double level = Vectors.Number(row["level_dba"]), minutes = Vectors.Number(row["allowed_minutes"]);
        Assert.Equal(minutes, ListeningDose.AllowedMinutes(level), 1e-9);
        Assert.Equal(100, ListeningDose.Percent((level, minutes)), 1e-9);
    });

    [Fact]
    public void DailyLimitMin_ADayOrMore_IsNull()
    {
        double dayDba = 85 - (3 * Math.Log2(3)); // 480 min doubled until it is 1440.
        Assert.Null(ListeningDose.DailyLimitMin(dayDba - 1e-6));
        Assert.Equal(1440, ListeningDose.DailyLimitMin(dayDba + 1e-6)!.Value, 0.01);
        Assert.Equal(480, ListeningDose.DailyLimitMin(85));
    }

    // NIOSH: TWA = 10 lg(D/100) + 85. Twice the dose is 3.01 dB, the exchange 3 dB: the two differ by 1 % of a dB a doubling.
    [Theory]
    [InlineData(100, 85)]
    [InlineData(200, 88.0103)]
    [InlineData(50, 81.9897)]
    [InlineData(1000, 95)]
    public void TimeWeightedAverageDba_WorkedValues_Agree(double dose, double twaDba) =>
        Assert.Equal(twaDba, ListeningDose.TimeWeightedAverageDba(dose), 1e-4);

    [Fact]
    public void Percent_PartsOfADay_AddUp()
    {
        Assert.Equal(75, ListeningDose.Percent((85, 120), (88, 60), (91, 30)), 1e-9);
        Assert.Equal(0, ListeningDose.Percent());
        Assert.True(double.IsNegativeInfinity(ListeningDose.TimeWeightedAverageDba(0)));
    }

    // Eight hours in any one level average to that level, within the 0.0103 dB a doubling in which the two published forms differ.
    [Fact]
    public void TimeWeightedAverageDba_EightHoursOfOneLevel_IsThatLevel()
    {
        for (double level = 70; level <= 115; level += 2.5)
        {
            Assert.Equal(level, ListeningDose.TimeWeightedAverageDba(ListeningDose.Percent((level, 480))), 0.11);
        }
    }

    [Fact]
    public void AnyMember_NotANumberOrNegative_IsAProgrammersMistake()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ListeningDose.AllowedMinutes(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => ListeningDose.AllowedMinutes(double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => ListeningDose.Percent((85, -1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ListeningDose.Percent((85, double.NaN)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ListeningDose.TimeWeightedAverageDba(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ListeningDose.TimeWeightedAverageDba(double.NaN));
    }
}
