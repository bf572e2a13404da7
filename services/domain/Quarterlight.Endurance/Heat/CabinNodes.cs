namespace Quarterlight.Endurance.Heat;

/// <summary>Sizes of the two-node cabin.</summary>
/// <param name="AirJPerK">Heat capacity of air and what follows it closely, J/K, above 0.</param>
/// <param name="InteriorJPerK">Heat capacity of trim and seats, J/K, above 0.</param>
/// <param name="InteriorWPerK">Exchange between the two, W/K, above 0.</param>
/// <param name="SunToAir">Share of the sun that warms the air at once, 0 to 1.</param>
public sealed record CabinNodes(double AirJPerK, double InteriorJPerK, double InteriorWPerK, double SunToAir)
{
    /// <summary>Fitted to the mean warm-up of parked cars (rms 0.35 K; only ratios are identified), for a cabin of 3 m3.</summary>
    public static CabinNodes Reference { get; } = new(30_000, 30_000, 40, 0.7);

    /// <summary>The same scaled with the air in the cabin: capacities with the volume, exchange with its power 2/3 (judgement).</summary>
    public static CabinNodes ForVolume(double volumeM3)
    {
        double ratio = volumeM3 / 3;
        return Reference with { AirJPerK = 30_000 * ratio, InteriorJPerK = 30_000 * ratio, InteriorWPerK = 40 * Math.Pow(ratio, 2.0 / 3) };
    }
}
