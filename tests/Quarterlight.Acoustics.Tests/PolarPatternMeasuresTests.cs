using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class PolarPatternMeasuresTests
{
    // tests/vectors/patterns/patterns.source.md
    [Fact]
    public void Measures_EveryPatternOfTheHandbookTable_Agree()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("patterns"))
        {
            PolarPattern pattern = PolarPattern.FirstOrder(Vectors.Number(row["A"]));
            Assert.Equal(Vectors.Number(row["random_energy_efficiency"]), pattern.RandomEnergyEfficiency(), 0.00002);
            Assert.Equal(Vectors.Number(row["directivity_index_db"]), pattern.DirectivityIndexDb(), 0.005);
            Assert.Equal(Vectors.Number(row["distance_factor"]), pattern.DistanceFactor(), 0.0005);
            Assert.Equal(Vectors.Number(row["acceptance_minus3db_deg"]), Angles.RadToDeg(pattern.AcceptanceAngleRad(3)), 0.1);
            Assert.Equal(Vectors.Number(row["unidirectional_index_db"]), pattern.FrontToRearEnergyDb(), 0.005);
            if (row["null_deg"].Length > 0)
            {
                Assert.Equal(Vectors.Number(row["null_deg"]), Angles.RadToDeg(pattern.NullAngleRad()!.Value), 0.01);
            }
            else
            {
                Assert.Null(pattern.NullAngleRad());
            }

            if (row["rear_180_db"] != "-inf")
            {
                Assert.Equal(Vectors.Number(row["rear_180_db"]), pattern.RearResponseDb(), 0.005);
            }
        }
    }

    // Definitions of the two optima (acoustics handbooks): super has most front-to-rear energy, hyper the highest directivity index.
    [Fact]
    public void NamedPatterns_AreTheOptimaOfTheFamily()
    {
        for (int i = 0; i <= 1000; i++)
        {
            PolarPattern other = PolarPattern.FirstOrder(i / 1000.0);
            Assert.True(other.DirectivityIndexDb() <= PolarPattern.Hypercardioid.DirectivityIndexDb() + 1e-9);
            Assert.True(other.FrontToRearEnergyDb() <= PolarPattern.Supercardioid.FrontToRearEnergyDb() + 1e-9);
        }
    }

    // Common practice, no source: the useful rear rejection of a supercardioid lies around 123 to 233 degrees.
    [Fact]
    public void SupercardioidNull_LiesInTheTradesUsefulRearRejection() =>
        Assert.InRange(Angles.RadToDeg(PolarPattern.Supercardioid.NullAngleRad()!.Value), 123, 233);

    [Fact]
    public void RandomEnergyEfficiency_AgainstIntegrationOverTheSphere_Agrees() => Gen.Double[0, 1].Sample(a =>
    {
        PolarPattern pattern = PolarPattern.FirstOrder(a);
        double sum = 0;
        for (int i = 0; i < 2000; i++)
        {
            sum += Math.Pow(pattern.ResponseAt(Math.Acos(-1 + ((2 * i) + 1) / 2000.0)), 2) / 2000;
        }

        Assert.Equal(sum, pattern.RandomEnergyEfficiency(), 1e-6);
    }, iter: 200);

    // Line formula with L = 0.25 m (from memory: guards the arithmetic only): -13.29 dB at 90 degrees and -9.67 dB at 60, 2 kHz, line alone.
    [Theory]
    [InlineData(90, -13.29)]
    [InlineData(60, -9.67)]
    public void ResponseAt_InterferenceTube_IsCapsuleTimesLine(double deg, double lineDb)
    {
        double angle = Angles.DegToRad(deg);
        double capsule = PolarPattern.Supercardioid.ResponseAt(angle);
        double tube = PolarPattern.InterferenceTube(0.25).ResponseAt(angle, 2000);
        Assert.Equal(lineDb, 20 * Math.Log10(tube / capsule), 0.01);
    }

    // Pressure plus gradient of a spherical wave: cardioid at 0.1 m and 100 Hz +9.26 dB, figure-8 +14.88 dB.
    [Fact]
    public void ProximityGainDb_AtTenCentimetresAndHundredHertz_MatchesTheModel()
    {
        Assert.Equal(9.26, PolarPattern.Cardioid.ProximityGainDb(0.1, 100), 0.01);
        Assert.Equal(14.88, PolarPattern.FigureEight.ProximityGainDb(0.1, 100), 0.01);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(-0.01)]
    [InlineData(1.01)]
    public void FirstOrder_OutsideZeroToOne_Throws(double a) => Assert.Throws<ArgumentOutOfRangeException>(() => PolarPattern.FirstOrder(a));
}
