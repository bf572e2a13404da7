using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips.Tests.Tagging;

public class MelBandsTests
{
    // The scale is made so that 1000 Hz is 1000 mel (to 0.02 by the rounded constant 2595); 700 Hz is 2595 log10 2.
    [Theory]
    [InlineData(0, 0)]
    [InlineData(700, 781.177)]
    [InlineData(1000, 1000.0)]
    [InlineData(6300, 2595)]
    public void Mel_KnownFrequencies_AsTheFormula(double hz, double mel)
    {
        Assert.Equal(mel, MelBands.Mel(hz), 0.02);
        Assert.Equal(hz, MelBands.Hertz(MelBands.Mel(hz)), 1e-6);
    }

    [Fact]
    public void EdgeHz_FirstAndLast_AreTheEndsOfTheRange()
    {
        Assert.Equal(MelBands.LowestHz, MelBands.EdgeHz(0), 1e-9);
        Assert.Equal(MelBands.HighestHz, MelBands.EdgeHz(MelBands.Count + 1), 1e-9);
        for (int e = 1; e < MelBands.Count; e++)
        {
            // Evenly spaced in mel means that widths grow.
            Assert.True(MelBands.EdgeHz(e + 1) - MelBands.EdgeHz(e) > MelBands.EdgeHz(e) - MelBands.EdgeHz(e - 1));
        }
    }

    // Closed form: between the first and the last peak neighbouring triangles add up to 1, so that the bands add up to the power there.
    [Fact]
    public void Sum_BinBetweenThePeaks_IsSharedWithoutLoss()
    {
        const double binHz = 31.25;
        var mel = new MelBands(225, binHz);
        var bands = new double[MelBands.Count];
        for (int k = (int)(MelBands.EdgeHz(1) / binHz) + 1; k * binHz < MelBands.EdgeHz(MelBands.Count); k++)
        {
            var power = new double[225];
            power[k] = 3;
            mel.Sum(power, bands);
            Assert.Equal(3, bands.Sum(), 1e-9);
            Assert.InRange(bands.Count(b => b > 0), 1, 2);
        }
    }
}
