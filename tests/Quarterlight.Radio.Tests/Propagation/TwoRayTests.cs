using System.Numerics;
using CsCheck;
using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Tests.Propagation;

public class TwoRayTests
{
    private static readonly GroundProperties s_average = new(15, 0.005, new("average ground", Trust.FromMemory));
    private static readonly GroundProperties s_mirror = new(1e12, 0, new("as good as a mirror for a wave lying down", Trust.Derived));

    [Fact]
    public void Breakpoint_Of98MHzAtOneAndAHalfMetres_IsUnderThreeMetres() =>
        Assert.Equal(2.94, Path(98, Polarisation.Vertical).BreakpointM, 0.01); // 4 h1 h2/λ by hand.

    [Theory]
    [InlineData(98)]
    [InlineData(600)]
    [InlineData(2450)]
    public void Loss_FarBeyondTheBreakpoint_IsFortyLgDistance(double frequencyMHz)
    {
        // Textbook: 40 lg d - 20 lg(h1 h2) whatever the frequency; 92.0 dB at 300 m for 1.5 m.
        Assert.Equal(92.0, TwoRay.AsymptoteDb(300, 1.5, 1.5), 0.1);
        double distance = 300 * Path(frequencyMHz, Polarisation.Horizontal).BreakpointM;

        Assert.Equal(TwoRay.AsymptoteDb(distance, 1.5, 1.5), TwoRay.LossDb(Path(frequencyMHz, Polarisation.Horizontal, s_mirror), distance), 0.1);
    }

    [Theory] // Computed from the same formula in another language: ε 15, σ 0.005 S/m, antennas 1.5 m, 300 m.
    [InlineData(98, Polarisation.Vertical, 83.6)]
    [InlineData(98, Polarisation.Horizontal, 91.9)]
    [InlineData(600, Polarisation.Vertical, 91.7)]
    [InlineData(600, Polarisation.Horizontal, 92.1)]
    [InlineData(2450, Polarisation.Vertical, 92.6)]
    [InlineData(2450, Polarisation.Horizontal, 92.3)]
    public void Loss_OverAverageGround_IsThatOfTheOtherProgram(double frequencyMHz, Polarisation polarisation, double lossDb) =>
        Assert.Equal(lossDb, TwoRay.LossDb(Path(frequencyMHz, polarisation), 300), 0.05);

    [Fact]
    public void Reflection_Textbook_GrazingNormalAndBrewster()
    {
        // Fresnel: -1 at grazing incidence for both; (1-n)/(1+n) and its opposite at normal incidence; none at Brewster's angle atan n for the wave
        // in the plane.
        var glass = new Complex(2.25, 0);

        Assert.Equal(-1, TwoRay.Reflection(glass, 1e-9, Polarisation.Vertical).Real, 6);
        Assert.Equal(-1, TwoRay.Reflection(glass, 1e-9, Polarisation.Horizontal).Real, 6);
        Assert.Equal(-0.2, TwoRay.Reflection(glass, Math.PI / 2, Polarisation.Horizontal).Real, 1e-9);
        Assert.Equal(0.2, TwoRay.Reflection(glass, Math.PI / 2, Polarisation.Vertical).Real, 1e-9);
        Assert.Equal(0, TwoRay.Reflection(glass, (Math.PI / 2) - Math.Atan(1.5), Polarisation.Vertical).Magnitude, 1e-9);
    }

    [Fact]
    public void Reflection_AnyGroundAndAngle_NeverGainsEnergy() =>
        Gen.Select(Gen.Double[1.1, 90], Gen.Double[0, 100], Gen.Double[0.0001, 1.57], Gen.Bool).Sample((e, loss, angle, vertical) =>
            TwoRay.Reflection(new Complex(e, -loss), angle, vertical ? Polarisation.Vertical : Polarisation.Horizontal).Magnitude <= 1 + 1e-9);

    [Theory]
    [InlineData(2450, 8)]
    [InlineData(2450, 20)]
    [InlineData(2450, 37)]
    [InlineData(2450, 120)]
    [InlineData(600, 9)]
    [InlineData(600, 60)]
    public void LocalMean_OfTheExactLoss_IsItsAverageAlongTheRoad(double frequencyMHz, double distanceM)
    {
        // Brute force: mean power of the exact formula over 15 % each way, even in the logarithm of distance, the spreading taken out.
        const int Count = 4001;
        double mean = 0;
        for (int i = 0; i < Count; i++)
        {
            double d = distanceM * Math.Exp(TwoRay.AveragingFraction * ((2.0 * i / (Count - 1)) - 1));
            mean += Math.Pow(10, -TwoRay.LossDb(Path(frequencyMHz, Polarisation.Horizontal), d) / 10) * d * d / (distanceM * distanceM) / Count;
        }

        Assert.Equal(-10 * Math.Log10(mean), TwoRay.LocalMeanLossDb(Path(frequencyMHz, Polarisation.Horizontal), distanceM), 0.6);
    }

    private static PathInputs Path(double frequencyMHz, Polarisation polarisation, GroundProperties? ground = null) => new(frequencyMHz, 1.5, 1.5, polarisation, ground ?? s_average);
}
