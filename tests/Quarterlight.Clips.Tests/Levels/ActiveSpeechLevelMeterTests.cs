using CsCheck;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

public sealed class ActiveSpeechLevelMeterTests
{
    private const int Rate = 16_000;

    // The signals of the vector file that anyone can make; expected values printed by the ITU-T software tool library.
    [Theory]
    [InlineData("tone_cont")]
    [InlineData("tone_gated")]
    [InlineData("lcg_cont")]
    [InlineData("lcg_gated")]
    public void Measure_SignalOfTheVectorFile_IsWithinTolerance(string name)
    {
        Dictionary<string, string> row = Assert.Single(Vectors.Read("p56_cases"), r => r["signal"] == name);
        ActiveSpeechLevel level = Levels(Signal(name));
        Assert.Equal(Vectors.Number(row["rms_dBov"]), level.LongTermDbov!.Value, 0.002);
        Assert.Equal(Vectors.Number(row["active_level_dBov"]), level.ActiveDbov!.Value, 0.05);
        Assert.Equal(Vectors.Number(row["activity_percent"]), 100 * level.ActivityShare, 0.7);
    }

    // Sample by sample with 15 counters, as ITU-T P.56 method B writes it.
    [Fact]
    public void Measure_SoundThatComesAndGoes_IsThatOfCountingEverySample() =>
        Gen.Select(Gen.Double[0.0001, 0.9].Array[2, 12], Gen.Int[200, 9000]).Sample(
            (gains, length) =>
            {
                float[] x = [.. gains.SelectMany((g, i) => Sound.Noise(length, g * g, (uint)i + 1))];
                ActiveSpeechLevel own = Levels(x);
                double? counted = Counted(x);
                Assert.Equal(counted is null, own.ActiveDbov is null);
                Assert.Equal(counted ?? 0, own.ActiveDbov ?? 0, 1e-6);
            },
            iter: 100);

    [Fact]
    public void Measure_AnyPieces_GiveTheSame() =>
        Gen.Int[1, 5000].Array[1, 8].Sample(
            pieces =>
            {
                float[] x = Sound.Interleave(Signal("lcg_gated"), Signal("lcg_cont"));
                (ActiveSpeechLevelMeter whole, ActiveSpeechLevelMeter cut) = (new(Rate, 2), new(Rate, 2));
                whole.Add(x);
                Sound.Pieces(x, 2, pieces, p => { cut.Add(p.Span); cut.Measure(); });
                Assert.Equal(whole.Measure(), cut.Measure());
            },
            iter: 20);

    [Fact]
    public void Measure_SilenceOrFaintNoise_HasNoActiveLevel()
    {
        Assert.Equal(new ActiveSpeechLevel(null, null, 0), Levels(new float[Rate]));
        ActiveSpeechLevel faint = Levels(Sound.Noise(Rate, 1e-4, 1));
        Assert.NotNull(faint.LongTermDbov);
        Assert.Null(faint.ActiveDbov);
    }

    private static ActiveSpeechLevel Levels(float[] x)
    {
        var meter = new ActiveSpeechLevelMeter(Rate, 1);
        meter.Add(x);
        return Assert.Single(meter.Measure());
    }

    private static float[] Signal(string name)
    {
        bool tone = name.StartsWith("tone", StringComparison.Ordinal), gated = name.EndsWith("gated", StringComparison.Ordinal);
        int seconds = tone ? 8 : 12;
        float[] u = Sound.Noise(seconds * Rate, 1, 12345);
        return [.. Enumerable.Range(0, seconds * Rate).Select(n =>
        {
            double t = (double)n / Rate;
            double x = tone
                ? 0.5 * Math.Sin(2 * Math.PI * 1000 * t) * (gated && (int)t % 2 == 1 ? 0 : 1)
                : u[n] * (gated ? (t % 3 < 1.5 ? 0.2002 : 0.0002) : 0.2);
            return (float)(Math.Round(x * 32768) / 32768);
        })];
    }

    private static double? Counted(float[] x)
    {
        double g = Math.Exp(-1 / (Rate * 0.03)), p = 0, q = 0, squares = 0;
        var active = new long[15];
        var since = Enumerable.Repeat(Rate / 5, 15).ToArray();
        foreach (float v in x)
        {
            squares += (double)v * v;
            p = (g * p) + ((1 - g) * Math.Abs(v));
            q = (g * q) + ((1 - g) * p);
            for (int j = 0; j < 15; j++)
            {
                since[j] = q >= Math.Pow(2, j - 15) ? 0 : since[j] + 1;
                active[j] += since[j] <= Rate / 5 ? 1 : 0;
            }
        }

        double[] level = [.. active.Select(a => 10 * Math.Log10(squares / a))], over = [.. level.Select((l, j) => l - (20 * Math.Log10(Math.Pow(2, j - 15))) - 15.9)];
        int at = Array.FindIndex(over, o => o <= 0);
        return at <= 0 || active[at] == 0 ? null : level[at - 1] + ((level[at] - level[at - 1]) * over[at - 1] / (over[at - 1] - over[at]));
    }
}
