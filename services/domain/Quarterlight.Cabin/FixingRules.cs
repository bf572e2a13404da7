namespace Quarterlight.Cabin;

/// <summary>
/// What may hold a microphone on what: common practice, no source, except that a suction cup needs a smooth airtight
/// surface and tape needs one that its glue can be peeled from.
/// </summary>
public static class FixingRules
{
    private static readonly Fixings[] Single =
    [
        Fixings.SpringClip, Fixings.SuctionCup, Fixings.ArticulatedArm, Fixings.PaperTape, Fixings.ElasticTie, Fixings.WeightedBase, Fixings.BodyMount,
    ];

    /// <summary>Every fixing a surface permits: what both the shape of the place and the material allow.</summary>
    public static Fixings PermittedOn(MountFamily family, SurfaceMaterial material)
    {
        Fixings permitted = Fixings.None;
        foreach (Fixings one in Single)
        {
            if (WhyNot(one, family, material) is null)
            {
                permitted |= one;
            }
        }

        return permitted;
    }

    /// <summary>Why one fixing is refused at a place of this family and material; null when it is permitted.</summary>
    public static string? WhyNot(Fixings fixing, MountFamily family, SurfaceMaterial material) =>
        WhyNot(fixing, material) ?? WhyNot(fixing, family);

    /// <summary>Why one fixing is refused on this material whatever its shape; null when the material allows it.</summary>
    /// <exception cref="ArgumentException">Not exactly one fixing was named.</exception>
    public static string? WhyNot(Fixings fixing, SurfaceMaterial material) => (Known(fixing), material) switch
    {
        (Fixings.BodyMount, SurfaceMaterial.Clothing) => null,
        (Fixings.BodyMount, _) => "a body mount is worn on clothing, not fixed to the car",
        (_, SurfaceMaterial.Clothing) => "clothing takes a body mount only",
        (Fixings.SuctionCup, SurfaceMaterial.Glass or SurfaceMaterial.HardPlastic or SurfaceMaterial.Metal or SurfaceMaterial.PaintedMetal) => null,
        (Fixings.SuctionCup, SurfaceMaterial.Leather) => "a suction cup leaks on leather and marks it",
        (Fixings.SuctionCup, _) => "a suction cup needs glass or a hard smooth surface; this one lets air in",
        (Fixings.PaperTape, SurfaceMaterial.Leather) => "nothing sticks to leather: paper tape lifts the finish",
        (Fixings.PaperTape, SurfaceMaterial.Carpet) => "tape does not hold on carpet pile",
        (Fixings.PaperTape, SurfaceMaterial.PaintedMetal) => "tape can lift old paint",
        (Fixings.SpringClip or Fixings.ArticulatedArm, SurfaceMaterial.Leather) => "a clamp leaves a mark in leather",
        (Fixings.SpringClip or Fixings.ArticulatedArm, SurfaceMaterial.Glass) => "a clamp has no edge to hold on glass and can chip it",
        (Fixings.SpringClip or Fixings.ArticulatedArm, SurfaceMaterial.Carpet) => "a clamp has nothing to hold on carpet",
        (Fixings.WeightedBase, SurfaceMaterial.Glass) => "a weighted base needs a level surface, not glass",
        _ => null,
    };

    /// <summary>Why one fixing is refused by the shape or use of the place, whatever it is made of; null when it is allowed.</summary>
    /// <exception cref="ArgumentException">Not exactly one fixing was named.</exception>
    public static string? WhyNot(Fixings fixing, MountFamily family) => (Known(fixing), family) switch
    {
        (Fixings.PaperTape, MountFamily.DashTop) => "a dash top in the sun gets hot enough to soften tape glue",
        (Fixings.PaperTape, MountFamily.MovingGlass) => "tape on glass that winds down is dragged into the seal",
        (Fixings.PaperTape, MountFamily.HeadrestPost or MountFamily.MirrorFoot or MountFamily.GrabHandle or MountFamily.Floor) => "the place is too small, round or dirty for tape; clip or tie instead",
        (Fixings.SuctionCup, MountFamily.HeadrestPost or MountFamily.MirrorFoot or MountFamily.GrabHandle or MountFamily.Visor) => "there is no flat patch for a suction cup",
        (Fixings.WeightedBase, MountFamily.DashTop or MountFamily.CentreConsole or MountFamily.ParcelShelf or MountFamily.Floor) => null,
        (Fixings.WeightedBase, _) => "a weighted base needs a level surface",
        (Fixings.ElasticTie, MountFamily.Visor or MountFamily.MirrorFoot or MountFamily.HeadrestPost or MountFamily.GrabHandle or MountFamily.SeatBack) => null,
        (Fixings.ElasticTie, _) => "there is nothing to pass an elastic tie round",
        (Fixings.SpringClip, MountFamily.Visor or MountFamily.MirrorFoot or MountFamily.HeadrestPost or MountFamily.GrabHandle or MountFamily.DoorCard or MountFamily.DashFace or MountFamily.SeatBack or MountFamily.ParcelShelf or MountFamily.CentreConsole) => null,
        (Fixings.SpringClip, _) => "there is no edge for a spring clip",
        (Fixings.ArticulatedArm, MountFamily.MirrorFoot or MountFamily.HeadrestPost or MountFamily.GrabHandle or MountFamily.CentreConsole) => null,
        (Fixings.ArticulatedArm, _) => "there is nothing strong enough to clamp an arm to",
        (Fixings.BodyMount, MountFamily.BodyWorn) => null,
        (Fixings.BodyMount, _) => "a body mount is worn on clothing, not fixed to the car",
        (_, MountFamily.BodyWorn) => "clothing takes a body mount only",
        _ => null,
    };

    private static Fixings Known(Fixings fixing) => Array.IndexOf(Single, fixing) >= 0
        ? fixing
        : throw new ArgumentException("Name exactly one fixing.", nameof(fixing));
}
