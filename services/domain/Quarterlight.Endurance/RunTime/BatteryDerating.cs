using Quarterlight.Quantities;

namespace Quarterlight.Endurance.RunTime;

/// <summary>What share of its rated energy a battery gives, by what it is made of, its temperature and its age.</summary>
/// <remarks>
/// Straight lines between points; docs/models/run-time.md has them with their origin. Seen: the discharge range of
/// lithium-ion in a pack's data sheet, lead-acid from 0 °C on in a maker's table. The rest is from memory: cell curves at low rate.
/// </remarks>
public static class BatteryDerating
{
    /// <summary>Temperature a battery may be asked about.</summary>
    public static ValidRange Temperature { get; } = new(-40, 80, "°C");

    /// <summary>Age.</summary>
    public static ValidRange Age { get; } = new(0, 15, "years");

    /// <summary>Temperatures at which most batteries may be discharged: a lithium-ion pack's data sheet; for the other kinds by judgement.</summary>
    public static ValidRange Discharge { get; } = new(-20, 60, "°C");

    /// <summary>The same for lithium cells that are not rechargeable (from memory).</summary>
    public static ValidRange LithiumPrimaryDischarge { get; } = new(-40, 60, "°C");

    /// <summary>Above this a battery is hot: it ages fast and must not be charged, degrees Celsius (a pack's data sheet: charge 10 to 45 °C).</summary>
    public const double HotC = 45;

    /// <summary>Where the curves come from.</summary>
    public static Provenance Provenance { get; } = new("discharge -20 to 60 °C and charge 10 to 45 °C: a lithium-ion pack data sheet; lead-acid from 0 °C on: a maker's table; other shares by temperature and age: typical cell curves, from memory", Trust.FromMemory);

    // Share of the energy at 25 °C. Lithium-ion at 0, -10 and -20 °C: the middle of 80-90, 65-80 and 50-65 percent.
    private static readonly PointCurve s_lithiumIon = new((-20, 0.575), (-10, 0.725), (0, 0.85), (25, 1));
    private static readonly PointCurve s_lithiumIronPhosphate = new((-20, 0.5), (-10, 0.65), (0, 0.8), (25, 1));
    private static readonly PointCurve s_nickelMetalHydride = new((-20, 0.4), (-10, 0.6), (0, 0.8), (20, 1), (40, 1), (60, 0.85));
    private static readonly PointCurve s_alkaline = new((-20, 0.15), (-10, 0.3), (0, 0.5), (10, 0.75), (20, 1));
    private static readonly PointCurve s_lithiumPrimary = new((-40, 0.4), (-20, 0.7), (0, 0.9), (20, 1));

    // 0 °C and above: a maker's table for discharges of more than an hour; what it gives above 1 is left in hand. Below: from memory.
    private static readonly PointCurve s_leadAcid = new((-20, 0.55), (0, 0.84), (5, 0.88), (10, 0.9), (15, 0.94), (20, 0.99), (25, 1));

    // Share left by age in years, kept well. From memory.
    private static readonly PointCurve s_lithiumIonAge = new((0, 1), (5, 0.8), (15, 0.4));
    private static readonly PointCurve s_lithiumIronPhosphateAge = new((0, 1), (10, 0.8), (15, 0.7));
    private static readonly PointCurve s_nickelMetalHydrideAge = new((0, 1), (5, 0.75), (15, 0.25));
    private static readonly PointCurve s_alkalineAge = new((0, 1), (5, 0.85), (10, 0.7), (15, 0.5));
    private static readonly PointCurve s_lithiumPrimaryAge = new((0, 1), (10, 0.9), (15, 0.8));
    private static readonly PointCurve s_leadAcidAge = new((0, 1), (4, 0.8), (8, 0.5), (15, 0.2));

    /// <summary>Temperatures at which this kind may be discharged.</summary>
    /// <param name="chemistry">What it is made of.</param>
    public static ValidRange DischargeOf(BatteryChemistry chemistry) => chemistry == BatteryChemistry.LithiumPrimary ? LithiumPrimaryDischarge : Discharge;

    /// <summary>Share of the rated energy, 0 to 1; 0 outside the temperatures at which it may be discharged.</summary>
    /// <param name="chemistry">What it is made of.</param>
    /// <param name="batteryC">Temperature of the battery, degrees Celsius, -40 to 80.</param>
    /// <param name="ageYears">Age, years, 0 to 15.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the chemistry is none.</exception>
    public static double Share(BatteryChemistry chemistry, double batteryC, double ageYears)
    {
        if (!Temperature.Contains(batteryC))
        {
            throw new ArgumentOutOfRangeException(nameof(batteryC), batteryC, "-40 to 80 °C.");
        }

        if (!Age.Contains(ageYears))
        {
            throw new ArgumentOutOfRangeException(nameof(ageYears), ageYears, "0 to 15 years.");
        }

        (PointCurve byTemperature, PointCurve byAge) = chemistry switch
        {
            BatteryChemistry.LithiumIon => (s_lithiumIon, s_lithiumIonAge),
            BatteryChemistry.LithiumIronPhosphate => (s_lithiumIronPhosphate, s_lithiumIronPhosphateAge),
            BatteryChemistry.NickelMetalHydride => (s_nickelMetalHydride, s_nickelMetalHydrideAge),
            BatteryChemistry.Alkaline => (s_alkaline, s_alkalineAge),
            BatteryChemistry.LithiumPrimary => (s_lithiumPrimary, s_lithiumPrimaryAge),
            BatteryChemistry.LeadAcid => (s_leadAcid, s_leadAcidAge),
            _ => throw new ArgumentOutOfRangeException(nameof(chemistry), chemistry, "One of the six chemistries."),
        };
        return DischargeOf(chemistry).Contains(batteryC) ? byTemperature.At(batteryC) * byAge.At(ageYears) : 0;
    }
}
