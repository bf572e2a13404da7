namespace Quarterlight.Endurance.Heat;

/// <summary>Light through the glass over a stretch of time, every five minutes; straight lines between.</summary>
internal sealed class SunTable
{
    private const double SpacingMin = 5;

    private readonly double _firstMin;
    private readonly PaneLight[] _light;

    /// <summary>Fills the table.</summary>
    /// <param name="task">The question.</param>
    /// <param name="headingDeg">Heading; null takes the mean.</param>
    /// <param name="firstMin">First minute after the start of the day, may be negative.</param>
    /// <param name="lastMin">Last minute.</param>
    public SunTable(HeatTask task, double? headingDeg, double firstMin, double lastMin)
    {
        _firstMin = firstMin;
        _light = new PaneLight[(int)Math.Ceiling((lastMin - firstMin) / SpacingMin) + 2];
        for (int i = 0; i < _light.Length; i++)
        {
            _light[i] = At(task, headingDeg, firstMin + (i * SpacingMin));
        }
    }

    /// <summary>Light at one minute, worked out anew.</summary>
    public static PaneLight At(HeatTask task, double? headingDeg, double minute)
    {
        (double elevation, double azimuth) = SolarPosition.Of(task.Start.AddMinutes(minute), task.LatitudeDeg, task.LongitudeDeg);
        return SunThroughGlass.Through(task.Car.Panes, ClearSky.At(elevation, task.Air.CloudFraction), elevation, azimuth, headingDeg);
    }

    /// <summary>Light at one minute from the table.</summary>
    public PaneLight At(double minute)
    {
        double at = Math.Clamp((minute - _firstMin) / SpacingMin, 0, _light.Length - 1.0001);
        int i = (int)at;
        return PaneLight.Between(_light[i], _light[i + 1], at - i);
    }
}
