using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Sight lines inside one cabin with the heads that sit in it: made once, asked often.</summary>
public sealed class CabinSights
{
    private readonly Occluder[] occluders;
    private readonly MirrorView? mirror;

    /// <summary>Combines a cabin's occluders with heads.</summary>
    /// <param name="cabin">Cabin.</param>
    /// <param name="heads">Heads by name, such as "driver's head".</param>
    public CabinSights(CabinGeometry cabin, IEnumerable<(string Name, SeatedHead Head)> heads)
    {
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(heads);
        occluders = [.. cabin.Occluders, .. heads.Select(h => HeadOccluder.Of(h.Head, h.Name))];
        mirror = cabin.Mirror is null ? null : new MirrorView(cabin.Mirror);
    }

    /// <summary>Everything that hides, heads last.</summary>
    public IReadOnlyList<Occluder> Occluders => occluders;

    /// <summary>Whether a camera sees any of the samples.</summary>
    public SightLineResult Find(in CameraView view, ReadOnlySpan<Vector3D> samples, double marginFraction = CameraView.FrameMargin) =>
        SightLines.Find(view, samples, occluders, mirror, marginFraction);

    /// <summary>Whether a shot sees any of the samples.</summary>
    public SightLineResult Find(Shot shot, ReadOnlySpan<Vector3D> samples, double marginFraction = CameraView.FrameMargin) =>
        SightLines.Find(new CameraView(shot), samples, occluders, mirror, marginFraction);

    /// <summary>What cuts the straight line between two points, or null.</summary>
    public string? FirstBetween(Vector3D eye, Vector3D point)
    {
        foreach (Occluder occluder in occluders)
        {
            if (occluder.Hides(eye, point))
            {
                return occluder.Name;
            }
        }

        return null;
    }
}
