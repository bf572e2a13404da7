using CsCheck;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

public sealed class TruePeakMeterTests
{
    // EBU Tech 3341:2023 Table 1, cases 15 to 19: sines that never meet their crest with a sample; expected values and tolerances from the vector
    // file.
    [Theory]
    [InlineData(15, 4, 0.5, 0)]
    [InlineData(16, 4, 0.5, 45)]
    [InlineData(17, 6, 0.5, 60)]
    [InlineData(18, 8, 0.5, 67.5)]
    [InlineData(19, 4, 1.41, 45)]
    public void Measure_Cases15To19_AreWithinTolerance(int number, int part, double amplitude, double degrees)
    {
        float[] x = [.. Enumerable.Range(0, Sound.Rate).Select(n => (float)(amplitude * Math.Sin((2 * Math.PI * n / part) + (degrees * Math.PI / 180))))];
        Holds(number, Sound.Faded(x, Sound.Rate / 100));
    }

    // Cases 20 to 23: one period of fs/4 inside fs/6, made at four times the rate, low-passed and thinned from each of the four places.
    [Theory]
    [InlineData(20)]
    [InlineData(21)]
    [InlineData(22)]
    [InlineData(23)]
    public void Measure_Cases20To23_AreWithinTolerance(int number)
    {
        const int Half = 511, Length = 4 * Sound.Rate / 4;
        var fine = new float[Length];
        double phase = 0;
        for (int n = 0; n < Length; n++)
        {
            bool inside = n >= Length / 2 && n < (Length / 2) + 16;
            phase += 2 * Math.PI / (inside ? 16 : 24);
            fine[n] = (float)((inside ? 1 : 0.5) * Math.Sin(phase));
        }

        Sound.Faded(fine, 4 * Sound.Rate / 100);
        double[] h = [.. Enumerable.Range(-Half, (2 * Half) + 1).Select(k =>
            (k == 0 ? 0.225 : Math.Sin(Math.PI * 0.225 * k) / (Math.PI * k)) * (0.54 + (0.46 * Math.Cos(Math.PI * k / Half))))];
        var x = new float[Length / 4];
        for (int i = 0; i < x.Length; i++)
        {
            int at = (4 * i) + number - 20;
            double sum = 0;
            for (int k = Math.Max(-Half, at - Length + 1); k <= Math.Min(Half, at); k++)
            {
                sum += h[k + Half] * fine[at - k];
            }

            x[i] = (float)sum;
        }

        Holds(number, x);
    }

    // The curve itself: a sinc over all samples at 64 points between two. Noise up to 0.42 of the rate.
    [Theory]
    [InlineData(48_000, 0.42, 0.13)]
    [InlineData(44_100, 0.42, 0.13)]
    [InlineData(96_000, 0.25, 0.2)]
    [InlineData(192_000, 0.125, 0.2)]
    public void Measure_BandLimitedNoise_IsThatOf64PointsASample(int rate, double upTo, double shortfallDb)
    {
        double worst = 0;
        for (uint seed = 1; seed <= 12; seed++)
        {
            float[] draw = Sound.Noise(200, 1, seed);
            var x = new float[1200];
            for (int n = 0; n < 600; n++)
            {
                double sum = 0, window = Math.Pow(Math.Sin(Math.PI * n / 600), 2);
                for (int k = 0; k < 100; k++)
                {
                    sum += Math.Cos((2 * Math.PI * upTo * (draw[k] + 1) / 2 * n) + (Math.PI * draw[100 + k]));
                }

                x[300 + n] = (float)(0.05 * window * sum);
            }

            (double peak, double at) = (0, 0);
            for (int i = 300 * 64; i < 900 * 64; i++)
            {
                double sum = 0, sine = Math.Sin(Math.PI * i / 64);
                for (int n = 300; n < 900; n++)
                {
                    double d = (i / 64.0) - n;
                    sum += x[n] * (d == 0 ? 1 : (n % 2 == 0 ? sine : -sine) / (Math.PI * d));
                }

                (peak, at) = Math.Abs(sum) > peak ? (Math.Abs(sum), i / 64.0) : (peak, at);
            }

            TruePeak own = Assert.Single(Meter(rate, 1, x).Measure());
            double difference = own.PeakDbtp!.Value - (20 * Math.Log10(peak));
            Assert.InRange(difference, -shortfallDb, 0.02);
            worst = Math.Min(worst, difference);
            Assert.Equal(at / rate, own.Seconds!.Value, 1.0 / rate);
        }

        Assert.True(worst < 0, "The finer grid must be higher somewhere.");
    }

    [Fact]
    public void Measure_OneSampleAnywhere_IsFoundAtItsPlaceInItsChannel() =>
        Gen.Select(Gen.Int[0, 9_999], Gen.Int[0, 2]).Sample(
            (at, channel) =>
            {
                var x = new float[30_000];
                x[(3 * at) + channel] = -0.5f;
                IReadOnlyList<TruePeak> peaks = Meter(48_000, 3, x).Measure();
                Assert.Equal(-6.0206, peaks[channel].PeakDbtp!.Value, 1e-3);
                Assert.Equal(at / 48_000.0, peaks[channel].Seconds!.Value, 1e-9);
                Assert.All(peaks.Where((_, c) => c != channel), p => Assert.Equal(new TruePeak(null, null), p));
            },
            iter: 200);

    [Fact]
    public void Measure_AnyPieces_GiveTheSame() =>
        Gen.Int[1, 5000].Array[1, 8].Sample(
            pieces =>
            {
                float[] x = Sound.Noise(20_001 * 2, 0.8, 11);
                var cut = new TruePeakMeter(44_100, 2);
                Sound.Pieces(x, 2, pieces, p => { cut.Add(p.Span); cut.Measure(); });
                Assert.Equal(Meter(44_100, 2, x).Measure(), cut.Measure());
            },
            iter: 50);

    [Fact]
    public void Measure_AnySound_IsNeverBelowTheSamplePeak() =>
        Gen.Float[-1, 1].Array[1, 5000].Sample(
            x => Assert.True(Meter(96_000, 1, x).Measure()[0].PeakDbtp is not { } db || db >= (20 * Math.Log10(x.Max(Math.Abs))) - 1e-5),
            iter: 100);

    private static TruePeakMeter Meter(double rate, int channels, float[] x)
    {
        var meter = new TruePeakMeter(rate, channels);
        meter.Add(x);
        return meter;
    }

    private static void Holds(int number, float[] channel)
    {
        Dictionary<string, string> row = Assert.Single(Vectors.Read("ebu3341_cases"), r => r["document"] == "Tech 3341" && r["case"] == $"{number}");
        double[] tolerance = [.. row["tolerance"].Split('/').Select(Vectors.Number)];
        double expected = Vectors.Number(row["expected"]);
        Assert.All(Meter(Sound.Rate, 2, Sound.Both(channel)).Measure(), p => Assert.InRange(p.PeakDbtp!.Value, expected + tolerance[1], expected + tolerance[0]));
    }
}
