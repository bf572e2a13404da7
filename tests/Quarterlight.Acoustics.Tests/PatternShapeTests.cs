using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class PatternShapeTests
{
    // IEC 60268-4, 13.2.2: a cardioid has a directivity index of 10 lg 3 = 4.771 dB.
    [Fact]
    public void DirectivityIndexDb_Cardioid_MatchesTheStandard() => Assert.Equal(4.771, PolarPattern.Cardioid.DirectivityIndexDb(), 0.0005);

    [Fact]
    public void ResponseAt_NullAngle_IsNothing() => Gen.Double[0, 0.5].Sample(a =>
    {
        PolarPattern pattern = PolarPattern.FirstOrder(a);
        Assert.Equal(0, pattern.ResponseAt(pattern.NullAngleRad()!.Value), 1e-9);
    });

    [Fact]
    public void ResponseAt_OnAxis_IsOneAtAnyFrequency() => Gen.Double[0, 1].Select(Gen.Double[20, 20000]).Sample((a, hz) =>
    {
        Assert.Equal(1, PolarPattern.FirstOrder(a).ResponseAt(0, hz), 1e-12);
        Assert.Equal(1, PolarPattern.InterferenceTube(0.05 + (0.5 * a)).ResponseAt(0, hz), 1e-12);
    });

    // Definition: at half the acceptance angle the response is so many dB down.
    [Fact]
    public void AcceptanceAngleRad_AtItsEdge_ResponseIsThatFarDown() => Gen.Double[0, 0.49].Select(Gen.Double[0.1, 20]).Sample((a, down) =>
    {
        PolarPattern pattern = PolarPattern.FirstOrder(a);
        double edge = pattern.AcceptanceAngleRad(down) / 2;
        Assert.Equal(-down, 20 * Math.Log10(pattern.ResponseAt(edge)), 1e-6);
    });

    [Fact]
    public void FrontToRearEnergyDb_AgainstIntegrationOverTheHalves_Agrees() => Gen.Double[0, 1].Sample(a =>
    {
        PolarPattern pattern = PolarPattern.FirstOrder(a);
        double front = 0, rear = 0;
        for (int i = 0; i < 1000; i++)
        {
            double cosine = (i + 0.5) / 1000;
            front += Math.Pow(pattern.ResponseAt(Math.Acos(cosine)), 2);
            rear += Math.Pow(pattern.ResponseAt(Math.Acos(-cosine)), 2);
        }

        Assert.Equal(10 * Math.Log10(front / rear), pattern.FrontToRearEnergyDb(), 1e-4);
    }, iter: 200);

    // A uniform line of sources summed by phasors: the integral the closed form |sin X / X| stands for.
    [Fact]
    public void ResponseAt_InterferenceTube_EqualsALineOfPorts() => Gen.Select(Gen.Double[0.05, 0.6], Gen.Double[100, 8000], Gen.Double[0, Math.PI]).Sample((length, hz, angle) =>
    {
        const int Ports = 4000;
        double re = 0, im = 0, wave = 2 * Math.PI * hz / SpeedOfSound.NominalMps * (1 - Math.Cos(angle));
        for (int i = 0; i < Ports; i++)
        {
            (double s, double c) = Math.SinCos(wave * length * (i + 0.5) / Ports);
            re += c / Ports;
            im += s / Ports;
        }

        double capsule = PolarPattern.Supercardioid.ResponseAt(angle);
        Assert.Equal(capsule * Math.Sqrt((re * re) + (im * im)), PolarPattern.InterferenceTube(length).ResponseAt(angle, hz), 1e-4);
    }, iter: 200);

    // First null of the line at 90 degrees: c/L, 1372 Hz for 0.25 m.
    [Fact]
    public void ResponseAt_TubeOfQuarterMetre_HasItsFirstSideNullAt1372Hertz() =>
        Assert.Equal(0, PolarPattern.InterferenceTube(0.25).ResponseAt(Math.PI / 2, 1372), 1e-9);

    // Below about c/(2L) a tube does nothing: only its capsule's pattern is left.
    [Fact]
    public void ResponseAt_LongWaves_LeaveOnlyTheCapsule()
    {
        double capsule = PolarPattern.Supercardioid.ResponseAt(Angles.DegToRad(120));
        Assert.Equal(capsule, PolarPattern.InterferenceTube(0.2).ResponseAt(Angles.DegToRad(120), 50), 0.01 * Math.Abs(capsule));
    }

    [Theory]
    [InlineData(0.04)]
    [InlineData(0.61)]
    [InlineData(double.NaN)]
    public void InterferenceTube_ImpossibleLength_Throws(double lengthM) => Assert.Throws<ArgumentOutOfRangeException>(() => PolarPattern.InterferenceTube(lengthM));

    [Fact]
    public void ProximityGainDb_OmniHasNone_OthersFadeWithDistance()
    {
        Assert.Equal(0, PolarPattern.Omni.ProximityGainDb(0.02, 50));
        for (double r = 0.05; r < 1; r += 0.05)
        {
            Assert.True(PolarPattern.Cardioid.ProximityGainDb(r, 100) > PolarPattern.Cardioid.ProximityGainDb(r + 0.05, 100));
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => PolarPattern.Cardioid.ProximityGainDb(0, 100));
    }
}
