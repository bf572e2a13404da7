using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Typical sizes of a body style; no one car.</summary>
public sealed record CabinTemplate
{
    /// <summary>Body style.</summary>
    public required BodyStyle Body { get; init; }

    /// <summary>Sizes, metres.</summary>
    public required CabinMeasurements Measurements { get; init; }

    /// <summary>Origin of each size, by the field names of <see cref="CabinRules"/>.</summary>
    public required IReadOnlyDictionary<string, Provenance> Origins { get; init; }

    /// <summary>True when cars of this shape have airbags.</summary>
    public required bool HasAirbags { get; init; }

    /// <summary>Boot apart from the passengers' space, cubic metres (judgement); zero where the load space is open.</summary>
    public double SeparateLuggageM3 { get; init; }

    /// <summary>Size class it should fall into; null for bodies that are not classed by volume (vans, pickups, sport utility cars).</summary>
    public VolumeClass? VolumeClass { get; init; }
}
