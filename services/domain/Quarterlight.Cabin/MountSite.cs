using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>What a mount site belongs to.</summary>
public enum MountFamily
{
    /// <summary>Sun visor.</summary>
    Visor,

    /// <summary>Foot of the interior mirror.</summary>
    MirrorFoot,

    /// <summary>Top of the dash.</summary>
    DashTop,

    /// <summary>Face of the dash.</summary>
    DashFace,

    /// <summary>Centre console or the floor tunnel between the front seats.</summary>
    CentreConsole,

    /// <summary>Windscreen pillar.</summary>
    APillar,

    /// <summary>Pillar between the rows.</summary>
    BPillar,

    /// <summary>Rearmost pillar.</summary>
    CPillar,

    /// <summary>Door card.</summary>
    DoorCard,

    /// <summary>Glass that does not move.</summary>
    FixedGlass,

    /// <summary>Side glass that winds down.</summary>
    MovingGlass,

    /// <summary>Headliner.</summary>
    Headliner,

    /// <summary>Headrest post.</summary>
    HeadrestPost,

    /// <summary>Back of a seat, facing the row behind.</summary>
    SeatBack,

    /// <summary>Shelf under the rear glass.</summary>
    ParcelShelf,

    /// <summary>Floor.</summary>
    Floor,

    /// <summary>Grab handle above a door.</summary>
    GrabHandle,

    /// <summary>Bulkhead behind the seats.</summary>
    Bulkhead,

    /// <summary>A talker's own clothing.</summary>
    BodyWorn,
}

/// <summary>What a surface is made of, as far as fixing to it matters.</summary>
public enum SurfaceMaterial
{
    /// <summary>Glass.</summary>
    Glass,

    /// <summary>Hard smooth plastic.</summary>
    HardPlastic,

    /// <summary>Soft or grained plastic.</summary>
    SoftPlastic,

    /// <summary>Woven or felted cloth.</summary>
    Cloth,

    /// <summary>Leather or artificial leather.</summary>
    Leather,

    /// <summary>Carpet.</summary>
    Carpet,

    /// <summary>Bare or plated metal.</summary>
    Metal,

    /// <summary>Painted metal.</summary>
    PaintedMetal,

    /// <summary>A talker's clothing.</summary>
    Clothing,
}

/// <summary>How a microphone is held. A set, so that a site can list all it permits.</summary>
[Flags]
public enum Fixings
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Spring clip over an edge or a lamella.</summary>
    SpringClip = 1,

    /// <summary>Suction cup with a tether; glass or hard smooth plastic only.</summary>
    SuctionCup = 2,

    /// <summary>Articulated arm on a clamp.</summary>
    ArticulatedArm = 4,

    /// <summary>Matt paper tape.</summary>
    PaperTape = 8,

    /// <summary>Elastic tie round a post or handle.</summary>
    ElasticTie = 16,

    /// <summary>Weighted base standing on a level surface.</summary>
    WeightedBase = 32,

    /// <summary>Worn under or on clothing.</summary>
    BodyMount = 64,
}

/// <summary>How much the car shakes a site.</summary>
public enum VibrationGrade
{
    /// <summary>Padded or hung: headliner, visor, headrest, clothing.</summary>
    Low,

    /// <summary>Trim: pillars, door cards, console.</summary>
    Medium,

    /// <summary>Near wheels or bulkhead, or glass: floor, windscreen, dash.</summary>
    High,
}

/// <summary>A place in a cabin where a microphone can be fixed. Made from the cabin's geometry, never typed per scene.</summary>
public sealed record MountSite
{
    /// <summary>Stable id within the cabin: lower-case words and dashes, such as <c>visor-passenger-inner</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Where it is, in words a rigger uses, such as "passenger visor, inner edge".</summary>
    public required string Words { get; init; }

    /// <summary>What it belongs to.</summary>
    public required MountFamily Family { get; init; }

    /// <summary>Point on the surface, metres.</summary>
    public required Vector3D Position { get; init; }

    /// <summary>Unit vector away from the surface, into the cabin.</summary>
    public required Vector3D Normal { get; init; }

    /// <summary>What the surface is made of.</summary>
    public required SurfaceMaterial Material { get; init; }

    /// <summary>Everything that may hold a microphone here.</summary>
    public required Fixings PermittedFixings { get; init; }

    /// <summary>Free depth in metres in front of the surface for capsule and fixing, heads aside.</summary>
    public required double FreeDepthM { get; init; }

    /// <summary>Name of the airbag deployment zone it is in; null when in none.</summary>
    public string? AirbagZone { get; init; }

    /// <summary>True when a microphone here would stand in the driver's view of road, mirrors or instruments.</summary>
    public bool InDriverView { get; init; }

    /// <summary>True on glass that winds down.</summary>
    public bool OnMovingGlass { get; init; }

    /// <summary>Pane id when on side glass.</summary>
    public string? PaneId { get; init; }

    /// <summary>True within 0.25 m of an air vent.</summary>
    public bool NearVent { get; init; }

    /// <summary>True within 0.25 m of a loudspeaker.</summary>
    public bool NearLoudspeaker { get; init; }

    /// <summary>How much the car shakes it.</summary>
    public required VibrationGrade Vibration { get; init; }

    /// <summary>The seat it belongs to, if it does: whose visor, door or headrest it is.</summary>
    public string? SeatId { get; init; }
}
