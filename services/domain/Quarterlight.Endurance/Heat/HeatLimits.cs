namespace Quarterlight.Endurance.Heat;

/// <summary>What meets a limit.</summary>
internal enum HeatCause
{
    None,
    Warm,
    PastComfortModel,
    Cold,
    WetBulbGlobe,
    HeatIndex,
    Co2,
    Air,
}

/// <summary>Holds a cabin against the three limits.</summary>
/// <remarks>
/// Comfort: PMV 0.7 (ISO 7730 category C) or past the warm end of its range. Caution: WBGT at the recommended alert limit (exposure limit for people used
/// to heat), heat index 90 F, carbon dioxide 2500 ppm. Stop: WBGT at the exposure limit, heat index 103 F, carbon dioxide 5000 ppm, air 40 C (judgement).
/// NIOSH's limits are means over an hour; here they hold at every moment, which is stricter. Children, animals or shut-in people: whatever comes first,
/// or air above 80 F.
/// </remarks>
internal sealed class HeatLimits
{
    /// <summary>Vote that category C of ISO 7730 ends at.</summary>
    public const double ComfortVote = 0.7;

    /// <summary>Air no take goes on in, degrees Celsius (judgement).</summary>
    public const double StopAirC = 40;

    /// <summary>Air that children, animals or shut-in people must not get, degrees Celsius: 80 F, where the heat index begins.</summary>
    public const double StrictestAirC = 26.7;

    /// <summary>Air over the body while rolling and while the fan blows, m/s (judgement).</summary>
    public const double StillMPerS = 0.1, FanMPerS = 0.3;

    private const double CautionIndexF = 90, StopIndexF = 103;

    // Sun on people as a rise of the mean radiant temperature, after the solar part of ASHRAE 55 (from memory): absorptance 0.7, projected share 0.25 with
    // half the body in the sun, radiant coefficient 6.012 on 0.696 of the skin; the light in the cabin is the gain over the floor.
    private const double BodyKPerWPerM2 = 0.7 * 0.25 * 0.5 / (6.012 * 0.696), CabinHeightM = 1.2;

    private readonly double _met, _clo, _radiantPerW;

    public HeatLimits(HeatTask task)
    {
        _met = task.Occupants.ActivityMet;
        _clo = task.Occupants.ClothingClo;
        Strictest = task.Occupants.NeedStrictestLimit;
        _radiantPerW = BodyKPerWPerM2 * CabinHeightM / task.Car.AirVolumeM3;
        double watts = WetBulbGlobe.MetabolicW(_met);
        StopWbgtC = WetBulbGlobe.ExposureLimitC(watts);
        CautionWbgtC = task.Occupants.Acclimatised ? StopWbgtC : Math.Min(StopWbgtC, WetBulbGlobe.AlertLimitC(watts));
    }

    public bool Strictest { get; }

    public double CautionWbgtC { get; }

    public double StopWbgtC { get; }

    /// <summary>Mean radiant temperature on people, degrees Celsius.</summary>
    public double RadiantC(in CabinState state, double sunW) => state.InteriorC + (_radiantPerW * sunW);

    /// <summary>Equation (1) of ISO 7730 for people in the cabin, null outside its range.</summary>
    public double? Pmv(in CabinState state, double sunW, double airSpeed) =>
        ThermalComfort.Pmv(state.AirC, RadiantC(state, sunW), airSpeed, HumidAir.PressureFromRatio(state.WaterRatio), _met, _clo);

    /// <summary>Wet-bulb globe temperature: the globe half way between air and radiant temperature (still air; judgement).</summary>
    public double WbgtC(in CabinState state, double sunW, bool sunlit)
    {
        double wet = WetBulb.OfC(state.AirC, HumidAir.RelativeHumidityPercent(state.AirC, state.WaterRatio)), globe = (state.AirC + RadiantC(state, sunW)) / 2;
        return sunlit ? WetBulbGlobe.SunC(wet, globe, state.AirC) : WetBulbGlobe.ShadeC(wet, globe);
    }

