using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Mount sites in front of the front seats: visors, mirror, windscreen, dash, console.</summary>
internal static class FrontSites
{
    public static void AddTo(SiteCollector sites)
    {
        AddVisors(sites);
        AddWindscreen(sites);
        AddDash(sites);
        AddConsole(sites);
    }

    private static void AddVisors(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        Vector3D normal = new Vector3D(-0.5, 0, -0.866).Normalized();
        foreach ((string words, int side) in Sides.Both)
        {
            double y = side * cabin.M.SeatSpacingM / 2;
            double reach = Math.Min(0.14, (cabin.RoofHalfWidth - Math.Abs(y)) * 0.6);
            string seat = SeatOf(side);
            foreach ((string edge, string edgeWords, double shift) in new[] { ("inner", "inner edge", -reach), ("middle", "middle", 0.0), ("outer", "outer edge", reach) })
            {
                var position = new Vector3D(cabin.HeaderX - 0.06, y + (side * shift), cabin.M.FrontHeightM - 0.04);
                sites.Add(MountFamily.Visor, $"visor-{words}-{edge}", $"{words} visor, {edgeWords}", position, normal, SurfaceMaterial.Cloth, VibrationGrade.Low, seat);
            }
        }
    }

    private static void AddWindscreen(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        Vector3D normal = cabin.ScreenNormal;
        if (!cabin.Traits.Bulkhead)
        {
            sites.Add(MountFamily.MirrorFoot, "mirror-foot", "foot of the interior mirror", cabin.OnScreen(0.88, 0), normal, SurfaceMaterial.HardPlastic, VibrationGrade.High);
        }

        double seat = cabin.M.SeatSpacingM / 2;
        double eye = Math.Clamp((cabin.DriverEye.Z - cabin.M.DashHeightM) / (cabin.M.FrontHeightM - cabin.M.DashHeightM), 0.3, 0.8);
        Add("windscreen-top-centre", "windscreen, top centre beside the mirror, passenger side", 0.94, -0.06);
        Add("windscreen-top-driver", "windscreen, top, in front of the driver", 0.94, seat);
        Add("windscreen-top-passenger", "windscreen, top, in front of the passenger", 0.94, -seat);
        Add("windscreen-centre", "windscreen, centre at the driver's eye height", eye, 0);
        Add("windscreen-low-centre", "windscreen, low in the centre", 0.12, 0);
        Add("windscreen-low-passenger", "windscreen, low corner on the passenger side", 0.12, -(cabin.HalfWidth - 0.15));

        void Add(string id, string words, double share, double y) =>
            sites.Add(MountFamily.FixedGlass, id, words, cabin.OnScreen(share, y), normal, SurfaceMaterial.Glass, VibrationGrade.High);
    }

    private static void AddDash(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        CabinMeasurements m = cabin.M;
        SurfaceMaterial top = SiteMaterials.DashTop(cabin.Spec), face = SiteMaterials.DashFace(cabin.Spec);
        double seat = m.SeatSpacingM / 2;
        foreach ((string id, string words, double y) in new[]
        {
            ("driver", "in front of the driver", seat), ("driver-centre", "between driver and centre", seat / 2), ("centre", "centre", 0.0),
            ("passenger-centre", "between centre and passenger", -seat / 2), ("passenger", "in front of the passenger", -seat),
        })
        {
            Top($"dash-top-{id}", $"dash top, rear edge, {words}", 0.12, y);
        }

        Top("dash-top-far-driver", "dash top against the windscreen, in front of the driver", 0.78, seat);
        Top("dash-top-far-centre", "dash top against the windscreen, centre", 0.78, 0);
        Top("dash-top-far-passenger", "dash top against the windscreen, in front of the passenger", 0.78, -seat);

        Face("dash-face-driver-low", "dash face below the wheel, above the driver's knees", seat, 0.24);
        Face("dash-face-centre-vent", "dash face, centre vent", 0, 0.09);
        Face("dash-face-centre-low", "dash face, low in the centre", 0, 0.26);
        Face("dash-face-passenger", "dash face in front of the passenger", -seat, 0.12);
        Face("dash-face-passenger-low", "dash face, glove box lid", -seat, 0.24);

        void Top(string id, string words, double share, double y) => sites.Add(
            MountFamily.DashTop, id, words, new(cabin.DashRearX + (share * m.DashDepthM), y, m.DashHeightM), Vector3D.Up, top, VibrationGrade.High);

        void Face(string id, string words, double y, double below) => sites.Add(
            MountFamily.DashFace, id, words, new(cabin.DashRearX, y, m.DashHeightM - below), -Vector3D.Forward, face, VibrationGrade.High);
    }

    private static void AddConsole(SiteCollector sites)
    {
        CabinLayout cabin = sites.Cabin;
        double z = cabin.M.CushionHeightM + 0.04;
        if (cabin.Traits.FrontCentreSeat)
        {
            // A bench or a third front seat leaves only the tunnel under the dash.
            sites.Add(MountFamily.CentreConsole, "console-tunnel", "floor tunnel under the dash", new(Math.Max(0.34, cabin.DashRearX - 0.10), 0, 0.15), Vector3D.Up, SurfaceMaterial.Carpet, VibrationGrade.Medium);
            return;
        }

        sites.Add(MountFamily.CentreConsole, "console-front", "centre console, in front of the gear lever", new(cabin.DashRearX - 0.10, 0, z), Vector3D.Up, SurfaceMaterial.HardPlastic, VibrationGrade.Medium);
        sites.Add(MountFamily.CentreConsole, "console-middle", "centre console, cup holders between the seats", new(0.10, 0, z), Vector3D.Up, SurfaceMaterial.HardPlastic, VibrationGrade.Medium);
        sites.Add(MountFamily.CentreConsole, "console-rear", "centre console, rear end of the armrest", new(-0.22, 0, z + 0.08), Vector3D.Up, SiteMaterials.Seat(cabin.Spec), VibrationGrade.Medium);
    }

    internal static string SeatOf(int side) => side > 0 ? "driver" : "front-passenger";
}
