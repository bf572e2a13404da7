using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class AWeightingTests
{
    // tests/vectors/noise/a_weighting.source.md
    [Fact]
    public void AtHertz_EveryBandOfTheStandard_Agrees()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("a_weighting"))
        {
            Assert.Equal(Vectors.Number(row["A_table_db"]), AWeighting.AtHertz(Vectors.Number(row["exact_hz"])), 0.0501);
        }
    }

    // The rounded table of the octave bands and the formula are the same curve.
    [Fact]
    public void AtHertz_OctaveBands_AgreeWithTheProjectsTable()
    {
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            double exactHz = 1000 * Math.Pow(10, 0.3 * (b - 3)); // IEC 61260-1, base ten.
            Assert.Equal(OctaveBands.AWeightingDb[b], AWeighting.AtHertz(exactHz), 0.0501);
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void AtHertz_NoFrequency_Throws(double hz) => Assert.Throws<ArgumentOutOfRangeException>(() => AWeighting.AtHertz(hz));
}
