using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>Wet-bulb temperature from air temperature and humidity at sea level.</summary>
/// <remarks>
/// R. Stull, Wet-bulb temperature from relative humidity and air temperature, J. Appl. Meteor. Climatol. 50 (2011) 2267, equation (1): within -1 to +0.65 C.
/// Outside its range the psychrometer's equation, e = es(Tw) - 0.000665 p (T - Tw).
/// </remarks>
public static class WetBulb
{
    private const double Psychrometer = 0.000665 * HumidAir.PressurePa;

    /// <summary>Relative humidities Stull's formula holds for.</summary>
    public static ValidRange HumidityPercent { get; } = new(5, 99, "%");

    /// <summary>Air temperatures Stull's formula holds for.</summary>
    public static ValidRange AirC { get; } = new(-20, 50, "C");

    /// <summary>Wet bulb in degrees Celsius by Stull's formula.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside its ranges.</exception>
    public static double StullC(double airC, double humidityPercent)
    {
        if (!AirC.Contains(airC) || !HumidityPercent.Contains(humidityPercent))
        {
            throw new ArgumentOutOfRangeException(nameof(airC), $"Stull's formula does not hold at {airC} C and {humidityPercent} %.");
        }

        return Stull(airC, humidityPercent);
    }

    /// <summary>Wet bulb in degrees Celsius by the psychrometer's equation.</summary>
    public static double PsychrometerC(double airC, double humidityPercent)
    {
        double vapour = HumidAir.SaturationPa(airC) * humidityPercent / 100, wet = airC - ((100 - humidityPercent) * 0.1);
        for (int i = 0; i < 30; i++)
        {
            double saturation = HumidAir.SaturationPa(wet), slope = saturation * 17.625 * 243.04 / ((243.04 + wet) * (243.04 + wet));
            double step = (saturation - (Psychrometer * (airC - wet)) - vapour) / (slope + Psychrometer);
            wet -= step;
            if (Math.Abs(step) < 1e-6)
            {
                break;
            }
        }

        return Math.Min(wet, airC);
    }

    /// <summary>Wet bulb in degrees Celsius: Stull's where it holds, else the psychrometer's.</summary>
    public static double OfC(double airC, double humidityPercent) => AirC.Contains(airC) && HumidityPercent.Contains(humidityPercent)
        ? Stull(airC, humidityPercent)
        : PsychrometerC(airC, humidityPercent);

    private static double Stull(double t, double rh) => (t * Math.Atan(0.151977 * Math.Sqrt(rh + 8.313659))) + Math.Atan(t + rh) - Math.Atan(rh - 1.676331)
        + (0.00391838 * rh * Math.Sqrt(rh) * Math.Atan(0.023101 * rh)) - 4.686035;
}
