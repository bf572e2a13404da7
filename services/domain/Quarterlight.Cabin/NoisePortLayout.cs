using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Places the points where noise enters. Positions are judgement: the panel nearest the source.</summary>
internal static class NoisePortLayout
{
    public static IReadOnlyList<NoisePort> Ports(CabinLayout cabin, IReadOnlyList<WindowPane> windows)
    {
        double w = cabin.HalfWidth;
        double frontAxleX = cabin.ScreenBaseX - 0.10;
        double rearAxleX = Math.Max(cabin.LastReferenceX - 0.20, cabin.RearX + 0.05);
        var ports = new List<NoisePort> { new("engine", NoisePortKind.Engine, Engine(cabin, rearAxleX)) };
        foreach ((_, int side) in Sides.Both)
        {
            ports.Add(new($"tyre-front-{Sides.LeftOrRight(side)}", NoisePortKind.Tyre, new(frontAxleX, side * (w - 0.05), 0.12)));
            ports.Add(new($"tyre-rear-{Sides.LeftOrRight(side)}", NoisePortKind.Tyre, new(rearAxleX, side * (w - 0.05), 0.25)));
            ports.Add(new($"wind-{Sides.LeftOrRight(side)}", NoisePortKind.Wind, cabin.OnScreenPillar(0.3, side)));
        }

        foreach (WindowPane pane in windows.Where(p => p.Moves))
        {
            ports.Add(new("window-" + pane.Id, NoisePortKind.Window, pane.Glass.Center));
        }

        double ventZ = cabin.M.DashHeightM - 0.08;
        ports.Add(new("vent-left", NoisePortKind.Vent, new(cabin.DashRearX, w - 0.10, ventZ)));
        ports.Add(new("vent-centre", NoisePortKind.Vent, new(cabin.DashRearX, 0, ventZ)));
        ports.Add(new("vent-right", NoisePortKind.Vent, new(cabin.DashRearX, -(w - 0.10), ventZ)));
        if (cabin.Traits.Rows == 3)
        {
            double x = cabin.BeltX - 0.15;
            ports.Add(new("vent-rear-centre", NoisePortKind.Vent, new(x, 0, cabin.RoofZ(x))));
        }

        double roofX = (cabin.HeaderX + cabin.RearHeaderX) / 2;
        ports.Add(new("roof", NoisePortKind.Roof, new(roofX, 0, cabin.RoofZ(roofX))));
        return ports;
    }

    private static Vector3D Engine(CabinLayout cabin, double rearAxleX)
    {
        Box3D seat = cabin.Seats[0].Backrest;
        return cabin.Spec.Engine switch
        {
            EngineLayout.Front => new(cabin.ScreenBaseX, 0, 0.5 * cabin.M.DashHeightM),
            EngineLayout.Middle => new(Math.Max(seat.Min.X - 0.05, cabin.RearX), 0, seat.Min.Z),
            EngineLayout.Rear => new(cabin.RearX, 0, Math.Min(0.30, cabin.M.SillHeightM)),
            // Most electric cars drive the rear axle; the motor sits under the rear seat.
            EngineLayout.Electric => new(rearAxleX, 0, 0.05),
            _ => throw new ArgumentOutOfRangeException(nameof(cabin), cabin.Spec.Engine, "Unknown engine layout."),
        };
    }
}
