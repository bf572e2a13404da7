using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A flat mirror ready for reflecting sight lines.</summary>
public readonly record struct MirrorView
{
    private readonly Vector3D center;
    private readonly Vector3D normal;
    private readonly Vector3D across;
    private readonly Vector3D upward;
    private readonly double halfWidthM;
    private readonly double halfHeightM;

    /// <summary>Prepares the interior mirror; its upper edge is level.</summary>
    public MirrorView(InteriorMirror mirror)
    {
        ArgumentNullException.ThrowIfNull(mirror);
        center = mirror.Center;
        normal = mirror.Normal;
        across = Vector3D.Up.Cross(normal).Normalized();
        upward = normal.Cross(across);
        halfWidthM = mirror.WidthM / 2;
        halfHeightM = mirror.HeightM / 2;
    }

    /// <summary>
    /// Finds the point of the glass in which an eye sees a thing: the line from the eye to the thing's mirror image must
    /// pass through the glass. False when either is behind the mirror or the line misses the glass.
    /// </summary>
    public bool TryReflect(Vector3D eye, Vector3D thing, out Vector3D onGlass)
    {
        double eyeDistance = (eye - center).Dot(normal), thingDistance = (thing - center).Dot(normal);
        if (eyeDistance <= 0 || thingDistance <= 0)
        {
            onGlass = default;
            return false;
        }

        Vector3D image = thing - (2 * thingDistance * normal);
        onGlass = eye + (eyeDistance / (eyeDistance + thingDistance) * (image - eye));
        Vector3D fromCenter = onGlass - center;
        return Math.Abs(fromCenter.Dot(across)) <= halfWidthM && Math.Abs(fromCenter.Dot(upward)) <= halfHeightM;
    }
}
