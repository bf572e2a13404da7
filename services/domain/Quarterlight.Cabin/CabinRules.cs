using System.Globalization;
using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>What a cabin must be before it can be built: each limit is stated once, here.</summary>
public static class CabinRules
{
    /// <summary>Field name of <see cref="CabinMeasurements.ShoulderWidthM"/>.</summary>
    public const string ShoulderWidthField = "shoulder_width_m";

    /// <summary>Field name of <see cref="CabinMeasurements.FrontHeightM"/>.</summary>
    public const string FrontHeightField = "front_height_m";

    /// <summary>Field name of <see cref="CabinMeasurements.RearHeightM"/>.</summary>
    public const string RearHeightField = "rear_height_m";

    /// <summary>Field name of <see cref="CabinMeasurements.DashToBackrestM"/>.</summary>
    public const string DashToBackrestField = "dash_to_backrest_m";

    /// <summary>Field name of <see cref="CabinMeasurements.DashDepthM"/>.</summary>
    public const string DashDepthField = "dash_depth_m";

    /// <summary>Field name of <see cref="CabinMeasurements.DashHeightM"/>.</summary>
    public const string DashHeightField = "dash_height_m";

    /// <summary>Field name of <see cref="CabinMeasurements.RowSpacingM"/>.</summary>
    public const string RowSpacingField = "row_spacing_m";

    /// <summary>Field name of <see cref="CabinMeasurements.BehindLastRowM"/>.</summary>
    public const string BehindLastRowField = "behind_last_row_m";

    /// <summary>Field name of <see cref="CabinMeasurements.SeatSpacingM"/>.</summary>
    public const string SeatSpacingField = "seat_spacing_m";

    /// <summary>Field name of <see cref="CabinMeasurements.CushionHeightM"/>.</summary>
    public const string CushionHeightField = "cushion_height_m";

    /// <summary>Field name of <see cref="CabinMeasurements.SillHeightM"/>.</summary>
    public const string SillHeightField = "sill_height_m";

    /// <summary>Least height in metres from a cushion to the headliner: a seated head and a finger's breadth.</summary>
    public const double HeadHeightOverCushionM = SeatLayout.ReferenceAboveCushionM + SeatedHead.CenterAboveReferenceM + SeatedHead.RadiusM + 0.02;

    /// <summary>Ranges in which a tape measurement is believed (judgement), by field name.</summary>
    public static IReadOnlyDictionary<string, ValidRange> Ranges { get; } = new Dictionary<string, ValidRange>
    {
        [ShoulderWidthField] = new(0.9, 2.2, "m"),
        [FrontHeightField] = new(0.95, 2.2, "m"),
        [RearHeightField] = new(0.95, 2.2, "m"),
        [DashToBackrestField] = new(0.45, 1.3, "m"),
        [DashDepthField] = new(0.1, 1.2, "m"),
        [DashHeightField] = new(0.45, 1.3, "m"),
        [RowSpacingField] = new(0.6, 1.6, "m"),
        [BehindLastRowField] = new(0, 4, "m"),
        [SeatSpacingField] = new(0.45, 1.4, "m"),
        [CushionHeightField] = new(0.12, 0.75, "m"),
        [SillHeightField] = new(0.4, 1.3, "m"),
    };

    /// <summary>Finds everything wrong with a cabin; empty when it can be built.</summary>
    /// <param name="spec">Cabin to check.</param>
    /// <param name="fieldPrefix">Path before the field names, such as <c>scene.cabin</c>; may be empty.</param>
    public static IReadOnlyList<Violation> Validate(CabinSpec spec, string fieldPrefix)
    {
        ArgumentNullException.ThrowIfNull(spec);
        ArgumentNullException.ThrowIfNull(fieldPrefix);
        var violations = new List<Violation>();
        CheckDefined(spec.Body, "body_style", "Choose one of the body styles", fieldPrefix, violations);
        CheckDefined(spec.DriveSide, "drive_side", "Choose left or right", fieldPrefix, violations);
        CheckDefined(spec.Engine, "engine_layout", "Choose front, middle, rear or electric", fieldPrefix, violations);
        CheckDefined(spec.Upholstery, "upholstery", "Choose cloth or leather", fieldPrefix, violations);
        if (spec.Measurements is { } m && Enum.IsDefined(spec.Body))
        {
            string path = FieldPath.Join(fieldPrefix, "measurements");
            BodyTraits traits = BodyTraits.Of(spec.Body);
            CheckRanges(m, traits, path, violations);
            if (violations.Count == 0)
            {
                CheckTogether(m, traits, path, violations);
            }
        }

        return violations;
    }

