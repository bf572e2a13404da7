using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Looks a place as said up among the sites a car has.</summary>
public static class SiteFinder
{
    /// <summary>Id that stands for a talker's own clothing in every car.</summary>
    public const string BodyWornId = "body-worn";

    private const double CentreHalfWidthM = 0.12;

    // What was said outweighs what is merely near, and a seat that was said outweighs both.
    private const double QualifierWeight = 2.5;

    /// <summary>Most sites looked into for one question.</summary>
    public const int MostSites = 6;

    /// <summary>The sites meant, the best fit first; all fit equally well. Empty when the car has no such place.</summary>
    /// <param name="said">The place.</param>
    /// <param name="talkerSeatId">Seat of the talker it is for, or null.</param>
    /// <param name="sites">Sites of the car.</param>
    /// <param name="seats">Seats of the car.</param>
    /// <param name="driverOnLeft">True in a left-hand-drive car.</param>
    public static IReadOnlyList<MountSite> Find(SiteMention said, string? talkerSeatId, IReadOnlyList<MountSite> sites, IReadOnlyList<Seat> seats, bool driverOnLeft)
    {
        ArgumentNullException.ThrowIfNull(said);
        ArgumentNullException.ThrowIfNull(sites);
        ArgumentNullException.ThrowIfNull(seats);
        if (said.SiteId is { } chosen && sites.FirstOrDefault(s => s.Id == chosen) is { } site)
        {
            return [site];
        }

        if (said.Families.Contains(MountFamily.BodyWorn))
        {
            return [new MountSite { Id = BodyWornId, Words = "the talker's own clothing", Family = MountFamily.BodyWorn }];
        }

        Seat? seat = SeatSaid(said, seats, driverOnLeft);
        Seat? near = seat ?? seats.FirstOrDefault(s => s.Id == talkerSeatId);
        var scored = sites.Where(s => said.Families.Contains(s.Family) && Belongs(said, s)).Select(s => (Site: s, Score: Score(said, s, seat, near, seats, driverOnLeft))).ToArray();
        if (scored.Length == 0)
        {
            return [];
        }

        double best = scored.Max(s => s.Score);
        return [.. scored.Where(s => s.Score > best - 1e-6).Select(s => s.Site).OrderBy(s => Distance(s, near)).Take(MostSites)];
    }

    private static Seat? SeatSaid(SiteMention said, IReadOnlyList<Seat> seats, bool driverOnLeft) =>
        said.Seat?.SeatIds(driverOnLeft).Select(id => seats.FirstOrDefault(s => s.Id == id)).FirstOrDefault(s => s is not null);

    // Glass words name one pane among the fixed ones, which the family alone does not.
    private static bool Belongs(SiteMention said, MountSite site) => said.Word switch
    {
        "windscreen" => site.Id.StartsWith("windscreen", StringComparison.Ordinal),
        "rearglass" => site.Id.StartsWith("rear-glass", StringComparison.Ordinal),
        "window" or "windows" => site.Id.StartsWith("glass-", StringComparison.Ordinal),
        "glovebox" => site.Id.Contains("passenger", StringComparison.Ordinal),
        "vent" => site.Id.Contains("vent", StringComparison.Ordinal),
        "armrest" => site.Words.Contains("armrest", StringComparison.Ordinal),
        "cupholder" => site.Words.Contains("cup holder", StringComparison.Ordinal),
        _ => true,
    };

    private static double Score(SiteMention said, MountSite site, Seat? seat, Seat? near, IReadOnlyList<Seat> seats, bool driverOnLeft)
    {
        double score = 0;
        HashSet<string> words = [.. Tokenizer.Split(site.Id).Concat(Tokenizer.Split(site.Words)).Select(t => t.Word)];
        foreach (string qualifier in said.Qualifiers)
        {
            // "centre" and "middle" are used for each other, as are "high" and "upper".
            bool fits = words.Contains(qualifier) || (qualifier is "centre" or "center" or "middle" && (words.Contains("centre") || words.Contains("middle")))
                || (qualifier is "high" or "upper" or "top" && (words.Contains("high") || words.Contains("upper") || words.Contains("top")))
                || (qualifier is "low" or "lower" or "bottom" && words.Contains("low")) || (qualifier is "inside" && words.Contains("inner")) || (qualifier is "outside" && words.Contains("outer"));
            score += fits ? QualifierWeight : 0;
        }

        if (seat is not null)
        {
            score += site.SeatId == seat.Id ? 3 : site.SeatId.Length == 0 && SameSide(site, seat) && NearestSeat(site, seats)?.Id == seat.Id ? 3 : SameSide(site, seat) ? 1 : 0;
        }
        else if (near is not null)
        {
            // Only whose place it is was left open: the talker's own side and row is meant.
            score += site.SeatId == near.Id ? 2 : site.SeatId.Length == 0 && SameSide(site, near) && NearestSeat(site, seats)?.Id == near.Id ? 1.5 : SameSide(site, near) ? 0.5 : 0;
        }

        double y = site.Position?.YM ?? 0;
        bool onSaidSide = (said.Side == SeatPlace.Left && y > CentreHalfWidthM) || (said.Side == SeatPlace.Right && y < -CentreHalfWidthM)
            || (said.Side == SeatPlace.Driver && (y > 0) == driverOnLeft);
        return score + (onSaidSide ? 2 : 0);
    }

    private static bool SameSide(MountSite site, Seat seat)
    {
        double s = site.Position?.YM ?? 0, t = seat.ReferencePoint?.YM ?? 0;
        return Math.Abs(t) < CentreHalfWidthM ? Math.Abs(s) < CentreHalfWidthM : s * t > 0 && Math.Abs(s) > CentreHalfWidthM;
    }

    // The head is about 0.2 m behind the hip point of the same seat.
    private static Seat? NearestSeat(MountSite site, IReadOnlyList<Seat> seats) => seats.MinBy(s => Distance(site, s));

    private static double Distance(MountSite site, Seat? seat)
    {
        if (seat?.ReferencePoint is not { } at || site.Position is not { } p)
        {
            return 0;
        }

        double dx = p.XM - (at.XM - 0.17), dy = p.YM - at.YM;
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
