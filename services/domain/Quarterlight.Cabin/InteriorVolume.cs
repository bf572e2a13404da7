using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Volumes of a cabin.</summary>
public static class InteriorVolume
{
    private const double HeadRoomExtraM = 0.102;
    private const double TorsoLeanDeg = 8;
    private const double FootwellM = 0.30;
    private const double RearFootRoomM = 0.07;
    private const double RearWidthFraction = 0.98;
    private const double LoadFloorM = 0.25;

    /// <summary>
    /// Interior volume index in cubic metres: head room times shoulder room times leg room for each of the first two rows, and
    /// luggage. Form of the index from memory of 40 CFR 600.315-08; two shortcuts are ours: shoulder room stands for the
    /// mean of shoulder and hip room, and leg room is judged from tape measurements.
    /// </summary>
    /// <param name="geometry">Cabin of at least two rows.</param>
    /// <param name="separateLuggageM3">Volume of a boot apart from the cabin, cubic metres.</param>
    public static double IndexM3(CabinGeometry geometry, double separateLuggageM3)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        CabinMeasurements m = geometry.Measurements;
        Seat front = geometry.Seats[0];
        double first = HeadRoom(m.FrontHeightM, front) * m.ShoulderWidthM * (m.DashToBackrestM + FootwellM);
        Seat? rear = geometry.Seats.FirstOrDefault(s => s.Row == 2);
        double second = rear is null ? 0 : HeadRoom(m.RearHeightM, rear) * m.ShoulderWidthM * RearWidthFraction * (m.RowSpacingM + RearFootRoomM);
        BodyTraits traits = BodyTraits.Of(geometry.Spec.Body);
        double load = traits.LoadSpace ? m.BehindLastRowM * 0.75 * m.ShoulderWidthM * (m.RearHeightM - LoadFloorM) : 0;
        return first + second + load + separateLuggageM3;
    }

    // Box less what is not air; what is left out (pedals, pockets, sitters) is within the uncertainty of the sizes.
    internal static double AirM3(CabinLayout cabin)
    {
        CabinMeasurements m = cabin.M;
        double width = m.ShoulderWidthM, height = cabin.Interior.Size.Z;
        double screen = 0.5 * (cabin.ScreenBaseX - cabin.HeaderX) * (height - m.DashHeightM) * width;
        double rear = 0.5 * (cabin.RearHeaderX - cabin.RearX) * (height - cabin.ShelfZ) * width;
        double dash = m.DashDepthM * Math.Min(0.30, m.DashHeightM) * width;
        double lean = (cabin.HalfWidth - cabin.RoofHalfWidth) * (height - m.SillHeightM) * (cabin.HeaderX - cabin.RearHeaderX);
        double boot = cabin.Traits.ParcelShelf ? m.BehindLastRowM * cabin.ShelfZ * width : 0;
        double underLoadFloor = cabin.Traits.LoadSpace ? m.BehindLastRowM * LoadFloorM * width : 0;
        double seats = cabin.Seats.Sum(s => s.Backrest.VolumeM3 + s.Cushion.VolumeM3 + s.Headrest.VolumeM3);
        return cabin.Interior.VolumeM3 - screen - rear - dash - lean - boot - underLoadFloor - seats;
    }

    private static double HeadRoom(double heightM, Seat seat) =>
        ((heightM - seat.ReferencePoint.Z) / Math.Cos(Angles.DegToRad(TorsoLeanDeg))) + HeadRoomExtraM;
}
