using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A size class by interior volume index (passenger and luggage volume), cubic metres.</summary>
/// <param name="Name">Name in the regulation, such as "midsize".</param>
/// <param name="LowM3">Lower limit, cubic metres.</param>
/// <param name="HighM3">Upper limit, cubic metres; infinite for the largest class.</param>
public sealed record VolumeClass(string Name, double LowM3, double HighM3)
{
    /// <summary>Where the limits come from.</summary>
    public static Provenance Origin { get; } = new("40 CFR 600.315-08, class limits in cubic feet, as repeated in secondary copies", Trust.Published);

    /// <summary>Subcompact car, 85 to 100 cubic feet.</summary>
    public static VolumeClass Subcompact { get; } = new("subcompact", 2.407, 2.832);

    /// <summary>Midsize car, 110 to 120 cubic feet.</summary>
    public static VolumeClass Midsize { get; } = new("midsize", 3.115, 3.398);

    /// <summary>Midsize station wagon, 130 to 160 cubic feet.</summary>
    public static VolumeClass MidsizeWagon { get; } = new("midsize wagon", 3.681, 4.531);
}
