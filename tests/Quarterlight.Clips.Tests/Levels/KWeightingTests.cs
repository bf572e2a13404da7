using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

public sealed class KWeightingTests
{
    [Fact]
    public void Sections_48Kilohertz_AreTablesOfAnnex1()
    {
        FilterSection[] own = [KWeighting.Shelf(48_000), KWeighting.HighPass(48_000)];
        List<Dictionary<string, string>> rows = Vectors.Read("k_weighting_48k");
        Assert.Equal(2, rows.Count);
        for (int i = 0; i < 2; i++)
        {
            double[] table = [.. new[] { "b0", "b1", "b2", "a1", "a2" }.Select(k => Vectors.Number(rows[i][k]))];
            Assert.Equal(table, new[] { own[i].B0, own[i].B1, own[i].B2, own[i].A1, own[i].A2 });
        }
    }

    // Against the response of the published coefficients at 48 kHz. What differs is the bilinear transform's squeeze towards half the sample rate,
    // which
    // bends the shelf between 500 Hz and 3 kHz: more is allowed the lower the rate.
    [Theory]
    [InlineData(8_000, 0.3)]
    [InlineData(11_025, 0.16)]
    [InlineData(16_000, 0.07)]
    [InlineData(22_050, 0.035)]
    [InlineData(32_000, 0.015)]
    [InlineData(44_100, 0.005)]
    [InlineData(88_200, 0.01)]
    [InlineData(96_000, 0.01)]
    [InlineData(192_000, 0.01)]
    public void GainDb_OtherRate_FollowsThatOf48Kilohertz(double rate, double toleranceDb)
    {
        for (double f = 10; f <= Math.Min(0.45 * rate, 21_600); f *= 1.02)
        {
            Assert.Equal(KWeighting.GainDb(f, 48_000), KWeighting.GainDb(f, rate), toleranceDb);
        }
    }

    [Theory]
    [InlineData(7_999)]
    [InlineData(192_001)]
    [InlineData(double.NaN)]
    public void Shelf_RateOutOfRange_Throws(double rate) => Assert.Throws<ArgumentOutOfRangeException>(() => KWeighting.Shelf(rate));
}
