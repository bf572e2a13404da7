using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A part of what the driver must see, as a window of directions from the eyes.</summary>
/// <param name="Name">In words, such as "the road".</param>
/// <param name="AzimuthMinRad">Rightmost direction, radians counter-clockwise from forward.</param>
/// <param name="AzimuthMaxRad">Leftmost direction, radians.</param>
/// <param name="ElevationMinRad">Lowest direction, radians above the horizontal.</param>
/// <param name="ElevationMaxRad">Highest direction, radians.</param>
/// <param name="FarthestM">Distance from the eyes in metres beyond which nothing can be in the way.</param>
public sealed record ViewWindow(
    string Name, double AzimuthMinRad, double AzimuthMaxRad, double ElevationMinRad, double ElevationMaxRad, double FarthestM)
{
    /// <summary>True when a point this far from the eyes stands in the window.</summary>
    public bool Holds(Vector3D fromEye)
    {
        double azimuth = fromEye.AzimuthRad, elevation = fromEye.ElevationRad;
        return azimuth >= AzimuthMinRad && azimuth <= AzimuthMaxRad
            && elevation >= ElevationMinRad && elevation <= ElevationMaxRad
            && fromEye.LengthSquared <= FarthestM * FarthestM;
    }

    /// <summary>The same window seen in a mirror on the plane y = 0.</summary>
    public ViewWindow MirroredLeftRight() => this with { AzimuthMinRad = -AzimuthMaxRad, AzimuthMaxRad = -AzimuthMinRad };
}

/// <summary>
/// What the driver must see: the road through the windscreen, the mirrors and the instruments. All angles are judgement;
/// road law in many places is stricter, so a free view here is a necessary condition, not a permit.
/// </summary>
/// <remarks>
/// Left out: the side and rear glass themselves (looking over the shoulder), and what the mirror shows beyond its glass.
/// What hangs behind the interior mirror takes away nothing the mirror has not taken already.
/// </remarks>
public sealed class DriverView
{
    /// <summary>How far the road window reaches to the passenger's side, degrees (judgement).</summary>
    public const double RoadTowardPassengerDeg = 35;

    /// <summary>How far the road window reaches to the driver's own side, degrees (judgement).</summary>
    public const double RoadTowardDoorDeg = 25;

    /// <summary>How far the road window reaches down, degrees: about to the bonnet (judgement).</summary>
    public const double RoadDownDeg = 12;

    /// <summary>How far the road window reaches up, degrees, or to the stowed visor if that is lower (judgement).</summary>
    public const double RoadUpDeg = 8;

    /// <summary>What a microphone and its fixing reach in front of a surface, metres, for this rule (judgement).</summary>
    public const double ReachM = 0.05;

    private readonly Vector3D eye;
    private readonly ViewWindow? shade;

    private DriverView(Vector3D eye, IReadOnlyList<ViewWindow> windows, ViewWindow? shade)
    {
        this.eye = eye;
        this.shade = shade;
        Windows = windows;
    }

    /// <summary>The parts of the view.</summary>
    public IReadOnlyList<ViewWindow> Windows { get; }

    /// <summary>What a thing at this point would hide from the driver, or null.</summary>
    public string? HiddenAt(Vector3D point)
    {
        Vector3D ray = point - eye;
        ViewWindow? hit = Windows.FirstOrDefault(w => w.Holds(ray));
        return hit is null || (shade is not null && ray.Length > shade.FarthestM && (shade with { FarthestM = double.MaxValue }).Holds(ray))
            ? null
            : hit.Name;
    }

    /// <summary>What a microphone on a surface would hide from the driver, or null.</summary>
    public string? HiddenBy(Vector3D position, Vector3D normal) => HiddenAt(position) ?? HiddenAt(position + (ReachM * normal));

    /// <summary>The same view from the other side of the car.</summary>
    public DriverView MirroredLeftRight() =>
        new(eye.MirroredLeftRight(), [.. Windows.Select(w => w.MirroredLeftRight())], shade?.MirroredLeftRight());

    internal static DriverView Of(CabinLayout cabin, InteriorMirror? mirror)
    {
        Vector3D eye = cabin.DriverEye;
        var visor = new Vector3D(cabin.HeaderX - 0.05, eye.Y, cabin.M.FrontHeightM - 0.10);
        double up = Math.Min(Angles.DegToRad(RoadUpDeg), (visor - eye).ElevationRad);
        var windows = new List<ViewWindow>
        {
            new("the road", -Angles.DegToRad(RoadTowardPassengerDeg), Angles.DegToRad(RoadTowardDoorDeg), -Angles.DegToRad(RoadDownDeg), up, 10),
            About("the instruments", new Vector3D(cabin.DashRearX, eye.Y, cabin.M.DashHeightM - 0.08) - eye, 12, 9, 0.05),
        };
        foreach ((string words, int side) in Sides.Both)
        {
            var door = new Vector3D(cabin.ScreenBaseX - 0.15, side * (cabin.HalfWidth + 0.15), cabin.M.SillHeightM + 0.08);
            windows.Add(About($"the {words} door mirror", door - eye, 6, 4, 0));
        }

        if (mirror is null)
        {
            return new DriverView(eye, windows, null);
        }

        windows.Add(Glass(mirror, eye, 0.01));
        return new DriverView(eye, windows, Glass(mirror, eye, 0));
    }

    // The glass as the driver sees it, turned square to the eyes, with a rim in metres.
    private static ViewWindow Glass(InteriorMirror mirror, Vector3D eye, double rimM)
    {
        Vector3D ray = mirror.Center - eye;
        double HalfDeg(double sizeM) => Angles.RadToDeg(Math.Atan(((sizeM / 2) + rimM) / ray.Length));
        return About("the interior mirror", ray, HalfDeg(mirror.WidthM), HalfDeg(mirror.HeightM), -0.01);
    }

    private static ViewWindow About(string name, Vector3D ray, double halfWidthDeg, double halfHeightDeg, double beyondM)
    {
        double azimuth = ray.AzimuthRad, elevation = ray.ElevationRad, w = Angles.DegToRad(halfWidthDeg), h = Angles.DegToRad(halfHeightDeg);
        return new(name, azimuth - w, azimuth + w, elevation - h, elevation + h, ray.Length + beyondM);
    }
}
