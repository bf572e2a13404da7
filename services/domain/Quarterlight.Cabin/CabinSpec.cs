namespace Quarterlight.Cabin;

/// <summary>Shape of the car, each with its own template of interior sizes.</summary>
public enum BodyStyle
{
    /// <summary>Small hatchback, two rows.</summary>
    SmallHatch,

    /// <summary>Three-box saloon, two rows, parcel shelf.</summary>
    Saloon,

    /// <summary>Estate, two rows and a load space.</summary>
    Estate,

    /// <summary>Two-door coupe with small rear seats.</summary>
    Coupe,

    /// <summary>Tall two-row sport utility car.</summary>
    Suv,

    /// <summary>People carrier, three rows.</summary>
    PeopleCarrier,

    /// <summary>Double-cab pickup.</summary>
    Pickup,

    /// <summary>Panel van: one row of three and a bulkhead.</summary>
    PanelVan,

    /// <summary>Older saloon with bench seats and no airbags.</summary>
    BenchSeatClassic,
}

/// <summary>Side the driver sits on.</summary>
public enum DriveSide
{
    /// <summary>Left-hand drive.</summary>
    Left,

    /// <summary>Right-hand drive.</summary>
    Right,
}

/// <summary>Where the engine is, or that the car is electric.</summary>
public enum EngineLayout
{
    /// <summary>In front of the bulkhead.</summary>
    Front,

    /// <summary>Behind the front seats.</summary>
    Middle,

    /// <summary>Behind the rear axle.</summary>
    Rear,

    /// <summary>Electric motor; no combustion noise.</summary>
    Electric,
}

/// <summary>What the seats are covered with. Nothing sticks to leather.</summary>
public enum Upholstery
{
    /// <summary>Woven cloth.</summary>
    Cloth,

    /// <summary>Leather or artificial leather.</summary>
    Leather,
}

/// <summary>
/// The tape measurements that size a cabin, all in metres, all taken inside with the front seats where the scene has them.
/// </summary>
public sealed record CabinMeasurements
{
    /// <summary>Trim to trim across the front seats at shoulder height.</summary>
    public required double ShoulderWidthM { get; init; }

    /// <summary>Floor to headliner above the front seats.</summary>
    public required double FrontHeightM { get; init; }

    /// <summary>Floor to headliner above the last row (the front row in a one-row car).</summary>
    public required double RearHeightM { get; init; }

    /// <summary>Rear edge of the dash to the front seat's backrest at chest height.</summary>
    public required double DashToBackrestM { get; init; }

    /// <summary>Depth of the dash top, from its rear edge to the base of the windscreen.</summary>
    public required double DashDepthM { get; init; }

    /// <summary>Floor to the top of the dash.</summary>
    public required double DashHeightM { get; init; }

    /// <summary>Front of one row's backrest to the front of the next row's; ignored in a one-row car.</summary>
    public required double RowSpacingM { get; init; }

    /// <summary>Behind the last backrest to the rear glass or bulkhead at shoulder height.</summary>
    public required double BehindLastRowM { get; init; }

    /// <summary>Between the centres of the two front seats.</summary>
    public required double SeatSpacingM { get; init; }

    /// <summary>Floor to the front seat's cushion, pressed.</summary>
    public required double CushionHeightM { get; init; }

    /// <summary>Floor to the lower edge of the side glass.</summary>
    public required double SillHeightM { get; init; }
}

/// <summary>A car as its user describes it.</summary>
public sealed record CabinSpec
{
    /// <summary>Shape; decides rows, seats and what there is to fix to.</summary>
    public required BodyStyle Body { get; init; }

    /// <summary>Side the driver sits on.</summary>
    public required DriveSide DriveSide { get; init; }

    /// <summary>Where the engine is.</summary>
    public required EngineLayout Engine { get; init; }

    /// <summary>What the seats are covered with.</summary>
    public Upholstery Upholstery { get; init; } = Upholstery.Cloth;

    /// <summary>Tape measurements; null takes the template's.</summary>
    public CabinMeasurements? Measurements { get; init; }

    /// <summary>True when the car has airbags; null takes the template's (all but the classic have them).</summary>
    public bool? HasAirbags { get; init; }

    /// <summary>True when the roof is glass over the front seats.</summary>
    public bool GlassRoof { get; init; }
}
