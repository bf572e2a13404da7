using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>
/// What a camera sees: a pinhole with the lens' focal length and the sensor's recorded size, no distortion, held level
/// (the picture's lower edge is horizontal). Half angle = atan(sensor size / (2 x focal length)).
/// </summary>
public readonly record struct CameraView
{
    /// <summary>Share of the half picture by which the frame is widened before a thing counts as out of shot (judgement: focus breathing, reframing, lens tolerance).</summary>
    public const double FrameMargin = 0.05;

    /// <summary>Makes the view of a valid shot.</summary>
    /// <exception cref="ArgumentException">The shot has no direction or no field of view; see <see cref="ShotRules"/>.</exception>
    public CameraView(Shot shot)
    {
        ArgumentNullException.ThrowIfNull(shot);
        Vector3D toAim = shot.AimPoint - shot.Position;
        if (!(toAim.LengthSquared > 0) || !toAim.IsFinite || !(shot.FocalLengthMm > 0) || !(shot.SensorWidthMm > 0) || !(shot.SensorHeightMm > 0))
        {
            throw new ArgumentException("The shot needs a direction, a focal length and a sensor; validate it first.", nameof(shot));
        }

        Eye = shot.Position;
        Axis = toAim.Normalized();
        // Looking straight up or down has no level; the top of the picture is then the front of the car.
        Vector3D level = Axis.Cross(Vector3D.Up);
        Right = level.LengthSquared > 1e-12 ? level.Normalized() : -Vector3D.Left;
        Up = Right.Cross(Axis);
        TanHalfWidth = shot.SensorWidthMm / (2 * shot.FocalLengthMm);
        TanHalfHeight = shot.SensorHeightMm / (2 * shot.FocalLengthMm);
    }

    /// <summary>Entrance pupil, metres.</summary>
    public Vector3D Eye { get; }

    /// <summary>Unit vector where the lens points.</summary>
    public Vector3D Axis { get; }

    /// <summary>Unit vector to the right of the picture.</summary>
    public Vector3D Right { get; }

    /// <summary>Unit vector to the top of the picture.</summary>
    public Vector3D Up { get; }

    /// <summary>Tangent of the horizontal half angle.</summary>
    public double TanHalfWidth { get; }

    /// <summary>Tangent of the vertical half angle.</summary>
    public double TanHalfHeight { get; }

    /// <summary>Horizontal half angle of view, radians.</summary>
    public double HorizontalHalfAngleRad => Math.Atan(TanHalfWidth);

    /// <summary>Vertical half angle of view, radians.</summary>
    public double VerticalHalfAngleRad => Math.Atan(TanHalfHeight);

    /// <summary>True when a point is in the picture, widened by a share of its half size; a point behind the lens never is.</summary>
    public bool InFrame(Vector3D point, double marginFraction = FrameMargin)
    {
        Vector3D d = point - Eye;
        double depth = d.Dot(Axis);
        double wide = depth * (1 + marginFraction);
        return depth > 0 && Math.Abs(d.Dot(Right)) <= wide * TanHalfWidth && Math.Abs(d.Dot(Up)) <= wide * TanHalfHeight;
    }

    /// <summary>The picture's corners at a distance along the axis, metres: top left, top right, bottom right, bottom left.</summary>
    public Vector3D[] Corners(double distanceM)
    {
        Vector3D middle = Eye + (distanceM * Axis), right = distanceM * TanHalfWidth * Right, up = distanceM * TanHalfHeight * Up;
        return [middle - right + up, middle + right + up, middle + right - up, middle - right - up];
    }

    /// <summary>The camera's fan for a plan: the eye and the middles of the picture's left and right edge at a distance along the axis, metres.</summary>
    public Vector3D[] PlanFan(double distanceM)
    {
        Vector3D middle = Eye + (distanceM * Axis), right = distanceM * TanHalfWidth * Right;
        return [Eye, middle - right, middle + right];
    }

    /// <summary>The camera's fan for a side view: the eye and the middles of the picture's top and bottom edge at a distance along the axis, metres.</summary>
    public Vector3D[] SideFan(double distanceM)
    {
        Vector3D middle = Eye + (distanceM * Axis), up = distanceM * TanHalfHeight * Up;
        return [Eye, middle + up, middle - up];
    }
}
