using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>What a shot must be before its sight lines can be drawn: each limit is stated once, here.</summary>
public static class ShotRules
{
    /// <summary>Focal length.</summary>
    public static ValidRange FocalLengthRange { get; } = new(4, 300, "mm");

    /// <summary>Recorded width of the sensor.</summary>
    public static ValidRange SensorWidthRange { get; } = new(3, 70, "mm");

    /// <summary>Recorded height of the sensor.</summary>
    public static ValidRange SensorHeightRange { get; } = new(2, 55, "mm");

    /// <summary>Any coordinate of the camera or of its aim.</summary>
    public static ValidRange CoordinateRange { get; } = new(-50, 50, "m");

    /// <summary>Least distance from camera to aim point, metres.</summary>
    public const double LeastAimDistanceM = 0.1;

    /// <summary>Finds everything wrong with a shot; empty when it can be used.</summary>
    /// <param name="shot">Shot to check.</param>
    /// <param name="cabin">Cabin it is taken in or into.</param>
    /// <param name="heads">Heads at rest and in every pose, in which no camera can be.</param>
    /// <param name="prefix">Path before the field names, such as <c>scene.shots[0]</c>; may be empty.</param>
    public static IReadOnlyList<Violation> Validate(Shot shot, CabinGeometry cabin, IReadOnlyList<SeatedHead> heads, string prefix)
    {
        ArgumentNullException.ThrowIfNull(shot);
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(heads);
        ArgumentNullException.ThrowIfNull(prefix);
        var violations = new List<Violation>();
        string positionField = FieldPath.Join(prefix, "position"), aimField = FieldPath.Join(prefix, "aim_point");
        FocalLengthRange.Check(FieldPath.Join(prefix, "focal_length_mm"), shot.FocalLengthMm, violations);
        SensorWidthRange.Check(FieldPath.Join(prefix, "sensor_width_mm"), shot.SensorWidthMm, violations);
        SensorHeightRange.Check(FieldPath.Join(prefix, "sensor_height_mm"), shot.SensorHeightMm, violations);
        bool placed = CheckPoint(positionField, shot.Position, violations);
        bool aimed = CheckPoint(aimField, shot.AimPoint, violations);
        if (placed && aimed && shot.Position.DistanceTo(shot.AimPoint) < LeastAimDistanceM)
        {
            violations.Add(new Violation(
                aimField,
                "the camera is aimed at a point closer than 0.1 m, so its direction is uncertain",
                "Aim at what the shot is about, such as a face, at least 0.1 m from the camera"));
        }

        if (placed && Inside(shot.Position, cabin, heads) is { } what)
        {
            violations.Add(new Violation(
                positionField,
                $"the camera is inside the {what}",
                "Move it clear of seats, heads and trim, into the air of the cabin or outside the glass"));
        }

        return violations;
    }

    /// <summary>What solid thing of the cabin a point is inside of, in words, or null.</summary>
    public static string? Inside(Vector3D point, CabinGeometry cabin, IReadOnlyList<SeatedHead> heads)
    {
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(heads);
        foreach (Occluder occluder in cabin.Occluders)
        {
            if (occluder.Contains(point))
            {
                return occluder.Name;
            }
        }

        foreach (SeatedHead head in heads)
        {
            if (point.DistanceTo(head.Center) < SeatedHead.RadiusM)
            {
                return "head of a talker";
            }
        }

        return null;
    }

    private static bool CheckPoint(string field, Vector3D point, List<Violation> violations)
    {
        bool x = CoordinateRange.Check(field + ".x_m", point.X, violations);
        bool y = CoordinateRange.Check(field + ".y_m", point.Y, violations);
        bool z = CoordinateRange.Check(field + ".z_m", point.Z, violations);
        return x && y && z;
    }
}
