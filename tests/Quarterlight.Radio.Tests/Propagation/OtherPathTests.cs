using System.Numerics;
using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Tests.Propagation;

public class NearGroundTests
{
    private static readonly GroundProperties s_average = new(15, 0.005, new("average ground", Trust.FromMemory));

    [Theory] // By hand from Bullington's formula at 98 MHz, ε 15, σ 0.005 S/m: 1.95 m upright, 0.13 m lying.
    [InlineData(Polarisation.Vertical, 1.95, 0.05)]
    [InlineData(Polarisation.Horizontal, 0.13, 0.01)]
    public void LeastHeight_At98MHz_IsTheWorkedOne(Polarisation polarisation, double heightM, double toleranceM) =>
        Assert.Equal(heightM, NearGround.LeastHeightM(98, polarisation, s_average), toleranceM);

    [Theory] // Against the exact two-ray formula over the same ground: an independent way to the same loss, without a surface wave.
    [InlineData(300, 0.3)]
    [InlineData(1000, 0.2)]
    [InlineData(100, 1.0)]
    public void Loss_UprightFarEnough_AgreesWithTheTwoRayFormula(double distanceM, double toleranceDb)
    {
        var path = new PathInputs(98, 1.5, 1.5, Polarisation.Vertical, s_average);

        Assert.Equal(TwoRay.LossDb(path, distanceM), NearGround.LossDb(path, distanceM), toleranceDb);
    }

    [Fact]
    public void Loss_LyingOverUpright_IsAboutEightDecibelMore()
    {
        // The exact two-ray formula says 91.9 - 83.6 dB at 300 m.
        double upright = NearGround.LossDb(new PathInputs(98, 1.5, 1.5, Polarisation.Vertical, s_average), 300);
        double lying = NearGround.LossDb(new PathInputs(98, 1.5, 1.5, Polarisation.Horizontal, s_average), 300);

        Assert.Equal(8.3, lying - upright, 0.6);
    }

    [Fact]
    public void Loss_NearBy_IsNeverBelowFreeSpace()
    {
        var path = new PathInputs(98, 1.5, 1.5, Polarisation.Vertical, s_average);
        for (double d = 3; d < 3000; d *= 1.2)
        {
            Assert.True(NearGround.LossDb(path, d) >= FreeSpace.LossDb(98, d) - 1e-9);
        }
    }
}

public class StreetTests
{
    public static TheoryData<string, double, double, string, string, string, string, string> Rows
    {
        get
        {
            var data = new TheoryData<string, double, double, string, string, string, string, string>();
            foreach (Dictionary<string, string> row in Vectors.Read("p1411"))
            {
                data.Add(row["section"], Vectors.Number(row["frequency_mhz"]), Vectors.Number(row["distance_m"]), row["location_fraction"], row["street"], row["lower_db"], row["median_db"], row["upper_db"]);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Loss_OfEachSection_IsThatOfThePublicImplementation(
        string section, double frequencyMHz, double distanceM, string fraction, string street, string lower, string median, string upper)
    {
        var path = new PathInputs(frequencyMHz, 1.5, 1.5, Polarisation.Vertical, GroundProperties.Of(GroundKind.Average));
        switch (section)
        {
            case "4.1.2":
                (double low, double middle, double high) = Street.UhfDb(path, distanceM);
                Assert.Equal(Vectors.Number(lower), low, 0.05);
                Assert.Equal(Vectors.Number(median), middle, 0.05);
                Assert.Equal(Vectors.Number(upper), high, 0.05);
                break;
            case "4.3.1":
                Assert.Equal(Vectors.Number(median), Street.AnywhereDb(frequencyMHz, distanceM, Vectors.Number(fraction), street == "urban" ? StreetKind.Urban : StreetKind.Suburban), 0.05);
                break;
            default:
                Assert.Equal(Vectors.Number(median), Street.CanyonDb(frequencyMHz, distanceM), 0.05);
                break;
        }
    }

    [Fact]
    public void Corner_Median_IsTheOutOfSightBranchFarOut() =>
        Assert.Equal(Street.AnywhereDb(600, 400, 0.5, StreetKind.Urban), Street.CornerMedianDb(600, 400, StreetKind.Urban), 1e-9);
}

public class KnifeEdgeTests
{
    [Theory]
    [InlineData(-0.7)]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2.4)]
    [InlineData(5)]
    public void Loss_OfAnEdge_IsThatOfTheFresnelIntegral(double nu)
    {
        // Exact: -20 lg |((1 + j)/2) ∫ from ν to ∞ of exp(-jπt²/2) dt|, integrated here with a taper; the recommendation's formula is an
        // approximation of it.
        Complex sum = Complex.Zero;
        const double Step = 1e-4, End = 60;
        for (double t = nu + (Step / 2); t < End; t += Step)
        {
            double taper = t < 30 ? 1 : 0.5 * (1 + Math.Cos(Math.PI * (t - 30) / 30));
            sum += taper * Complex.Exp(new Complex(0, -Math.PI * t * t / 2)) * Step;
        }

        double exact = -20 * Math.Log10((new Complex(0.5, 0.5) * sum).Magnitude);
        Assert.Equal(exact, KnifeEdge.LossDb(nu), 0.35);
    }

    [Fact]
    public void Loss_EdgeWellBelowTheLine_IsNone() => Assert.Equal(0, KnifeEdge.LossDb(0.12, 30, 30, -5));

    [Fact]
    public void Loss_EdgeOnTheLine_IsSixDecibel() => Assert.Equal(6.0, KnifeEdge.LossDb(0.12, 10, 40, 0), 0.1); // Half the wave front: 6.02 dB.
}

public class TunnelTests
{
    [Theory]
    [InlineData(600)]
    [InlineData(2450)]
    public void ModeLoss_AtSmallAngles_IsThatOfARayBouncing(double frequencyMHz)
    {
        // The lowest mode is a ray at grazing angle λ/2w to the side walls and λ/2h to roof and road: it meets each wall pair tan θ/w times a metre
        // and loses 20 lg|Γ| each
        // time, with Fresnel's coefficient. Lying wave: its field stands in the plane of incidence of the side walls.
        double wavelength = FreeSpace.WavelengthM(frequencyMHz);
        double expected = Bounces(Tunnel.WidthM, Polarisation.Vertical) + Bounces(Tunnel.HeightM, Polarisation.Horizontal);

        Assert.Equal(expected, Tunnel.ModeDbPerM(wavelength, Polarisation.Horizontal), expected * 0.05);

        double Bounces(double size, Polarisation against)
        {
            double angle = Math.Asin(wavelength / (2 * size));
            return Math.Tan(angle) / size * -20 * Math.Log10(TwoRay.Reflection(Tunnel.WallPermittivity, angle, against).Magnitude);
        }
    }

    [Fact]
    public void Loss_LowBandAgainstHighBand_TunnelsSwallowTheFmBand()
    {
        // Loss of the mode goes with the square of the wavelength: at 98 MHz it is 37.5 times that at 600 MHz.
        double ratio = Tunnel.ModeDbPerM(FreeSpace.WavelengthM(98), Polarisation.Vertical) / Tunnel.ModeDbPerM(FreeSpace.WavelengthM(600), Polarisation.Vertical);

        Assert.Equal(Math.Pow(600.0 / 98, 2), ratio, 1e-6);
    }
}
