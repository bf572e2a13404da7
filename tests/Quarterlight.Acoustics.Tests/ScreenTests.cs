using CsCheck;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.Tests;

public class ScreenTests
{
    // The exact knife edge: |F(v)|^2 with F the complementary Fresnel integral; ITU-R P.526 states its fit for v above -0.78.
    // Computed here by numerical integration of the definition.
    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void KnifeEdgeLossDb_AgainstTheFresnelIntegral_AgreesWithinAThirdOfADecibel(double v)
    {
        (double c, double s) = Fresnel(v);
        double exact = -10 * Math.Log10(0.5 * (Math.Pow(0.5 - c, 2) + Math.Pow(0.5 - s, 2)));
        Assert.Equal(exact, Screen.KnifeEdgeLossDb(v), 0.35);
    }

    [Fact]
    public void Panel_BetweenMouthAndMicrophone_TakesMoreFromHighBands()
    {
        double[] loss = LossDb([Screen.Panel(new Box3D(new(-0.05, -0.3, 0), new(0.05, 0.3, 0.9)))], new(-0.5, 0, 0.6), new(0.5, 0, 0.6));
        Assert.True(loss[6] > loss[3] && loss[3] > loss[0] && loss[0] > 0, string.Join(" ", loss));
    }

    [Fact]
    public void Panel_BesideThePath_TakesNothing() =>
        Assert.All(LossDb([Screen.Panel(new Box3D(new(-0.05, 0.5, 0), new(0.05, 0.9, 0.9)))], new(-0.5, 0, 0.6), new(0.5, 0, 0.6)), l => Assert.Equal(0, l, 1e-9));

    [Fact]
    public void Head_OfTheTalkerHimself_DoesNotScreenHisVoice()
    {
        Screen own = Screen.Head(new Vector3D(0, 0, 0.6), 0.1, 0), other = Screen.Head(new Vector3D(0, 0, 0.6), 0.1, 1);
        Assert.Equal(0, LossDb([own], new(-0.5, 0, 0.6), new(0.5, 0, 0.6))[4], 1e-9);
        Assert.True(LossDb([other], new(-0.5, 0, 0.6), new(0.5, 0, 0.6))[4] > 3);
    }

    [Fact]
    public void Panel_Taller_NeverPassesMore() => Gen.Select(Gen.Double[0.7, 1.0], Gen.Double[0.0, 0.3]).Sample((height, more) =>
    {
        double[] low = LossDb([Screen.Panel(new Box3D(new(-0.05, -0.3, 0), new(0.05, 0.3, height)))], new(-0.5, 0, 0.6), new(0.5, 0, 0.6));
        double[] high = LossDb([Screen.Panel(new Box3D(new(-0.05, -0.3, 0), new(0.05, 0.3, height + more)))], new(-0.5, 0, 0.6), new(0.5, 0, 0.6));
        for (int b = 0; b < 7; b++)
        {
            Assert.True(high[b] >= low[b] - 1e-9);
        }
    }, iter: 100);

    private static double[] LossDb(Screen[] screens, Vector3D from, Vector3D to)
    {
        var room = new ShoeboxRoom(new Box3D(new(-1, -1, 0), new(1, 1, 1.4)), [.. Enumerable.Repeat(new FaceAbsorption([.. Enumerable.Repeat(0.3, 7)]), 6)]);
        var lattice = new ImageLattice(room, 0);
        var with = new Arrival[1];
        var without = new Arrival[1];
        var source = new SoundSource(from, Vector3D.Forward, true, 0, 0);
        new SoundTracer(lattice, screens).Trace(source, to, with);
        new SoundTracer(lattice, []).Trace(source, to, without);
        return [.. Enumerable.Range(0, 7).Select(b => 10 * Math.Log10(without[0].Energy[b] / with[0].Energy[b]))];
    }

    private static (double C, double S) Fresnel(double v)
    {
        const int Steps = 20000;
        double c = 0, s = 0;
        for (int i = 0; i < Steps; i++)
        {
            double t = v * (i + 0.5) / Steps;
            c += Math.Cos(Math.PI * t * t / 2) * v / Steps;
            s += Math.Sin(Math.PI * t * t / 2) * v / Steps;
        }

        return (c, s);
    }
}
