using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Makes mount sites and works out all that follows from where they are.</summary>
internal sealed class SiteCollector(
    CabinLayout cabin,
    IReadOnlyList<Occluder> occluders,
    IReadOnlyList<AirbagZone> airbags,
    IReadOnlyList<NoisePort> ports,
    DriverView view)
{
    /// <summary>Free depth is measured no further than this, metres.</summary>
    private const double DepthLimitM = 1.0;

    /// <summary>A place with less room than this in front of it, metres, holds no microphone.</summary>
    private const double LeastDepthM = 0.02;

    private const double OffSurfaceM = 0.005;
    private const double NearM = 0.25;

    private readonly BoxOccluder[] boxes = [.. occluders.OfType<BoxOccluder>()];
    private readonly Vector3D[] vents = [.. ports.Where(p => p.Kind == NoisePortKind.Vent).Select(p => p.Position)];
    private readonly Vector3D[] loudspeakers = Loudspeakers(cabin);
    private readonly List<MountSite> sites = [];

    public CabinLayout Cabin => cabin;

    public IReadOnlyList<MountSite> Sites => sites;

    public void Add(
        MountFamily family, string id, string words, Vector3D position, Vector3D normal,
        SurfaceMaterial material, VibrationGrade vibration, string? seatId = null, WindowPane? pane = null)
    {
        double depth = FreeDepth(position, normal);
        if (depth < LeastDepthM)
        {
            return;
        }

        Vector3D front = position + (DriverView.ReachM * normal);
        sites.Add(new MountSite
        {
            Id = id,
            Words = words,
            Family = family,
            Position = position,
            Normal = normal,
            Material = material,
            PermittedFixings = FixingRules.PermittedOn(family, material),
            FreeDepthM = depth,
            AirbagZone = airbags.FirstOrDefault(z => z.Box.Contains(position) || z.Box.Contains(front))?.Name,
            InDriverView = view.HiddenBy(position, normal) is not null,
            OnMovingGlass = pane is { Moves: true },
            PaneId = pane?.Id,
            NearVent = Near(vents, position),
            NearLoudspeaker = Near(loudspeakers, position),
            Vibration = vibration,
            SeatId = seatId,
        });
    }

    private static bool Near(Vector3D[] places, Vector3D position) => places.Any(p => p.DistanceTo(position) <= NearM);

    private double FreeDepth(Vector3D position, Vector3D normal)
    {
        // Starts just off the surface, so that the surface's own body does not count.
        Vector3D from = position + (OffSurfaceM * normal), to = position + (DepthLimitM * normal);
        if (!cabin.Interior.TryCut(from, to, out _, out double free))
        {
            return 0;
        }

        free = Math.Min(free, UntilGlass(from, to, cabin.OnScreen(0, 0), cabin.ScreenNormal));
        if (!cabin.Traits.Bulkhead)
        {
            free = Math.Min(free, UntilGlass(from, to, cabin.OnRearGlass(0, 0), cabin.RearGlassNormal));
        }

        foreach (BoxOccluder box in boxes)
        {
            if (box.Box.TryCut(from, to, out double enter, out _))
            {
                free = Math.Min(free, enter);
            }
        }

        return free > 0 ? OffSurfaceM + (free * (DepthLimitM - OffSurfaceM)) : 0;
    }

    // Share of the way until the sloping glass; a start at or behind the glass is a site on it or on its pillar.
    private static double UntilGlass(Vector3D from, Vector3D to, Vector3D onGlass, Vector3D normal)
    {
        double start = (from - onGlass).Dot(normal), end = (to - onGlass).Dot(normal);
        return start <= 0 || end >= 0 ? 1 : start / (start - end);
    }

    // Where loudspeakers usually are: low in the front and rear doors (judgement).
    private static Vector3D[] Loudspeakers(CabinLayout cabin)
    {
        double y = cabin.HalfWidth, z = cabin.M.SillHeightM / 3;
        var found = new List<Vector3D> { new(cabin.DashRearX - 0.10, y, z), new(cabin.DashRearX - 0.10, -y, z) };
        if (cabin.Traits.Rows > 1)
        {
            found.Add(new(cabin.BeltX - 0.30, y, z));
            found.Add(new(cabin.BeltX - 0.30, -y, z));
        }

        return [.. found];
    }
}
