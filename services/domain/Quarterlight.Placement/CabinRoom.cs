using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>Turns a cabin as driven into the room and screens that sound is traced in.</summary>
public static class CabinRoom
{
    // Energy absorption 125 Hz to 8 kHz of building materials that stand in for car trim (M. Vorlaender, Auralization, as
    // collected in the open materials table of pyroomacoustics); leather lowered by judgement. No measured trim was found.
    private static readonly Dictionary<TrimMaterial, double[]> s_absorption = new()
    {
        [TrimMaterial.Headliner] = [0.02, 0.02, 0.05, 0.15, 0.30, 0.40, 0.40],
        [TrimMaterial.Glazing] = [0.10, 0.05, 0.04, 0.03, 0.03, 0.03, 0.03],
        [TrimMaterial.Carpet] = [0.03, 0.09, 0.20, 0.54, 0.70, 0.72, 0.72],
        [TrimMaterial.ClothSeat] = [0.44, 0.60, 0.77, 0.89, 0.82, 0.70, 0.70],
        [TrimMaterial.LeatherSeat] = [0.40, 0.50, 0.58, 0.61, 0.58, 0.50, 0.50],
        [TrimMaterial.PlasticTrim] = [0.06, 0.10, 0.10, 0.20, 0.30, 0.20, 0.20],
    };

    private static readonly CabinFace[] s_order = [CabinFace.Rear, CabinFace.Front, CabinFace.Right, CabinFace.Left, CabinFace.Floor, CabinFace.Roof];

    /// <summary>Absorption of a trim material by octave band, energy share 0 to 1.</summary>
    public static IReadOnlyList<double> AbsorptionOf(TrimMaterial material) => s_absorption[material];

    /// <summary>The box with each face's absorption; an open window lets its share of the side go for good.</summary>
    public static ShoeboxRoom Build(CabinGeometry cabin, DriveConditions drive)
    {
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(drive);
        Vector3D size = cabin.Interior.Size;
        var faces = new FaceAbsorption[6];
        for (int f = 0; f < 6; f++)
        {
            CabinFace face = s_order[f];
            var bands = new double[OctaveBands.Count];
            double openFraction = face is CabinFace.Left or CabinFace.Right ? OpenArea(cabin, drive, face) / (size.X * size.Z) : 0;
            foreach (TrimShare share in cabin.Trim.Where(t => t.Face == face))
            {
                for (int b = 0; b < bands.Length; b++)
                {
                    bands[b] += share.AreaFraction * s_absorption[share.Material][b];
                }
            }

            for (int b = 0; b < bands.Length; b++)
            {
                bands[b] = Math.Clamp((bands[b] * (1 - openFraction)) + openFraction, 0, 1);
            }

            faces[f] = new FaceAbsorption(bands);
        }

        return new ShoeboxRoom(cabin.Interior, faces, airVolumeM3: cabin.AirVolumeM3);
    }

    /// <summary>Backrests with headrests as panels, heads as balls; heads of talkers carry the talker's number.</summary>
    public static IReadOnlyList<Screen> Screens(CabinGeometry cabin, Scene scene)
    {
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(scene);
        var screens = new List<Screen>();
        foreach (Seat seat in cabin.Seats)
        {
            screens.Add(Screen.Panel(seat.Backrest));
        }

        for (int t = 0; t < scene.Talkers.Count; t++)
        {
            if (cabin.FindSeat(scene.Talkers[t].SeatId) is { } seat)
            {
                screens.Add(Screen.Head(SeatedHead.In(seat, Rest).Center, SeatedHead.RadiusM, t));
            }
        }

        foreach (string id in scene.SilentSeatIds)
        {
            if (cabin.FindSeat(id) is { } seat)
            {
                screens.Add(Screen.Head(SeatedHead.In(seat, Rest).Center, SeatedHead.RadiusM, -1));
            }
        }

        return screens;
    }

    /// <summary>A head at rest, face forward.</summary>
    internal static HeadPose Rest { get; } = new();

    private static double OpenArea(CabinGeometry cabin, DriveConditions drive, CabinFace face)
    {
        double area = 0;
        foreach (WindowPane pane in cabin.Windows.Where(w => w.Face == face))
        {
            double open = drive.OpenWindows.FirstOrDefault(w => w.PaneId == pane.Id)?.OpenFraction ?? 0;
            area += open * pane.Glass.Size.X * pane.Glass.Size.Z;
        }

        return area;
    }
}
