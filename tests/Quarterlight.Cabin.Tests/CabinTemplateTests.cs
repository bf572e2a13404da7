using System.Globalization;

namespace Quarterlight.Cabin.Tests;

public class CabinTemplateTests
{
    public static TheoryData<BodyStyle> AllBodies => Cabins.AllBodies;

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void For_EveryBody_IsValidAndSaysWhereEachSizeComesFrom(BodyStyle body)
    {
        CabinTemplate template = CabinTemplates.For(body);
        Assert.Empty(CabinRules.Validate(Cabins.Spec(body, template.Measurements), ""));
        Assert.Equal(CabinRules.Ranges.Keys.Order(), template.Origins.Keys.Order());
        Assert.All(template.Origins.Values, origin => Assert.False(string.IsNullOrWhiteSpace(origin.Source)));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void HasAirbags_AllButTheClassic_True(BodyStyle body) =>
        Assert.Equal(body != BodyStyle.BenchSeatClassic, CabinTemplates.For(body).HasAirbags);

    [Fact]
    public void For_UnknownBody_Throws() => Assert.Throws<ArgumentOutOfRangeException>(() => CabinTemplates.For((BodyStyle)99));

    // 40 CFR 600.315-08, tests/vectors/cabin/volume_classes.source.md: limits of the classes and why 3 %.
    [Theory]
    [InlineData(BodyStyle.SmallHatch, "sedan subcompact")]
    [InlineData(BodyStyle.Coupe, "sedan subcompact")]
    [InlineData(BodyStyle.Saloon, "sedan midsize")]
    [InlineData(BodyStyle.BenchSeatClassic, "sedan midsize")]
    [InlineData(BodyStyle.Estate, "wagon midsize")]
    public void IndexM3_ClassedBody_LiesInItsPublishedClass(BodyStyle body, string publishedClass)
    {
        (double low, double high) = Published(publishedClass);
        CabinTemplate template = CabinTemplates.For(body);
        Assert.NotNull(template.VolumeClass);
        Assert.Equal(low, template.VolumeClass.LowM3, 3);
        Assert.Equal(high, template.VolumeClass.HighM3, 3);
        Assert.InRange(InteriorVolume.IndexM3(Cabins.Of(body), template.SeparateLuggageM3), low * 0.97, high * 1.03);
    }

    [Fact]
    public void IndexM3_Saloon_IsTheSumOfItsTwoRowsAndBoot()
    {
        // By hand: head room ((height - reference) / cos 8 deg + 0.102), shoulder and leg room of each row, boot 0.43.
        double front = (((1.18 - 0.28) / 0.990268) + 0.102) * 1.45 * 1.05;
        CabinGeometry cabin = Cabins.Of(BodyStyle.Saloon);
        double rearReference = cabin.FindSeat("rear-left")!.ReferencePoint.Z;
        double rear = (((1.13 - rearReference) / 0.990268) + 0.102) * 1.45 * 0.98 * 0.91;
        Assert.Equal(front + rear + 0.43, InteriorVolume.IndexM3(cabin, 0.43), 4);
    }

    private static (double Low, double High) Published(string name)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "vectors", "cabin", "volume_classes.csv"));
        string[] row = lines.Skip(1).Select(l => l.Split(',')).Single(r => r[0] == name);
        return (double.Parse(row[4], CultureInfo.InvariantCulture), double.Parse(row[5], CultureInfo.InvariantCulture));
    }
}
