using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Tagging;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class ClipColorTests
{
    private static readonly SKColor[] Map = [.. Enumerable.Range(0, SpectrogramColors.Count).Select(i => SpectrogramColors.At((i + 0.5) / SpectrogramColors.Count))];

    public static TheoryData<string> Kinds => [.. ColorSight.Kinds.Keys];

    // CIE 15: white is L* 100 and black 0; sRGB red is L* 53.2 (widely tabulated, from memory).
    [Fact]
    public void Lab_KnownColors_AreAsPublished()
    {
        Assert.Equal(100, ColorSight.Lab(SKColors.White, "all colors").L, 0.01);
        Assert.Equal(0, ColorSight.Lab(SKColors.Black, "all colors").L, 0.01);
        Assert.Equal(53.2, ColorSight.Lab(new(255, 0, 0), "all colors").L, 0.1);
        // A person who lacks red cones sees grey as grey.
        (_, double a, double b) = ColorSight.Lab(new(128, 128, 128), "protanopia");
        Assert.Equal(0, Math.Abs(a) + Math.Abs(b), 0.2);
    }

    // The map is made in another color space than the one it is checked in.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Map_QuietToLoud_RisesInLightnessForEveryEye(string kind)
    {
        double[] lightness = [.. Map.Select(c => ColorSight.Lab(c, kind).L)];
        Assert.All(lightness.Zip(lightness.Skip(1)), p => Assert.True(p.Second > p.First + 0.4, $"{kind}: {p.First:0.0} then {p.Second:0.0}"));
        Assert.True(lightness[^1] - lightness[0] > 75, kind);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Map_EqualStepsOfLevel_LookAlikeInSize(string kind)
    {
        double[] steps = [.. Map.Zip(Map.Skip(1)).Select(p => ColorSight.Distance(p.First, p.Second, kind))];
        double mean = steps.Average();
        Assert.All(steps, s => Assert.InRange(s / mean, 0.4, 1.9));
    }

    [Fact]
    public void At_BeyondTheEnds_IsTheEnd()
    {
        Assert.Equal(Map[0], SpectrogramColors.At(-5));
        Assert.Equal(Map[^1], SpectrogramColors.At(7));
        Assert.Equal(SpectrogramColors.Count, Map.Distinct().Count());
    }

    // What lies side by side: 20 in CIELAB is several times what can just be told apart (about 2.3, from memory).
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Colors_SideBySide_AreApartForEveryEye(string kind)
    {
        (SKColor A, SKColor B)[] pairs =
        [
            (Palette.Speech, Palette.Noise), (Palette.Mean, Palette.Paper), (Palette.Mean, Palette.Ink), (Palette.Demand, Palette.Paper), (Palette.Speech, Palette.Paper),
            (Palette.Usable, Palette.Demand), (Palette.Usable, Palette.Engine), (Palette.Unheard, Palette.Paper),
        ];
        Assert.All(pairs, p => Assert.True(ColorSight.Distance(p.A, p.B, kind) > 20, $"{kind}: {p.A} and {p.B} are {ColorSight.Distance(p.A, p.B, kind):0} apart"));
    }

    [Fact]
    public void OutcomeSigns_InBlackAndWhite_DifferInShape() =>
        PaletteTests.Differ([.. Enum.GetValues<ClipOutcome>().Select<ClipOutcome, (string, Action<PictureSheet>)>(o => (o.ToString(), s => OutcomeSign.Draw(s, o, new(120, 120), 100)))]);

    [Fact]
    public void TagFills_InBlackAndWhite_DifferByTagAndState()
    {
        var row = new SKRect(20, 20, 220, 220);
        SKPoint[] outline = [new(20, 220), new(20, 80), new(220, 80), new(220, 220)];
        PaletteTests.Differ([.. ClipWords.Tags.Select<ClipTag, (string, Action<PictureSheet>)>(t => ($"unsure of {t}", s => ClipSymbols.Tag(s, t, TagState.Unsure, row, outline)))]);
        // Present has a colored ground and unsure has not, so the three states differ most in how dark they are.
        PaletteTests.Differ([.. Enum.GetValues<TagState>().Where(s => s != TagState.Absent).Select<TagState, (string, Action<PictureSheet>)>(state => (state.ToString(), s => ClipSymbols.Tag(s, ClipTag.Engine, state, row, outline)))]);
    }

    [Fact]
    public void Marks_InBlackAndWhite_DifferInShape() =>
        PaletteTests.Differ(
        [
            ("clipping", s => ClipSymbols.Clipping(s, new(120, 135))),
            ("dropout", s => ClipSymbols.Dropout(s, new(120, 120))),
            ("speech", s => ClipSymbols.Speech(s, new(80, 110, 160, 130))),
        ]);

    // In black and white both measured fills are dark; they differ by lightness in grey and by stripes against dots.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void OctaveFills_SpeechAndNoise_DifferWithoutColor(string kind)
    {
        Assert.True(ColorSight.Lab(Palette.Noise, kind).L - ColorSight.Lab(Palette.Speech, kind).L > 15, kind);
        Fills(OctaveSeries.ForecastSpeech, OctaveSeries.MeasuredSpeech, OctaveSeries.ForecastNoise);
        Fills(OctaveSeries.ForecastNoise, OctaveSeries.MeasuredNoise, OctaveSeries.ForecastSpeech);

        static void Fills(params OctaveSeries[] series) =>
            PaletteTests.Differ([.. series.Select<OctaveSeries, (string, Action<PictureSheet>)>(o => (o.ToString(), s => ClipSymbols.Octave(s, o, new(20, 20, 220, 220))))]);
    }

    // WCAG 2.2, 1.4.11: ink edges and hatching on every ground of the picture.
    [Fact]
    public void Ink_OnEveryGround_PassesGraphicsContrast()
    {
        SKColor[] grounds = [.. ClipWords.Tags.Select(ClipSymbols.ColorOf), Palette.Noise, Palette.Mean, Palette.Unheard];
        Assert.All(grounds, g => Assert.True(Palette.Contrast(Palette.Ink, g) >= 3, g.ToString()));
        Assert.True(Palette.Contrast(Palette.Paper, Palette.Speech) >= 3);
        Assert.True(Palette.Contrast(Palette.Paper, Palette.Usable) >= 3);
        Assert.True(Palette.Contrast(Palette.Paper, Palette.Demand) >= 3);
    }
}
