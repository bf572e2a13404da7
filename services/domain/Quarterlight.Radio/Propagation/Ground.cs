using Quarterlight.Quantities;

namespace Quarterlight.Radio.Propagation;

/// <summary>What the ground under the link is.</summary>
public enum GroundKind
{
    /// <summary>Average ground.</summary>
    Average,

    /// <summary>Dry, sandy or rocky ground.</summary>
    Dry,

    /// <summary>Wet ground.</summary>
    Wet,

    /// <summary>Concrete or asphalt over all the width that counts.</summary>
    Paved,

    /// <summary>Fresh water.</summary>
    FreshWater,

    /// <summary>Sea water.</summary>
    SeaWater,
}

/// <summary>Electrical properties of a ground.</summary>
/// <param name="RelativePermittivity">Relative permittivity.</param>
/// <param name="ConductivitySPerM">Conductivity in siemens per metre.</param>
/// <param name="Provenance">Where the two come from.</param>
public sealed record GroundProperties(double RelativePermittivity, double ConductivitySPerM, Provenance Provenance)
{
    private const string Classes = "Classes of ground as radio handbooks give them (after ITU-R P.527)";

    private static readonly GroundProperties[] s_all =
    [
        new(15, 0.005, new("Average ground of antenna handbooks", Trust.FromMemory)),
        new(4, 0.001, new(Classes, Trust.FromMemory)),
        new(30, 0.02, new(Classes, Trust.FromMemory)),
        new(5, 0.005, new("Dry asphalt and concrete", Trust.FromMemory)),
        new(80, 0.003, new(Classes, Trust.FromMemory)),
        new(70, 5, new(Classes, Trust.FromMemory)),
    ];

    /// <summary>Planning values for a kind of ground.</summary>
    public static GroundProperties Of(GroundKind kind) => s_all[(int)kind];
}
