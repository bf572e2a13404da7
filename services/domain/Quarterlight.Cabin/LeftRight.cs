namespace Quarterlight.Cabin;

/// <summary>
/// Turns a left-hand drive cabin into its mirror image. Names by role (driver, passenger) stay; left and right change
/// places, so "rear left door (driver side)" becomes "rear right door (driver side)".
/// </summary>
internal static class LeftRight
{
    public static CabinGeometry Mirrored(CabinGeometry cabin) => new()
    {
        Spec = cabin.Spec,
        Measurements = cabin.Measurements,
        Interior = cabin.Interior.MirroredLeftRight(),
        Seats = [.. cabin.Seats.Select(Mirrored).OrderBy(s => s.Row).ThenBy(s => SeatOrder(s.Id))],
        Sites = [.. cabin.Sites.Select(Mirrored)],
        Occluders = cabin.Occluders.Select(Mirrored).ToArray(),
        Windows = [.. cabin.Windows.Select(Mirrored)],
        Glazing = [.. cabin.Glazing.Select(g => g with { Id = Swapped(g.Id), OutwardNormal = g.OutwardNormal.MirroredLeftRight() })],
        Trim = [.. cabin.Trim.Select(t => t with { Face = Mirrored(t.Face) })],
        NoisePorts = [.. cabin.NoisePorts.Select(p => new NoisePort(Swapped(p.Id), p.Kind, p.Position.MirroredLeftRight()))],
        AirbagZones = [.. cabin.AirbagZones.Select(z => new AirbagZone(Swapped(z.Name), z.Box.MirroredLeftRight()))],
        Mirror = cabin.Mirror is { } m ? m with { Center = m.Center.MirroredLeftRight(), Normal = m.Normal.MirroredLeftRight() } : null,
        DriverEye = cabin.DriverEye.MirroredLeftRight(),
        DriverView = cabin.DriverView.MirroredLeftRight(),
        Outline = [.. cabin.Outline.Select(s => s with { Points = [.. s.Points.Select(p => p.MirroredLeftRight())] })],
        AirVolumeM3 = cabin.AirVolumeM3,
    };

    /// <summary>The same words with left and right in each other's place.</summary>
    public static string Swapped(string words) => words
        .Replace("left", "\0", StringComparison.Ordinal)
        .Replace("right", "left", StringComparison.Ordinal)
        .Replace("\0", "right", StringComparison.Ordinal);

    private static int SeatOrder(string id) => id switch
    {
        "driver" => 0,
        "front-centre" => 1,
        "front-passenger" => 2,
        _ when id.EndsWith("-left", StringComparison.Ordinal) => 3,
        _ when id.EndsWith("-centre", StringComparison.Ordinal) => 4,
        _ => 5,
    };

    private static Seat Mirrored(Seat seat) => seat with
    {
        Id = Swapped(seat.Id),
        ReferencePoint = seat.ReferencePoint.MirroredLeftRight(),
        Backrest = seat.Backrest.MirroredLeftRight(),
        Headrest = seat.Headrest.MirroredLeftRight(),
        Cushion = seat.Cushion.MirroredLeftRight(),
    };

    private static MountSite Mirrored(MountSite site) => site with
    {
        Id = Swapped(site.Id),
        Words = Swapped(site.Words),
        Position = site.Position.MirroredLeftRight(),
        Normal = site.Normal.MirroredLeftRight(),
        AirbagZone = site.AirbagZone is null ? null : Swapped(site.AirbagZone),
        PaneId = site.PaneId is null ? null : Swapped(site.PaneId),
        SeatId = site.SeatId is null ? null : Swapped(site.SeatId),
    };

    private static Occluder Mirrored(Occluder occluder) => occluder switch
    {
        BoxOccluder box => new BoxOccluder(Swapped(box.Name), box.Box.MirroredLeftRight()),
        PostOccluder post => new PostOccluder(Swapped(post.Name), post.Start.MirroredLeftRight(), post.End.MirroredLeftRight(), post.RadiusM),
        BallOccluder ball => new BallOccluder(Swapped(ball.Name), ball.Center.MirroredLeftRight(), ball.RadiusM),
        _ => throw new ArgumentException("Unknown kind of occluder.", nameof(occluder)),
    };

    private static WindowPane Mirrored(WindowPane pane) =>
        new(Swapped(pane.Id), Mirrored(pane.Face), pane.Glass.MirroredLeftRight(), pane.Moves);

    private static CabinFace Mirrored(CabinFace face) => face switch
    {
        CabinFace.Left => CabinFace.Right,
        CabinFace.Right => CabinFace.Left,
        _ => face,
    };
}
