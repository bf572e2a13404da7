using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class CabinRulesTests
{
    private static readonly CabinMeasurements Saloon = CabinTemplates.MeasurementsFor(BodyStyle.Saloon);

    public static TheoryData<string> Fields => [.. CabinRules.Ranges.Keys];

    [Theory]
    [MemberData(nameof(Fields))]
    public void Validate_OutsideItsRange_NamesTheField(string field)
    {
        ValidRange range = CabinRules.Ranges[field];
        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, -1, range.Min - 0.001, range.Max + 0.001 })
        {
            IReadOnlyList<Violation> found = Check(Cabins.With(Saloon, field, bad));
            Assert.Equal($"scene.cabin.measurements.{field}", Assert.Single(found).Field);
        }
    }

    [Fact]
    public void Validate_SeveralBadValues_ReportsAllAtOnce() =>
        Assert.Equal(3, Check(Saloon with { ShoulderWidthM = -1, DashDepthM = double.NaN, SillHeightM = 12 }).Count);

    [Fact]
    public void Validate_UnknownChoices_NamesEach()
    {
        var spec = new CabinSpec { Body = (BodyStyle)99, DriveSide = (DriveSide)9, Engine = (EngineLayout)9, Upholstery = (Upholstery)9 };
        Assert.Equal(["body_style", "drive_side", "engine_layout", "upholstery"], CabinRules.Validate(spec, "").Select(v => v.Field));
    }

    // Each pair is believable alone and impossible together.
    [Theory]
    [InlineData(CabinRules.FrontHeightField, 1.10, "headliner")]
    [InlineData(CabinRules.RearHeightField, 0.98, "headliner")]
    [InlineData(CabinRules.DashHeightField, 1.00, "windscreen")]
    [InlineData(CabinRules.SillHeightField, 0.999, "glass")]
    [InlineData(CabinRules.CushionHeightField, 0.72, "headliner")]
    [InlineData(CabinRules.SeatSpacingField, 1.20, "doors")]
    [InlineData(CabinRules.ShoulderWidthField, 1.10, "three")]
    public void Validate_ContradictingValues_SaysWhatWouldHappenAndTheWayOut(string field, double value, string word)
    {
        IReadOnlyList<Violation> found = Check(Cabins.With(Saloon, field, value));
        Assert.NotEmpty(found);
        Assert.Contains(found, v => v.Problem.Contains(word, StringComparison.Ordinal));
        Assert.All(found, v => Assert.Contains("must be at", v.Remedy, StringComparison.Ordinal));
    }

    [Fact]
    public void Validate_OneRowCarWithTwoHeights_IsRefused()
    {
        CabinMeasurements van = CabinTemplates.MeasurementsFor(BodyStyle.PanelVan) with { RearHeightM = 1.60 };
        Violation found = Assert.Single(CabinRules.Validate(Cabins.Spec(BodyStyle.PanelVan, van), ""));
        Assert.Equal("measurements.rear_height_m", found.Field);
    }

    [Fact]
    public void Validate_OneRowCar_IgnoresRowSpacing()
    {
        CabinMeasurements van = CabinTemplates.MeasurementsFor(BodyStyle.PanelVan) with { RowSpacingM = double.NaN };
        Assert.Empty(CabinRules.Validate(Cabins.Spec(BodyStyle.PanelVan, van), ""));
    }

    [Fact]
    public void Build_InvalidSpec_CarriesTheViolations()
    {
        CabinSpec bad = Cabins.Spec(BodyStyle.Saloon, Saloon with { FrontHeightM = -1 });
        Assert.Equal("measurements.front_height_m", Assert.Single(Assert.Throws<InvalidInputException>(() => CabinBuilder.Build(bad)).Violations).Field);
    }

    private static IReadOnlyList<Violation> Check(CabinMeasurements m) => CabinRules.Validate(Cabins.Spec(BodyStyle.Saloon, m), "scene.cabin");
}
