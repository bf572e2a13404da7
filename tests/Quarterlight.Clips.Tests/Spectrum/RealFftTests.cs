using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Tests.Spectrum;

public class RealFftTests
{
    public static TheoryData<int> Sizes => [64, 128, 256, 512, 1024, 2048, 4096, 8192, 16384, 32768, 65536];

    // Oracle: the defining sum, written out here; bins spread over the whole range for the large sizes.
    [Theory]
    [MemberData(nameof(Sizes))]
    public void Transform_Noise_EqualsTheDirectSum(int size)
    {
        double[] x = Noise(size);
        var fft = new RealFft(size);
        var re = new double[fft.Bins];
        var im = new double[fft.Bins];
        fft.Transform(x, re, im);
        var power = new double[fft.Bins];
        fft.Power(x, power);
        double rms = Math.Sqrt(x.Sum(v => v * v));
        for (int k = 0; k < fft.Bins; k += Math.Max(1, size / 256))
        {
            double sumRe = 0, sumIm = 0;
            for (int n = 0; n < size; n++)
            {
                (double s, double c) = Math.SinCos(-2 * Math.PI * ((long)n * k % size) / size);
                sumRe += x[n] * c;
                sumIm += x[n] * s;
            }

            Assert.InRange(Math.Abs(re[k] - sumRe) / rms, 0, 1e-9);
            Assert.InRange(Math.Abs(im[k] - sumIm) / rms, 0, 1e-9);
            Assert.InRange(Math.Abs(power[k] - (sumRe * sumRe) - (sumIm * sumIm)) / rms / rms, 0, 1e-9);
        }
    }

    // Parseval's theorem.
    [Theory]
    [MemberData(nameof(Sizes))]
    public void Power_Noise_KeepsTheEnergy(int size)
    {
        double[] x = Noise(size);
        var fft = new RealFft(size);
        var power = new double[fft.Bins];
        fft.Power(x, power);
        double total = (2 * power.Sum()) - power[0] - power[^1];
        Assert.Equal(1, total / size / x.Sum(v => v * v), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(32)]
    [InlineData(100)]
    [InlineData(131072)]
    public void Constructor_NoSuchSize_Throws(int size) => Assert.Throws<ArgumentOutOfRangeException>(() => new RealFft(size));

    [Fact]
    public void Power_WrongLength_Throws() => Assert.Throws<ArgumentException>(() => new RealFft(64).Power(new double[63], new double[33]));

    private static double[] Noise(int size)
    {
        var random = new Random(size);
        return [.. Enumerable.Range(0, size).Select(_ => random.NextDouble() - 0.5)];
    }
}
