using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>What riggers call the places in a car, after phrases have been joined.</summary>
public static class SiteWords
{
    private static readonly Dictionary<string, MountFamily[]> Families = new()
    {
        ["visor"] = [MountFamily.Visor],
        ["mirror"] = [MountFamily.MirrorFoot],
        ["dash"] = [MountFamily.DashTop, MountFamily.DashFace],
        ["dashtop"] = [MountFamily.DashTop],
        ["dashface"] = [MountFamily.DashFace],
        ["glovebox"] = [MountFamily.DashFace],
        ["vent"] = [MountFamily.DashFace],
        ["console"] = [MountFamily.CentreConsole],
        ["cupholder"] = [MountFamily.CentreConsole],
        ["armrest"] = [MountFamily.DoorCard, MountFamily.CentreConsole],
        ["apillar"] = [MountFamily.APillar],
        ["bpillar"] = [MountFamily.BPillar],
        ["cpillar"] = [MountFamily.CPillar],
        ["pillar"] = [MountFamily.APillar, MountFamily.BPillar, MountFamily.CPillar],
        ["pillars"] = [MountFamily.APillar, MountFamily.BPillar, MountFamily.CPillar],
        ["door"] = [MountFamily.DoorCard],
        ["windscreen"] = [MountFamily.FixedGlass],
        ["rearglass"] = [MountFamily.FixedGlass],
        ["window"] = [MountFamily.MovingGlass, MountFamily.FixedGlass],
        ["windows"] = [MountFamily.MovingGlass, MountFamily.FixedGlass],
        ["headliner"] = [MountFamily.Headliner],
        ["headrest"] = [MountFamily.HeadrestPost],
        ["seatback"] = [MountFamily.SeatBack],
        ["shelf"] = [MountFamily.ParcelShelf],
        ["floor"] = [MountFamily.Floor],
        ["grabhandle"] = [MountFamily.GrabHandle],
        ["bulkhead"] = [MountFamily.Bulkhead],
        ["bodyworn"] = [MountFamily.BodyWorn],
    };

    private static readonly Dictionary<MountFamily, string> Spoken = new()
    {
        [MountFamily.Visor] = "visor",
        [MountFamily.MirrorFoot] = "mirror foot",
        [MountFamily.DashTop] = "dash top",
        [MountFamily.DashFace] = "dash face",
        [MountFamily.CentreConsole] = "centre console",
        [MountFamily.APillar] = "windscreen pillar",
        [MountFamily.BPillar] = "belt pillar",
        [MountFamily.CPillar] = "rear pillar",
        [MountFamily.DoorCard] = "door",
        [MountFamily.FixedGlass] = "fixed glass",
        [MountFamily.MovingGlass] = "side window",
        [MountFamily.Headliner] = "headliner",
        [MountFamily.HeadrestPost] = "headrest post",
        [MountFamily.SeatBack] = "seat back",
        [MountFamily.ParcelShelf] = "parcel shelf",
        [MountFamily.Floor] = "floor",
        [MountFamily.GrabHandle] = "grab handle",
        [MountFamily.Bulkhead] = "bulkhead",
        [MountFamily.BodyWorn] = "body-worn",
    };

    /// <summary>Words that single out one place of a family.</summary>
    public static IReadOnlySet<string> Qualifiers { get; } = Lexicon.Words("inner outer middle centre center upper lower low high front rear top bottom edge corner above pocket armrest between glovebox vent cupholder far inside outside");

    /// <summary>Every word for a place or one of its kinds.</summary>
    public static IReadOnlySet<string> All { get; } = new HashSet<string>(Families.Keys.Concat(Qualifiers).Concat(Phrases.Words));

    /// <summary>Families a word can mean; empty when it means none.</summary>
    public static IReadOnlyList<MountFamily> FamiliesOf(Token token)
    {
        ArgumentNullException.ThrowIfNull(token);
        return token.Number is null && Families.TryGetValue(token.Word, out MountFamily[]? families) ? families : [];
    }

    /// <summary>A family as people say it.</summary>
    public static string Say(MountFamily family) => Spoken.GetValueOrDefault(family, "place");
}
