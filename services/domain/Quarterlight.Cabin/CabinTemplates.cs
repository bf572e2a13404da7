using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>
/// Typical sizes by body style. The SAE J1100 codes name what is measured; the numbers lie in the usual ranges of those
/// codes, which are from memory, so a tape measure always beats a template.
/// </summary>
public static class CabinTemplates
{
    private static readonly Dictionary<string, Provenance> Origins = new()
    {
        [CabinRules.ShoulderWidthField] = new("SAE J1100 W3-1, shoulder room front; usual range 1350 to 1520 mm", Trust.FromMemory),
        [CabinRules.FrontHeightField] = new("SAE J1100 H30-1 plus the headliner above the seating reference point (H61-1 less 102 mm); usual range", Trust.FromMemory),
        [CabinRules.RearHeightField] = new("as the front height, from H61-2", Trust.FromMemory),
        [CabinRules.DashToBackrestField] = new("SAE J1100 L34, leg room, less about 300 mm of footwell under the dash", Trust.FromMemory),
        [CabinRules.DashDepthField] = new("no code: typical for the shape", Trust.Judgement),
        [CabinRules.DashHeightField] = new("no code: typical for the shape", Trust.Judgement),
        [CabinRules.RowSpacingField] = new("SAE J1100 L50-2, couple distance of the rows; usual range 780 to 920 mm", Trust.FromMemory),
        [CabinRules.BehindLastRowField] = new("no code: typical for the shape", Trust.Judgement),
        [CabinRules.SeatSpacingField] = new("lateral distance of the front reference points; usual range 680 to 780 mm, more where three sit in front", Trust.FromMemory),
        [CabinRules.CushionHeightField] = new("SAE J1100 H30-1, seat height above the heel; usual range 220 to 290 mm in cars, 290 to 380 mm in tall ones", Trust.FromMemory),
        [CabinRules.SillHeightField] = new("no code: typical for the shape", Trust.Judgement),
    };

    private static readonly Dictionary<BodyStyle, CabinTemplate> Templates = new CabinTemplate[]
    {
        //                                  width front  rear  dash  depth  dash  rows behind apart cushion sill
        Make(BodyStyle.SmallHatch, Sizes([1.36, 1.20, 1.15, 0.72, 0.50, 0.78, 0.78, 0.12, 0.70, 0.28, 0.80]), 0.25, VolumeClass.Subcompact),
        Make(BodyStyle.Saloon, Sizes([1.45, 1.18, 1.13, 0.75, 0.55, 0.75, 0.84, 0.32, 0.74, 0.27, 0.78]), 0.43, VolumeClass.Midsize),
        Make(BodyStyle.Estate, Sizes([1.45, 1.19, 1.17, 0.75, 0.55, 0.76, 0.84, 0.95, 0.74, 0.27, 0.78]), 0, VolumeClass.MidsizeWagon),
        Make(BodyStyle.Coupe, Sizes([1.40, 1.11, 1.02, 0.75, 0.55, 0.71, 0.74, 0.25, 0.73, 0.22, 0.76]), 0.25, VolumeClass.Subcompact),
        Make(BodyStyle.Suv, Sizes([1.50, 1.27, 1.25, 0.76, 0.55, 0.85, 0.88, 0.80, 0.77, 0.34, 0.87]), 0, null),
        Make(BodyStyle.PeopleCarrier, Sizes([1.55, 1.30, 1.22, 0.78, 0.65, 0.88, 0.85, 0.30, 0.80, 0.35, 0.85]), 0, null),
        Make(BodyStyle.Pickup, Sizes([1.48, 1.25, 1.22, 0.77, 0.50, 0.86, 0.84, 0.06, 0.78, 0.34, 0.88]), 0, null),
        Make(BodyStyle.PanelVan, Sizes([1.70, 1.38, 1.38, 0.80, 0.55, 0.95, 0.84, 0.06, 1.00, 0.38, 0.92]), 0, null),
        Make(BodyStyle.BenchSeatClassic, Sizes([1.42, 1.17, 1.12, 0.82, 0.35, 0.76, 0.86, 0.35, 0.82, 0.29, 0.80]), 0.45, VolumeClass.Midsize),
    }.ToDictionary(t => t.Body);

    /// <summary>All templates, in the order of <see cref="BodyStyle"/>.</summary>
    public static IReadOnlyList<CabinTemplate> All { get; } = [.. Templates.Values.OrderBy(t => t.Body)];

    /// <summary>The template of a body style, with the origin of each value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The body style is not defined.</exception>
    public static CabinTemplate For(BodyStyle body) => Templates.TryGetValue(body, out CabinTemplate? template)
        ? template
        : throw new ArgumentOutOfRangeException(nameof(body), body, "Unknown body style.");

    /// <summary>The template's sizes, metres.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The body style is not defined.</exception>
    public static CabinMeasurements MeasurementsFor(BodyStyle body) => For(body).Measurements;

    private static CabinTemplate Make(BodyStyle body, CabinMeasurements sizes, double luggageM3, VolumeClass? volumeClass) => new()
    {
        Body = body,
        Measurements = sizes,
        Origins = Origins,
        HasAirbags = body != BodyStyle.BenchSeatClassic,
        SeparateLuggageM3 = luggageM3,
        VolumeClass = volumeClass,
    };

    private static CabinMeasurements Sizes(ReadOnlySpan<double> m) => new()
    {
        ShoulderWidthM = m[0],
        FrontHeightM = m[1],
        RearHeightM = m[2],
        DashToBackrestM = m[3],
        DashDepthM = m[4],
        DashHeightM = m[5],
        RowSpacingM = m[6],
        BehindLastRowM = m[7],
        SeatSpacingM = m[8],
        CushionHeightM = m[9],
        SillHeightM = m[10],
    };
}
