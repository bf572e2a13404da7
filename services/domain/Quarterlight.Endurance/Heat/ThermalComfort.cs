using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>Predicted mean vote and percentage dissatisfied: how warm people feel, from -3 cold to +3 hot.</summary>
/// <remarks>ISO 7730:2005, equations (1) to (5), without external work. Holds inside the ranges below only; a hot cabin is outside.</remarks>
public static class ThermalComfort
{
    /// <summary>Air temperature.</summary>
    public static ValidRange AirC { get; } = new(10, 30, "C");

    /// <summary>Mean radiant temperature.</summary>
    public static ValidRange RadiantC { get; } = new(10, 40, "C");

    /// <summary>Speed of the air.</summary>
    public static ValidRange AirSpeedMPerS { get; } = new(0, 1, "m/s");

    /// <summary>Vapour pressure.</summary>
    public static ValidRange VapourPa { get; } = new(0, 2700, "Pa");

    /// <summary>Activity.</summary>
    public static ValidRange ActivityMet { get; } = new(0.8, 4, "met");

    /// <summary>Clothing.</summary>
    public static ValidRange ClothingClo { get; } = new(0, 2, "clo");

    /// <summary>The vote itself.</summary>
    public static ValidRange Vote { get; } = new(-2, 2, "");

    /// <summary>PMV, null outside the ranges.</summary>
    /// <param name="airC">Air, degrees Celsius.</param>
    /// <param name="radiantC">Mean radiant temperature, degrees Celsius.</param>
    /// <param name="airSpeedMPerS">Air speed over the body, m/s.</param>
    /// <param name="vapourPa">Vapour pressure, pascals.</param>
    /// <param name="activityMet">Activity, met.</param>
    /// <param name="clothingClo">Clothing, clo.</param>
    public static double? Pmv(double airC, double radiantC, double airSpeedMPerS, double vapourPa, double activityMet, double clothingClo)
    {
        if (!AirC.Contains(airC) || !RadiantC.Contains(radiantC) || !AirSpeedMPerS.Contains(airSpeedMPerS) || !VapourPa.Contains(vapourPa)
            || !ActivityMet.Contains(activityMet) || !ClothingClo.Contains(clothingClo))
        {
            return null;
        }

        double vote = Raw(airC, radiantC, airSpeedMPerS, vapourPa, activityMet, clothingClo);
        return Vote.Contains(vote) ? vote : null;
    }

    /// <summary>Percentage dissatisfied for a vote, equation (5).</summary>
    public static double PpdPercent(double pmv)
    {
        double square = pmv * pmv;
        return 100 - (95 * Math.Exp((-0.03353 * square * square) - (0.2179 * square)));
    }

    /// <summary>Vapour pressure in pascals as the standard's own program has it, for its rows.</summary>
    public static double StandardVapourPa(double airC, double relativeHumidityPercent) => relativeHumidityPercent * 10 * Math.Exp(16.6536 - (4030.183 / (airC + 235)));

    /// <summary>Equation (1) whatever the ranges.</summary>
    internal static double Raw(double airC, double radiantC, double speed, double vapourPa, double met, double clo)
    {
        double m = met * 58.15, icl = 0.155 * clo;
        double fcl = icl <= 0.078 ? 1 + (1.29 * icl) : 1.05 + (0.645 * icl); // (4)
        double forced = 12.1 * Math.Sqrt(speed), radiant4 = Fourth(radiantC + 273);
        double skin = 35.7 - (0.028 * m), tcl = ((skin + airC) / 2) + 1;
        double radiation = 0, convection = 0;

        // (2) by Newton's method; the free convection coefficient (3) is kept from the round before, which changes nothing where it settles.
        for (int i = 0; i < 40; i++)
        {
            double hc = Math.Max(2.38 * Math.Sqrt(Math.Sqrt(Math.Abs(tcl - airC))), forced);
            double kelvin = tcl + 273, cube = kelvin * kelvin * kelvin;
            radiation = 3.96e-8 * fcl * ((cube * kelvin) - radiant4);
            convection = fcl * hc * (tcl - airC);
            double error = skin - (icl * (radiation + convection)) - tcl;
            double step = error / (1 + (icl * fcl * ((4 * 3.96e-8 * cube) + (1.25 * hc))));
            tcl += step;
            if (Math.Abs(step) < 1e-4)
            {
                break;
            }
        }

        double loss = (3.05e-3 * (5733 - (6.99 * m) - vapourPa)) + (m > 58.15 ? 0.42 * (m - 58.15) : 0)
            + (1.7e-5 * m * (5867 - vapourPa)) + (0.0014 * m * (34 - airC)) + radiation + convection;
        return ((0.303 * Math.Exp(-0.036 * m)) + 0.028) * (m - loss);
    }

    private static double Fourth(double x) => x * x * x * x;
}
