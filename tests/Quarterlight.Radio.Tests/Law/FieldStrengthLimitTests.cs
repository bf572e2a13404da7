using Quarterlight.Radio.Law;

namespace Quarterlight.Radio.Tests;

public class FieldStrengthLimitTests
{
    // Fields: 47 CFR 15.239(b) (250 µV/m at 3 m), 15.209(a) (150 µV/m), CRTC Public Notice 1993-46 (100 µV/m at 30 m), Japan's Radio Act
    // article 4 item 1 (500 µV/m). Powers: ITU-R P.525, e = sqrt(30 p) / d, worked out by hand: (250e-6 x 3)^2 / 30 = 18.75 nW.
    [Theory]
    [InlineData(250, 3, 18.75, 11.43)]
    [InlineData(150, 3, 6.75, 4.11)]
    [InlineData(100, 30, 300.0, 182.83)]
    [InlineData(500, 3, 75.0, 45.71)]
    public void EirpMilliwatts_PublishedFieldLimit_GivesTheFreeSpacePower(double field, double distance, double eirpNw, double erpNw)
    {
        double eirp = FieldStrengthLimit.EirpMilliwatts(field, distance);
        Assert.Equal(eirpNw, eirp * 1e6, 0.02);
        Assert.Equal(erpNw, FieldStrengthLimit.ErpFromEirp(eirp) * 1e6, 0.02);
    }

    // 50 nW e.r.p. (ERC/REC 70-03, low-power FM) is 82.0 nW e.i.r.p. with the textbook dipole gain of 2.15 dB.
    [Fact]
    public void EirpFromErp_FiftyNanowatts_IsEightyTwo() => Assert.Equal(82.0, FieldStrengthLimit.EirpFromErp(50), 0.1);

    // The gain of a half-wave dipole is 2 / integral of (cos(pi/2 cos t) / sin t)^2 sin t dt over 0 to pi, integrated here.
    [Fact]
    public void DipoleGain_IntegratedPattern_Agrees()
    {
        const int steps = 20_000;
        double sum = 0;
        for (int i = 0; i < steps; i++)
        {
            double t = (i + 0.5) * Math.PI / steps;
            double pattern = Math.Cos(Math.PI / 2 * Math.Cos(t)) / Math.Sin(t);
            sum += pattern * pattern * Math.Sin(t) * Math.PI / steps;
        }

        double integrated = 2 / sum;
        Assert.Equal(FieldStrengthLimit.DipoleGain, integrated, 1e-4);
        Assert.Equal(2.15, 10 * Math.Log10(FieldStrengthLimit.DipoleGain), 0.005);
    }
}