    /// <summary>What a limit is met by while rolling, on its warm side; none while it is kept.</summary>
    public HeatCause Over(HeatLimitKind kind, in CabinState state, double sunW, bool sunlit)
    {
        HeatCause cause = Stop(state, sunW, sunlit);
        if (cause == HeatCause.None && kind != HeatLimitKind.Stop)
        {
            cause = Caution(state, sunW, sunlit);
        }

        return cause == HeatCause.None && kind == HeatLimitKind.Comfort ? Warm(state, sunW) : cause;
    }

    /// <summary>What is met by the strictest reading.</summary>
    public HeatCause OverStrictest(in CabinState state, double sunW, bool sunlit)
    {
        HeatCause cause = Over(HeatLimitKind.Comfort, state, sunW, sunlit);
        return cause == HeatCause.None && state.AirC > StrictestAirC ? HeatCause.Air : cause;
    }

    /// <summary>True when people feel too cold: PMV below -0.7, or past the cold end of ISO 7730.</summary>
    public bool IsCold(in CabinState state, double sunW)
    {
        double radiant = RadiantC(state, sunW);
        if (state.AirC < ThermalComfort.AirC.Min || radiant < ThermalComfort.RadiantC.Min)
        {
            return true;
        }

        return state.AirC <= ThermalComfort.AirC.Max && radiant <= ThermalComfort.RadiantC.Max && Vote(state, radiant) < -ComfortVote;
    }

    private HeatCause Warm(in CabinState state, double sunW)
    {
        double radiant = RadiantC(state, sunW);
        if (state.AirC > ThermalComfort.AirC.Max || radiant > ThermalComfort.RadiantC.Max || HumidAir.PressureFromRatio(state.WaterRatio) > ThermalComfort.VapourPa.Max)
        {
            return HeatCause.PastComfortModel;
        }

        return Vote(state, radiant) > ComfortVote ? HeatCause.Warm : HeatCause.None;
    }

    private double Vote(in CabinState state, double radiant) =>
        ThermalComfort.Raw(state.AirC, radiant, StillMPerS, HumidAir.PressureFromRatio(state.WaterRatio), _met, _clo);

    private HeatCause Caution(in CabinState state, double sunW, bool sunlit) => Occupational(state, sunW, sunlit, CautionWbgtC, CautionIndexF, CarbonDioxide.StalePpm);

    private HeatCause Stop(in CabinState state, double sunW, bool sunlit)
    {
        HeatCause cause = Occupational(state, sunW, sunlit, StopWbgtC, StopIndexF, CarbonDioxide.FoulPpm);
        return cause == HeatCause.None && state.AirC > StopAirC ? HeatCause.Air : cause;
    }

    private HeatCause Occupational(in CabinState state, double sunW, bool sunlit, double wbgtC, double indexF, double ppm)
    {
        if (state.Co2Ppm >= ppm)
        {
            return HeatCause.Co2;
        }

        double airF = HeatIndex.ToF(state.AirC), radiant = RadiantC(state, sunW);

        // Neither can be over when the dry readings are not: the wet bulb is below the air, and the index needs 80 F.
        if (airF < HeatIndex.AirF.Min && Math.Max(state.AirC, (0.85 * state.AirC) + (0.15 * radiant)) < wbgtC)
        {
            return HeatCause.None;
        }

        double humidity = HumidAir.RelativeHumidityPercent(state.AirC, state.WaterRatio);
        if (airF >= HeatIndex.AirF.Min && HeatIndex.ProcedureF(airF, humidity) >= indexF)
        {
            return HeatCause.HeatIndex;
        }

        return WbgtC(state, sunW, sunlit) >= wbgtC ? HeatCause.WetBulbGlobe : HeatCause.None;
    }
}
