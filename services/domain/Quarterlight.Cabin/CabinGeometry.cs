using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A face of the cabin box.</summary>
public enum CabinFace
{
    /// <summary>Windscreen and dash, +x end.</summary>
    Front,

    /// <summary>Rear glass, bulkhead or last backrest, -x end.</summary>
    Rear,

    /// <summary>Left side, +y.</summary>
    Left,

    /// <summary>Right side, -y.</summary>
    Right,

    /// <summary>Headliner.</summary>
    Roof,

    /// <summary>Floor with seats.</summary>
    Floor,
}

/// <summary>Trim that absorbs sound; how much each absorbs is the acoustics room's business.</summary>
public enum TrimMaterial
{
    /// <summary>Needle felt headliner.</summary>
    Headliner,

    /// <summary>Glass.</summary>
    Glazing,

    /// <summary>Carpet on foam.</summary>
    Carpet,

    /// <summary>Cloth seats.</summary>
    ClothSeat,

    /// <summary>Leather seats.</summary>
    LeatherSeat,

    /// <summary>Plastic trim.</summary>
    PlasticTrim,
}

/// <summary>A share of one face's area; the shares of a face sum to 1.</summary>
/// <param name="Face">Face of the cabin box.</param>
/// <param name="Material">Trim.</param>
/// <param name="AreaFraction">Share of the face's area, 0 to 1.</param>
public sealed record TrimShare(CabinFace Face, TrimMaterial Material, double AreaFraction);

/// <summary>A side window.</summary>
/// <param name="Id">front-left, front-right, rear-left, rear-right; third-left, third-right beside a third row; load-left, load-right beside a load space.</param>
/// <param name="Face">Left or right.</param>
/// <param name="Glass">Extent of the glass (a box with no thickness in y), metres.</param>
/// <param name="Moves">True when it winds down.</param>
public sealed record WindowPane(string Id, CabinFace Face, Box3D Glass, bool Moves);

/// <summary>Where noise enters the cabin.</summary>
public enum NoisePortKind
{
    /// <summary>Engine through the bulkhead, the rear bulkhead or under the rear seat; the motor of an electric car.</summary>
    Engine,

    /// <summary>A tyre through floor and wheel arch.</summary>
    Tyre,

    /// <summary>Wind at a windscreen pillar and side glass.</summary>
    Wind,

    /// <summary>A side window, when open.</summary>
    Window,

    /// <summary>An air vent.</summary>
    Vent,

    /// <summary>Rain on the roof.</summary>
    Roof,
}

/// <summary>A point where noise enters the cabin.</summary>
/// <param name="Id">Such as engine, tyre-front-left, wind-left, window-front-left, vent-centre, roof.</param>
/// <param name="Kind">What enters there.</param>
/// <param name="Position">Metres.</param>
public sealed record NoisePort(string Id, NoisePortKind Kind, Vector3D Position);

/// <summary>A volume in which an airbag deploys or slides past.</summary>
/// <param name="Name">In words, such as "passenger's front airbag".</param>
/// <param name="Box">Extent, metres.</param>
public sealed record AirbagZone(string Name, Box3D Box);

/// <summary>The interior mirror's glass.</summary>
/// <param name="Center">Metres.</param>
/// <param name="Normal">Unit vector out of the glass.</param>
/// <param name="WidthM">Width in metres.</param>
/// <param name="HeightM">Height in metres.</param>
public sealed record InteriorMirror(Vector3D Center, Vector3D Normal, double WidthM, double HeightM);

/// <summary>A cabin worked out in space: everything the other rooms need of a car.</summary>
public sealed class CabinGeometry
{
    /// <summary>The car as described.</summary>
    public required CabinSpec Spec { get; init; }

    /// <summary>Measurements in force: the user's, or the template's.</summary>
    public required CabinMeasurements Measurements { get; init; }

    /// <summary>The box that stands for the air space, metres.</summary>
    public required Box3D Interior { get; init; }

    /// <summary>Seats, driver first, then by row.</summary>
    public required IReadOnlyList<Seat> Seats { get; init; }

    /// <summary>Where microphones can go.</summary>
    public required IReadOnlyList<MountSite> Sites { get; init; }

    /// <summary>What cuts sight lines, heads aside.</summary>
    public required IReadOnlyList<Occluder> Occluders { get; init; }

    /// <summary>Side windows.</summary>
    public required IReadOnlyList<WindowPane> Windows { get; init; }

    /// <summary>All glass: windscreen, rear glass where there is one, every side window, a glass roof.</summary>
    public required IReadOnlyList<GlazingPane> Glazing { get; init; }

    /// <summary>What the faces of the box are made of.</summary>
    public required IReadOnlyList<TrimShare> Trim { get; init; }

    /// <summary>Where noise enters.</summary>
    public required IReadOnlyList<NoisePort> NoisePorts { get; init; }

    /// <summary>Airbag deployment zones; empty without airbags.</summary>
    public required IReadOnlyList<AirbagZone> AirbagZones { get; init; }

    /// <summary>Interior mirror; null in a car without rear view.</summary>
    public required InteriorMirror? Mirror { get; init; }

    /// <summary>The driver's eyes, midpoint, metres.</summary>
    public required Vector3D DriverEye { get; init; }

    /// <summary>What the driver must see.</summary>
    public required DriverView DriverView { get; init; }

    /// <summary>Lines that draw the cabin from above and from the side.</summary>
    public required IReadOnlyList<OutlineStroke> Outline { get; init; }

    /// <summary>
    /// Air in the cabin in cubic metres: the box less the wedges under the glass, the dash, the seats and a closed boot.
    /// Derived; the box itself is larger, since it holds every mount site.
    /// </summary>
    public required double AirVolumeM3 { get; init; }

    /// <summary>The seat with this id, or null.</summary>
    public Seat? FindSeat(string id) => Seats.FirstOrDefault(s => s.Id == id);

    /// <summary>The site with this id, or null.</summary>
    public MountSite? FindSite(string id) => Sites.FirstOrDefault(s => s.Id == id);
}