    private static void CheckDefined<T>(T value, string name, string remedy, string prefix, List<Violation> violations)
        where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
        {
            violations.Add(new Violation(FieldPath.Join(prefix, name), "the choice is unknown", remedy));
        }
    }

    private static void CheckRanges(CabinMeasurements m, BodyTraits traits, string path, List<Violation> violations)
    {
        Check(ShoulderWidthField, m.ShoulderWidthM);
        Check(FrontHeightField, m.FrontHeightM);
        Check(RearHeightField, m.RearHeightM);
        Check(DashToBackrestField, m.DashToBackrestM);
        Check(DashDepthField, m.DashDepthM);
        Check(DashHeightField, m.DashHeightM);
        if (traits.Rows > 1)
        {
            Check(RowSpacingField, m.RowSpacingM);
        }

        Check(BehindLastRowField, m.BehindLastRowM);
        Check(SeatSpacingField, m.SeatSpacingM);
        Check(CushionHeightField, m.CushionHeightM);
        Check(SillHeightField, m.SillHeightM);

        void Check(string name, double value) => Ranges[name].Check(FieldPath.Join(path, name), value, violations);
    }

    // Measurements that are each believable can still contradict one another.
    private static void CheckTogether(CabinMeasurements m, BodyTraits traits, string path, List<Violation> violations)
    {
        AtLeast(FrontHeightField, m.FrontHeightM, m.CushionHeightM + HeadHeightOverCushionM, "a seated head would be through the headliner");
        AtLeast(DashHeightField, m.DashHeightM, m.CushionHeightM + 0.10, "the dash would be lower than the sitters' knees");
        AtMost(DashHeightField, m.DashHeightM, m.FrontHeightM - 0.25, "no windscreen would be left between dash and headliner");
        AtLeast(SillHeightField, m.SillHeightM, m.CushionHeightM + 0.10, "the side glass would reach below the seat cushion");
        AtMost(SillHeightField, m.SillHeightM, m.FrontHeightM - 0.20, "no side glass would be left below the headliner");
        AtMost(SeatSpacingField, m.SeatSpacingM, m.ShoulderWidthM - 0.40, "the front seats would stand in the doors");
        if (traits.FrontCentreSeat)
        {
            AtLeast(SeatSpacingField, m.SeatSpacingM, 0.70, "there would be no room for the seat in the middle");
        }

        if (traits.Rows == 1)
        {
            AtLeast(RearHeightField, m.RearHeightM, m.FrontHeightM - 0.05, "a one-row car has one height but two were given");
            AtMost(RearHeightField, m.RearHeightM, m.FrontHeightM + 0.05, "a one-row car has one height but two were given");
            return;
        }

        AtLeast(RearHeightField, m.RearHeightM, SeatLayout.LowestRearCushionM + HeadHeightOverCushionM, "a head in the rear would be through the headliner");
        AtMost(SillHeightField, m.SillHeightM, m.RearHeightM - 0.15, "no side glass would be left in the rear");
        (double least, string who) = traits.RearCentreSeat ? (1.15, "three") : (1.05, "two");
        AtLeast(ShoulderWidthField, m.ShoulderWidthM, least, who + " could not sit side by side in the rear");

        void AtLeast(string name, double value, double limit, string problem)
        {
            if (value < limit - 1e-9)
            {
                Add(name, value, problem, "at least", limit);
            }
        }

        void AtMost(string name, double value, double limit, string problem)
        {
            if (value > limit + 1e-9)
            {
                Add(name, value, problem, "at most", limit);
            }
        }

        void Add(string name, double value, string problem, string word, double limit) => violations.Add(new Violation(
            FieldPath.Join(path, name),
            string.Create(CultureInfo.InvariantCulture, $"the value is {value:0.###} m, so {problem}"),
            string.Create(CultureInfo.InvariantCulture, $"With the other measurements it must be {word} {limit:0.###} m; measure again or correct the others")));
    }
}
