using Quarterlight.Endurance.RunTime;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Tests.RunTime;

public class BatteryDeratingTests
{
    public static TheoryData<BatteryChemistry> Chemistries => [.. Enum.GetValues<BatteryChemistry>()];

    [Fact]
    public void Share_LeadAcid_FollowsTheMakersTableAndNeverPromisesMore()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("lead_acid_temperature"))
        {
            double printed = 1 + (Vectors.Number(row["change_percent"]) / 100);
            Assert.Equal(Math.Min(1, printed), BatteryDerating.Share(BatteryChemistry.LeadAcid, Vectors.Number(row["temperature_c"]), 0), 1e-9);
        }
    }

    [Fact]
    public void Share_LithiumIonInTheCold_IsTheMiddleOfEachRange()
    {
        foreach (Dictionary<string, string> row in Vectors.Read("lithium_ion_cold"))
        {
            double middle = (Vectors.Number(row["low_percent"]) + Vectors.Number(row["high_percent"])) / 200;
            Assert.Equal(middle, BatteryDerating.Share(BatteryChemistry.LithiumIon, Vectors.Number(row["temperature_c"]), 0), 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Chemistries))]
    public void Share_NewAt25Degrees_IsOne(BatteryChemistry chemistry) => Assert.Equal(1, BatteryDerating.Share(chemistry, 25, 0), 1e-9);

    [Theory]
    [MemberData(nameof(Chemistries))]
    public void Share_OlderOrColder_IsNeverMoreAndStaysBetweenZeroAndOne(BatteryChemistry chemistry)
    {
        for (double c = -40; c <= 80; c += 0.5)
        {
            for (double years = 0; years <= 15; years += 0.5)
            {
                double share = BatteryDerating.Share(chemistry, c, years);
                Assert.InRange(share, 0, 1);
                Assert.True(years == 0 || share <= BatteryDerating.Share(chemistry, c, years - 0.5));
                Assert.True(c <= -40 || c > 25 || share >= BatteryDerating.Share(chemistry, c - 0.5, years));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Chemistries))]
    public void Share_JustOutsideTheDischargeRange_IsNothing(BatteryChemistry chemistry)
    {
        ValidRange range = BatteryDerating.DischargeOf(chemistry);
        Assert.True(BatteryDerating.Share(chemistry, range.Min, 0) > 0);
        Assert.True(BatteryDerating.Share(chemistry, range.Max, 0) > 0);
        Assert.Equal(0, BatteryDerating.Share(chemistry, range.Max + 0.01, 0));
        Assert.True(range.Min <= BatteryDerating.Temperature.Min || BatteryDerating.Share(chemistry, range.Min - 0.01, 0) == 0);
    }

    // Trade knowledge and every data sheet agree on the order: alkaline suffers most from frost, lithium cells least.
    [Fact]
    public void Share_InFrost_AlkalineGivesLeastAndLithiumPrimaryMost()
    {
        double[] shares = [.. Enum.GetValues<BatteryChemistry>().Select(c => BatteryDerating.Share(c, -10, 0))];
        Assert.Equal(shares.Min(), shares[(int)BatteryChemistry.Alkaline]);
        Assert.Equal(shares.Max(), shares[(int)BatteryChemistry.LithiumPrimary]);
    }

    [Theory]
    [InlineData(-40.1, 0)]
    [InlineData(80.1, 0)]
    [InlineData(double.NaN, 0)]
    [InlineData(20, -0.1)]
    [InlineData(20, 15.1)]
    public void Share_OutsideItsRanges_Throws(double c, double years) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryDerating.Share(BatteryChemistry.LithiumIon, c, years));
}
