using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>
/// Volumes kept free for airbags. That nothing may sit on a cover or between a bag and a sitter is a published rule
/// (handbook warnings); the sizes of the volumes are judgement, on the generous side, and the car's own handbook wins.
/// </summary>
internal static class AirbagLayout
{
    public static IReadOnlyList<AirbagZone> Zones(CabinLayout cabin)
    {
        if (!cabin.HasAirbags)
        {
            return [];
        }

        CabinMeasurements m = cabin.M;
        Vector3D wheel = cabin.WheelCenter;
        Seat passenger = cabin.Seats.First(s => s.Id == "front-passenger");
        double passengerY = passenger.ReferencePoint.Y;

        // Bags unfold below the visors: the visor itself stays usable.
        double top = m.FrontHeightM - 0.15;
        var zones = new List<AirbagZone>
        {
            new("driver's front airbag", new Box3D(wheel + new Vector3D(-0.30, -0.30, -0.25), new(wheel.X + 0.08, wheel.Y + 0.30, Math.Min(wheel.Z + 0.30, top)))),
            // Out of the dash top and along the windscreen before it reaches the sitter.
            new("passenger's front airbag", new Box3D(
                new(cabin.DashRearX - 0.40, passengerY - 0.32, m.DashHeightM - 0.15), new(cabin.ScreenBaseX, passengerY + 0.32, Math.Min(m.DashHeightM + 0.35, top)))),
            new("driver's knee airbag", new Box3D(
                new(cabin.DashRearX - 0.15, wheel.Y - 0.25, Math.Max(0, m.DashHeightM - 0.40)), new(cabin.DashRearX + 0.05, wheel.Y + 0.25, m.DashHeightM - 0.18))),
        };
        foreach ((string words, int side) in Sides.Both)
        {
            // The curtain's strap runs down the upper third of the windscreen pillar.
            zones.Add(new($"{words} side curtain airbag", Between(
                side * (cabin.RoofHalfWidth - 0.04), side * cabin.HalfWidth, cabin.RearHeaderX, cabin.OnScreen(0.65, 0).X, m.SillHeightM + 0.02, cabin.Interior.Max.Z)));
            Seat seat = side > 0 ? cabin.Seats[0] : passenger;
            double edge = side > 0 ? seat.Backrest.Max.Y : seat.Backrest.Min.Y;
            double z = seat.ReferencePoint.Z;
            zones.Add(new($"{words} seat side airbag", Between(edge - (side * 0.04), side * cabin.HalfWidth, seat.Backrest.Min.X, -0.02, z + 0.05, z + 0.52)));
        }

        return zones;
    }

    private static Box3D Between(double y1, double y2, double rear, double front, double low, double high) =>
        new(new(rear, Math.Min(y1, y2), low), new(front, Math.Max(y1, y2), high));
}
