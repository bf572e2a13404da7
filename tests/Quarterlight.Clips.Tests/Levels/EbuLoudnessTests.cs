using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Tests.Levels;

/// <summary>The cases of EBU Tech 3341:2023 Table 1 and Tech 3342:2023 Table 1 that can be made here; expected values and tolerances from the
/// vector file.</summary>
public sealed class EbuLoudnessTests
{
    [Fact]
    public void Vectors_HoldTheCasesMadeHere()
    {
        List<Dictionary<string, string>> rows = Vectors.Read("ebu3341_cases");
        Assert.Equal(21, rows.Count(r => r["document"] == "Tech 3341" && r["synthesisable"].StartsWith("yes", StringComparison.Ordinal)));
        Assert.Equal(4, rows.Count(r => r["document"] == "Tech 3342" && r["synthesisable"] == "yes"));
    }

    public static TheoryData<int, double?[]> Integrated => new()
    {
        { 1, [-23, 20] },
        { 2, [-33, 20] },
        { 3, [-36, 10, -23, 60, -36, 10] },
        { 4, [-72, 10, -36, 10, -23, 60, -36, 10, -72, 10] },
        { 5, [-26, 20, -20, 20.1, -26, 20] },
    };

    [Theory]
    [MemberData(nameof(Integrated))]
    public void Integrated_Cases1To5_AreWithinTolerance(int number, double?[] steps)
    {
        LoudnessMeter meter = Stereo(Sound.Steps(Pairs(steps)));
        Loudness l = meter.Measure().Programme;
        Holds("Tech 3341", number, l.IntegratedLkfs);
        if (number <= 2)
        {
            Holds("Tech 3341", number, l.MomentaryLkfs);
            Holds("Tech 3341", number, l.ShortTermLkfs);
        }
    }

    [Fact]
    public void Integrated_Case6FiveChannels_IsWithinTolerance()
    {
        var meter = new LoudnessMeter(Sound.Rate, 5, LoudnessMeter.SurroundWeights);
        meter.Add(Sound.Interleave([.. new double[] { -28, -28, -24, -30, -30 }.Select(db => Sound.Tone(db, 20))]));
        Holds("Tech 3341", 6, meter.Measure().Programme.IntegratedLkfs);
    }

    [Fact]
    public void ShortTerm_Case9_IsSteadyAfter3Seconds() =>
        Steady(9, Sound.Steps(Enumerable.Repeat(new (double?, double)[] { (-20, 1.34), (-30, 1.66) }, 5).SelectMany(s => s)), 3, l => l.ShortTermLkfs);

    [Fact]
    public void Momentary_Case12_IsSteadyAfter1Second() =>
        Steady(12, Sound.Steps(Enumerable.Repeat(new (double?, double)[] { (-20, 0.18), (-30, 0.22) }, 25).SelectMany(s => s)), 1, l => l.MomentaryLkfs);

    [Fact]
    public void Maxima_Cases10And13_AreFoundWhereverTheToneBegins()
    {
        for (int i = 0; i < 20; i++)
        {
            Holds("Tech 3341", 10, Stereo(Sound.Steps((null, i * 0.15), (-23, 3), (null, 1))).Measure().Programme.MaxShortTermLkfs);
            Holds("Tech 3341", 13, Stereo(Sound.Steps((null, i * 0.02), (-23, 0.4), (null, 1))).Measure().Programme.MaxMomentaryLkfs);
        }
    }

    [Theory]
    [InlineData(11, 0.15, 3)]
    [InlineData(14, 0.02, 0.4)]
    public void Maxima_Cases11And14_RiseStepByStep(int number, double shift, double length)
    {
        var meter = new LoudnessMeter(Sound.Rate, 2);
        Dictionary<string, string> row = Row("Tech 3341", number);
        Assert.Equal("-38+i", row["expected"]);
        for (int i = 0; i < 20; i++)
        {
            meter.Add(Sound.Both(Sound.Steps((null, i * shift), (-38 + i, length), (null, length - (i * shift)))));
            Loudness l = meter.Measure().Programme;
            Assert.Equal(-38 + i, (number == 11 ? l.MaxShortTermLkfs : l.MaxMomentaryLkfs)!.Value, Vectors.Number(row["tolerance"]));
        }
    }

    [Theory]
    [InlineData(1, new double[] { -20, -30 })]
    [InlineData(2, new double[] { -20, -15 })]
    [InlineData(3, new double[] { -40, -20 })]
    [InlineData(4, new double[] { -50, -35, -20, -35, -50 })]
    public void Range_Cases1To4Of3342_AreWithinTolerance(int number, double[] levels) =>
        Holds("Tech 3342", number, Stereo(Sound.Steps(levels.Select(l => ((double?)l, 20.0)))).Measure().Programme.RangeLu);

    private static void Steady(int number, float[] channel, double afterSeconds, Func<Loudness, double?> value)
    {
        var meter = new LoudnessMeter(Sound.Rate, 2);
        float[] x = Sound.Both(channel);
        int step = 2 * Sound.Rate / 100, looked = 0;
        for (int at = 0; at + step <= x.Length; at += step)
        {
            meter.Add(x.AsSpan(at, step));
            if (at + step >= afterSeconds * 2 * Sound.Rate)
            {
                Holds("Tech 3341", number, value(meter.Measure().Programme));
                looked++;
            }
        }

        Assert.True(looked > 500);
    }

    private static IEnumerable<(double?, double)> Pairs(double?[] steps) => steps.Chunk(2).Select(p => (p[0], p[1]!.Value));

    private static LoudnessMeter Stereo(float[] channel)
    {
        var meter = new LoudnessMeter(Sound.Rate, 2);
        meter.Add(Sound.Both(channel));
        return meter;
    }

    private static Dictionary<string, string> Row(string document, int number) =>
        Assert.Single(Vectors.Read("ebu3341_cases"), r => r["document"] == document && r["case"] == $"{number}");

    private static void Holds(string document, int number, double? value)
    {
        Dictionary<string, string> row = Row(document, number);
        Assert.Equal(Vectors.Number(row["expected"]), value!.Value, Vectors.Number(row["tolerance"]));
    }
}
