using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>What a drawn line stands for.</summary>
public enum OutlineKind
{
    /// <summary>Outer edge of the cabin.</summary>
    Body,

    /// <summary>Windscreen.</summary>
    Windscreen,

    /// <summary>Roof or headliner.</summary>
    Roof,

    /// <summary>Rear glass.</summary>
    RearGlass,

    /// <summary>Dash.</summary>
    Dash,

    /// <summary>Steering wheel.</summary>
    Wheel,

    /// <summary>Lower edge of the side glass.</summary>
    Sill,

    /// <summary>Pillar.</summary>
    Pillar,

    /// <summary>Parcel shelf.</summary>
    Shelf,
}

/// <summary>Where a line is drawn.</summary>
public enum OutlineView
{
    /// <summary>From above: use x and y.</summary>
    Plan,

    /// <summary>From the side: use x and z.</summary>
    Side,
}

/// <summary>A line for drawing the cabin. Seats are drawn from their boxes, panes from their glass.</summary>
/// <param name="Kind">What it stands for.</param>
/// <param name="View">Where it is drawn.</param>
/// <param name="Points">Points in order, metres; at least two.</param>
/// <param name="Closed">True when the last point joins the first.</param>
public sealed record OutlineStroke(OutlineKind Kind, OutlineView View, IReadOnlyList<Vector3D> Points, bool Closed);
