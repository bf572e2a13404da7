using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>How the weather service words a heat index.</summary>
public enum HeatIndexClass
{
    /// <summary>Below 80 F.</summary>
    None,

    /// <summary>80 F and above.</summary>
    Caution,

    /// <summary>90 F and above.</summary>
    ExtremeCaution,

    /// <summary>103 F and above.</summary>
    Danger,

    /// <summary>125 F and above.</summary>
    ExtremeDanger,
}

/// <summary>Heat index of the US National Weather Service: what hot, moist air in the shade feels like. The sun adds up to 15 F.</summary>
/// <remarks>Rothfusz, NWS Technical Attachment SR 90-23, with the two adjustments and the simple formula of the NWS page on the equation.</remarks>
public static class HeatIndex
{
    /// <summary>Air temperatures of the published table.</summary>
    public static ValidRange AirF { get; } = new(80, 110, "F");

    /// <summary>Indices of the published table: beyond its end the regression is not held up by anything.</summary>
    public static ValidRange IndexF { get; } = new(80, 137, "F");

    /// <summary>The bare regression, which the table was printed from, in degrees Fahrenheit.</summary>
    public static double RegressionF(double airF, double humidityPercent)
    {
        double t = airF, r = humidityPercent;
        return -42.379 + (2.04901523 * t) + (10.14333127 * r) - (0.22475541 * t * r) - (0.00683783 * t * t) - (0.05481717 * r * r)
            + (0.00122874 * t * t * r) + (0.00085282 * t * r * r) - (0.00000199 * t * t * r * r);
    }

    /// <summary>The whole procedure: simple formula when it is cool, else the regression with its adjustments; degrees Fahrenheit.</summary>
    public static double ProcedureF(double airF, double humidityPercent)
    {
        double simple = ((0.5 * (airF + 61 + ((airF - 68) * 1.2) + (humidityPercent * 0.094))) + airF) / 2;
        if (simple < 80)
        {
            return simple;
        }

        double index = RegressionF(airF, humidityPercent);
        if (humidityPercent < 13 && airF is >= 80 and <= 112)
        {
            index -= (13 - humidityPercent) / 4 * Math.Sqrt((17 - Math.Abs(airF - 95)) / 17);
        }
        else if (humidityPercent > 85 && airF is >= 80 and <= 87)
        {
            index += (humidityPercent - 85) / 10 * (87 - airF) / 5;
        }

        return index;
    }

    /// <summary>Heat index in degrees Celsius; null outside the temperatures and indices of the table.</summary>
    public static double? OfC(double airC, double humidityPercent)
    {
        double air = ToF(airC);
        if (!AirF.Contains(air))
        {
            return null;
        }

        double index = ProcedureF(air, humidityPercent);
        return index <= IndexF.Max ? (index - 32) / 1.8 : null;
    }

    /// <summary>Class of an index in degrees Fahrenheit, by the weather service's present chart.</summary>
    public static HeatIndexClass Class(double indexF) => indexF switch
    {
        >= 125 => HeatIndexClass.ExtremeDanger,
        >= 103 => HeatIndexClass.Danger,
        >= 90 => HeatIndexClass.ExtremeCaution,
        >= 80 => HeatIndexClass.Caution,
        _ => HeatIndexClass.None,
    };

    internal static double ToF(double celsius) => (celsius * 1.8) + 32;
}
