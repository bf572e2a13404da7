using System.Runtime.InteropServices;
using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Whether a shot sees a thing.</summary>
/// <param name="Seen">True when any sample is in the picture and nothing cuts its sight line, straight or by the mirror.</param>
/// <param name="InMirror">True when it is seen, but only in the interior mirror.</param>
/// <param name="HiddenBy">What hides the first sample that lies in the frame when nothing is seen; null when seen or out of frame.</param>
/// <param name="SamplesSeen">How many samples are seen.</param>
public readonly record struct SightLineResult(bool Seen, bool InMirror, string? HiddenBy, int SamplesSeen);

/// <summary>
/// Finds whether a camera sees a thing, given as sample points on its hull. Glass hides nothing. The model is in
/// docs/models/sight-lines.md.
/// </summary>
public static class SightLines
{
    /// <summary>Looks for samples in the picture.</summary>
    /// <param name="shot">A valid shot.</param>
    /// <param name="samples">Points on the thing, metres.</param>
    /// <param name="occluders">What hides; pass an array in hot loops.</param>
    /// <param name="mirror">Interior mirror, or null.</param>
    /// <param name="marginFraction">Share of the half picture by which the frame is widened.</param>
    public static SightLineResult Find(
        Shot shot, IReadOnlyList<Vector3D> samples, IReadOnlyList<Occluder> occluders, InteriorMirror? mirror, double marginFraction = CameraView.FrameMargin)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(occluders);
        ReadOnlySpan<Vector3D> points = samples switch
        {
            Vector3D[] array => array,
            List<Vector3D> list => CollectionsMarshal.AsSpan(list),
            _ => samples.ToArray(),
        };
        ReadOnlySpan<Occluder> bodies = occluders switch
        {
            Occluder[] array => array,
            List<Occluder> list => CollectionsMarshal.AsSpan(list),
            _ => occluders.ToArray(),
        };
        return Find(new CameraView(shot), points, bodies, mirror is null ? null : new MirrorView(mirror), marginFraction);
    }

    /// <summary>The same on spans, with the camera's view made beforehand; allocates nothing.</summary>
    public static SightLineResult Find(
        in CameraView view, ReadOnlySpan<Vector3D> samples, ReadOnlySpan<Occluder> occluders, MirrorView? mirror, double marginFraction = CameraView.FrameMargin)
    {
        int direct = 0, mirrored = 0;
        string? hiddenBy = null;
        foreach (ref readonly Vector3D sample in samples)
        {
            if (view.InFrame(sample, marginFraction))
            {
                if (FirstHiding(view.Eye, sample, occluders) is not { } hiding)
                {
                    direct++;
                    continue;
                }

                hiddenBy ??= hiding.Name;
            }

            if (mirror is { } glass && SeenIn(view, sample, occluders, glass, marginFraction))
            {
                mirrored++;
            }
        }

        int seen = direct + mirrored;
        return new SightLineResult(seen > 0, direct == 0 && mirrored > 0, seen > 0 ? null : hiddenBy, seen);
    }

    private static Occluder? FirstHiding(Vector3D eye, Vector3D point, ReadOnlySpan<Occluder> occluders)
    {
        foreach (Occluder occluder in occluders)
        {
            if (occluder.Hides(eye, point))
            {
                return occluder;
            }
        }

        return null;
    }

    private static bool SeenIn(in CameraView view, Vector3D sample, ReadOnlySpan<Occluder> occluders, in MirrorView mirror, double marginFraction) =>
        mirror.TryReflect(view.Eye, sample, out Vector3D glass)
        && view.InFrame(glass, marginFraction)
        && FirstHiding(view.Eye, glass, occluders) is null
        && FirstHiding(glass, sample, occluders) is null;
}
