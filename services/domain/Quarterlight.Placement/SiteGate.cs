using System.Runtime.InteropServices;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>
/// The hard limits: what no score can buy back. Each spot is tried with each size class of microphone; a spot that fails with
/// all of them is refused, with every reason kept.
/// </summary>
internal sealed class SiteGate
{
    private static readonly Fixings[] s_singleFixings =
    [
        Fixings.SpringClip, Fixings.ElasticTie, Fixings.ArticulatedArm, Fixings.SuctionCup, Fixings.PaperTape, Fixings.WeightedBase, Fixings.BodyMount,
    ];

    private readonly PlacementTask _task;
    private readonly PlacementOptions _options;
    private readonly List<Occluder> _occluders;
    private readonly List<(Vector3D Center, string Whose)> _heads = [];
    private readonly Fixings _stock;
    private readonly (string Id, CameraView View)[] _views;
    private readonly MirrorView? _mirror;

    public SiteGate(PlacementTask task, PlacementOptions options)
    {
        _task = task;
        _options = options;
        _occluders = [.. task.Cabin.Occluders];
        _views = [.. task.Scene.Shots.Select(s => (s.Id, new CameraView(s)))];
        _mirror = task.Cabin.Mirror is { } mirror ? new MirrorView(mirror) : null;
        foreach (Talker talker in task.Scene.Talkers)
        {
            AddHead(talker.SeatId, talker.DisplayName, talker.HeadPoses);
        }

        foreach (string seatId in task.Scene.SilentSeatIds)
        {
            AddHead(seatId, $"whoever sits at {seatId}", [CabinRoom.Rest]);
        }

        foreach ((Fixings fixing, int count) in task.Kit.FixingCounts)
        {
            _stock |= count > 0 ? fixing : Fixings.None;
        }
    }

    /// <summary>Single fixings, least risk first.</summary>
    public static ReadOnlySpan<Fixings> SingleFixings => s_singleFixings;

    /// <summary>Fixings of the kit that may hold a microphone at a site.</summary>
    public Fixings FixingsFor(MountSite site, Microphone microphone) => site.PermittedFixings & microphone.Fixings & _stock;

    /// <summary>
    /// Tries a spot. Sets <paramref name="usable"/> for each microphone of the kit; returns the refusal when none is usable.
    /// </summary>
    public RefusedSite? Try(MountSpot spot, Span<bool> usable)
    {
        usable.Clear();
        MountSite site = spot.Site;
        var reasons = new List<RefusalReason>();
        var sentences = new List<string>();
        CheckPlace(spot, reasons, sentences);
        IReadOnlyList<Microphone> microphones = _task.Kit.Microphones;
        bool fixingFound = false, roomFound = false, hiddenFound = false;
        (bool InShot, bool InMirror, string Words) seenSmallest = default;
        double smallest = double.PositiveInfinity;
        Span<double> triedLengths = stackalloc double[microphones.Count];
        Span<bool> triedHidden = stackalloc bool[microphones.Count];
        int tried = 0;
        for (int m = 0; m < microphones.Count; m++)
        {
            Microphone microphone = microphones[m];
            Fixings fixings = FixingsFor(site, microphone);
            fixingFound |= fixings != Fixings.None;
            bool fits = NeededDepthM(microphone) <= site.FreeDepthM;
            roomFound |= fits;
            if (fixings == Fixings.None || !fits)
            {
                continue;
            }

            double length = SizeClassM(microphone);
            bool hidden;
            int known = triedLengths[..tried].IndexOf(length);
            if (known >= 0)
            {
                hidden = triedHidden[known];
            }
            else
            {
                (bool inShot, bool inMirror, string words) = Look(spot, length);
                hidden = !inShot && !inMirror;
                if (length < smallest)
                {
                    smallest = length;
                    seenSmallest = (inShot, inMirror, words);
                }

                triedLengths[tried] = length;
                triedHidden[tried++] = hidden;
            }

            hiddenFound |= hidden;
            usable[m] = hidden && reasons.Count == 0;
        }

        if (!fixingFound)
        {
            reasons.Add(RefusalReason.Fixing);
            sentences.Add($"no fixing in the kit is permitted on {MaterialWords(site.Material)} there");
        }
        else if (!roomFound)
        {
            reasons.Add(RefusalReason.FreeDepth);
            sentences.Add("there is no room in front of the surface");
        }
        else if (!hiddenFound && tried > 0)
        {
            if (seenSmallest.InShot)
            {
                reasons.Add(RefusalReason.InShot);
            }

            if (seenSmallest.InMirror)
            {
                reasons.Add(RefusalReason.InMirror);
            }

            sentences.Add(seenSmallest.Words ?? "");
        }

        if (reasons.Count == 0 && !usable.Contains(true))
        {
            // One microphone fits, another would be hidden, none does both.
            reasons.Add(RefusalReason.FreeDepth);
            sentences.Add("no microphone of the kit both fits there and stays hidden");
        }

        if (reasons.Count == 0)
        {
            return null;
        }

        usable.Clear();
        return new RefusedSite(site, reasons, $"{Capitalized(site.Words)}: {string.Join("; ", sentences)}.");
    }

