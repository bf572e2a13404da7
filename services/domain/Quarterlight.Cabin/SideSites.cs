using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Mount sites along the sides: pillars, door cards, glass, grab handles.</summary>
internal static class SideSites
{
    private const double PillarDepthM = 0.045;

    public static void AddTo(SiteCollector sites, IReadOnlyList<WindowPane> windows)
    {
        foreach ((string words, int side) in Sides.Both)
        {
            AddPillars(sites, words, side);
            AddDoors(sites, words, side);
            AddGrabHandles(sites, words, side);
            foreach (WindowPane pane in windows.Where(p => p.Face == (side > 0 ? CabinFace.Left : CabinFace.Right)))
            {
                AddGlass(sites, pane, words, side);
            }
        }
    }

    private static void AddPillars(SiteCollector sites, string words, int side)
    {
        CabinLayout cabin = sites.Cabin;
        SurfaceMaterial material = SiteMaterials.Pillar(cabin.Spec);
        Vector3D aft = new Vector3D(-0.5, -side, 0).Normalized();
        foreach ((string id, string height, double share) in new[] { ("low", "low", 0.3), ("high", "high", 0.75) })
        {
            Vector3D surface = cabin.OnScreenPillar(share, side) + (PillarDepthM * aft);
            sites.Add(MountFamily.APillar, $"pillar-a-{words}-{id}", $"{words} windscreen pillar, {height}", surface, aft, material, VibrationGrade.Medium, FrontSites.SeatOf(side));
        }

        Vector3D inward = new(0, -side, 0);
        foreach (PillarLine pillar in PillarLine.Behind(cabin))
        {
            double sill = cabin.M.SillHeightM, top = pillar.TopZ(cabin);
            foreach ((string id, string height, double z) in new[] { ("low", "at shoulder height", sill + 0.05), ("high", "high", top - 0.10) })
            {
                Vector3D surface = pillar.At(cabin, z, side) + (PillarDepthM * inward);
                surface = surface with { X = Math.Max(surface.X, cabin.RearX + 0.01) };
                sites.Add(pillar.Family, $"pillar-{pillar.Id}-{words}-{id}", $"{words} side {pillar.Words}, {height}", surface, inward, material, VibrationGrade.Medium);
            }
        }
    }

    private static void AddDoors(SiteCollector sites, string words, int side)
    {
        CabinLayout cabin = sites.Cabin;
        string seat = FrontSites.SeatOf(side);
        Add("front", $"{words} door", seat, 0.18, 0.30);
        if (cabin.Traits.RearDoors)
        {
            string row = $"rear-{Sides.LeftOrRight(side)}";
            Add(row, $"{row.Replace('-', ' ')} door ({words} side)", row, cabin.BeltX - 0.22, Math.Min(cabin.BeltX - 0.12, 0));
        }

        void Add(string id, string doorWords, string seatId, double armrestX, double upperX)
        {
            string name = id == "front" ? words : id;
            Vector3D inward = new(0, -side, 0);
            double arm = cabin.M.CushionHeightM + 0.20;
            sites.Add(MountFamily.DoorCard, $"door-{name}-armrest", $"{doorWords}, armrest", new(armrestX, side * (cabin.HalfWidth - 0.05), arm), Vector3D.Up, SiteMaterials.Seat(cabin.Spec), VibrationGrade.Medium, seatId);
            sites.Add(MountFamily.DoorCard, $"door-{name}-upper", $"{doorWords}, upper edge below the glass", new(upperX, side * cabin.HalfWidth, cabin.M.SillHeightM - 0.04), inward, SurfaceMaterial.SoftPlastic, VibrationGrade.Medium, seatId);
        }
    }

    private static void AddGlass(SiteCollector sites, WindowPane pane, string words, int side)
    {
        Box3D glass = pane.Glass;
        Vector3D inward = new(0, -side, 0);
        MountFamily family = pane.Moves ? MountFamily.MovingGlass : MountFamily.FixedGlass;
        bool front = pane.Id.StartsWith("front-", StringComparison.Ordinal);
        bool second = pane.Id.StartsWith("rear-", StringComparison.Ordinal);
        string id = front ? words : pane.Id;
        string name = front ? $"{words} window" : $"{pane.Id.Replace('-', ' ')} window ({words} side)";
        string? seat = front ? FrontSites.SeatOf(side) : second ? pane.Id : null;
        Vector3D size = glass.Size;
        foreach ((string place, double along) in new[] { ("front", 0.75), ("rear", 0.25) })
        {
            foreach ((string height, double up) in new[] { ("low", 0.2), ("high", 0.8) })
            {
                var position = new Vector3D(glass.Min.X + (along * size.X), glass.Min.Y, glass.Min.Z + (up * size.Z));
                sites.Add(family, $"glass-{id}-{place}-{height}", $"{name}, {height} at the {place}", position, inward, SurfaceMaterial.Glass, VibrationGrade.High, seat, pane);
            }
        }
    }

    private static void AddGrabHandles(SiteCollector sites, string words, int side)
    {
        CabinLayout cabin = sites.Cabin;
        Vector3D normal = new Vector3D(0, -side, -0.5).Normalized();
        if (side < 0)
        {
            // The driver's side has none in front, as usual.
            Add($"grab-{words}", $"{words} grab handle above the door", 0.10, "front-passenger");
        }

        if (cabin.Traits.Rows > 1)
        {
            string row = $"rear-{Sides.LeftOrRight(side)}";
            Add($"grab-{row}", $"{row.Replace('-', ' ')} grab handle ({words} side)", -cabin.M.RowSpacingM, row);
        }

        void Add(string id, string handleWords, double x, string seatId)
        {
            double z = cabin.RoofZ(x) - 0.06;
            sites.Add(MountFamily.GrabHandle, id, handleWords, new(x, side * (cabin.SideY(z) - 0.03), z), normal, SurfaceMaterial.SoftPlastic, VibrationGrade.Low, seatId);
        }
    }
}