    /// <summary>Depth in metres that a microphone with its fixing takes up in front of a surface.</summary>
    public static double NeededDepthM(Microphone microphone) => Math.Min(microphone.BodyDiameterM + 0.005, 0.05);

    private static double SizeClassM(Microphone microphone) => microphone.BodyLengthM switch
    {
        <= 0.015 => 0.01,
        <= 0.05 => 0.05,
        <= 0.10 => 0.10,
        _ => microphone.BodyLengthM,
    };

    private void AddHead(string seatId, string whose, IReadOnlyList<HeadPose> poses)
    {
        if (_task.Cabin.FindSeat(seatId) is not { } seat)
        {
            return;
        }

        Vector3D rest = SeatedHead.In(seat, CabinRoom.Rest).Center;
        _occluders.Add(new BallOccluder($"{whose}'s head", rest, SeatedHead.RadiusM));
        foreach (HeadPose pose in poses)
        {
            _heads.Add((SeatedHead.In(seat, pose).Center, whose));
        }
    }

    private void CheckPlace(MountSpot spot, List<RefusalReason> reasons, List<string> sentences)
    {
        MountSite site = spot.Site;
        if (spot.Wearer >= 0)
        {
            if (_task.Scene.Talkers[spot.Wearer].NoBodyWorn)
            {
                reasons.Add(RefusalReason.BodyWorn);
                sentences.Add("the scene allows nothing on this talker's clothing");
            }

            return;
        }

        if (site.AirbagZone is { } zone)
        {
            reasons.Add(RefusalReason.Airbag);
            sentences.Add($"it is in the way of the {zone}");
        }

        if (site.InDriverView)
        {
            reasons.Add(RefusalReason.DriverView);
            sentences.Add("it stands in the driver's view");
        }

        if (site.OnMovingGlass && site.PaneId is { } pane && _task.Scene.Drive.OpenWindows.Any(w => w.PaneId == pane && w.OpenFraction > 0))
        {
            reasons.Add(RefusalReason.MovingGlass);
            sentences.Add("the glass it would sit on is down");
        }

        foreach ((Vector3D center, string whose) in _heads)
        {
            double gap = spot.Capsule.DistanceTo(center) - SeatedHead.RadiusM;
            if (gap < _options.HeadClearanceM)
            {
                reasons.Add(RefusalReason.HeadClearance);
                sentences.Add(FormattableString.Invariant($"it comes within {Math.Max(0, gap) * 100:0} cm of {whose}'s head"));
                break;
            }
        }
    }

    private (bool InShot, bool InMirror, string Words) Look(MountSpot spot, double lengthM)
    {
        if (spot.Wearer >= 0)
        {
            // Worn under clothing: hidden by the costume, which the penalty for wardrobe accounts for.
            return default;
        }

        Span<Vector3D> samples = stackalloc Vector3D[6];
        Vector3D n = spot.Site.Normal;
        Vector3D u = (Math.Abs(n.Z) < 0.9 ? n.Cross(Vector3D.Up) : n.Cross(Vector3D.Forward)).Normalized();
        Vector3D v = n.Cross(u);
        double half = Math.Min(lengthM / 2, 0.08);
        samples[0] = spot.Capsule;
        samples[1] = spot.Site.Position + (0.012 * n);
        samples[2] = spot.Capsule + (half * u);
        samples[3] = spot.Capsule - (half * u);
        samples[4] = spot.Capsule + (half * v);
        samples[5] = spot.Capsule - (half * v);
        bool inShot = false, inMirror = false;
        List<string>? direct = null, mirrored = null;
        foreach ((string id, CameraView view) in _views)
        {
            SightLineResult result = SightLines.Find(view, samples, CollectionsMarshal.AsSpan(_occluders), _mirror, _options.FrameMarginFraction);
            if (result.Seen && result.InMirror)
            {
                inMirror = true;
                (mirrored ??= []).Add(id);
            }
            else if (result.Seen)
            {
                inShot = true;
                (direct ??= []).Add(id);
            }
        }

        string words = string.Join("; ", new[]
        {
            direct is null ? null : $"shot {string.Join(", ", direct)} sees it",
            mirrored is null ? null : $"shot {string.Join(", ", mirrored)} sees it in the mirror",
        }.Where(w => w is not null));
        return (inShot, inMirror, words);
    }

    private static string MaterialWords(SurfaceMaterial material) => material switch
    {
        SurfaceMaterial.HardPlastic => "hard plastic",
        SurfaceMaterial.SoftPlastic => "soft plastic",
        SurfaceMaterial.PaintedMetal => "painted metal",
        _ => material.ToString().ToLowerInvariant(),
    };

    private static string Capitalized(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
