using MathNet.Numerics.Distributions;
using Quarterlight.Quantities;

namespace Quarterlight.Radio.Propagation;

/// <summary>Which streets the out-of-sight model is asked about.</summary>
public enum StreetKind
{
    /// <summary>Houses and gardens.</summary>
    Suburban,

    /// <summary>Town.</summary>
    Urban,
}

/// <summary>Loss in streets between antennas near street level.</summary>
/// <remarks>ITU-R P.1411-12, sections 4.1.1, 4.1.2 and 4.3.1, read through the documentation and numbers of two public implementations that
/// agree.</remarks>
public static class Street
{
    /// <summary>Section 4.1.2, UHF in sight: frequencies.</summary>
    public static ValidRange UhfFrequencyMHz { get; } = new(300, 3000, "MHz");

    /// <summary>Section 4.1.2: distances.</summary>
    public static ValidRange UhfDistanceM { get; } = new(1, 1000, "m");

    /// <summary>Section 4.1.1, street canyon: frequencies, as far as this room goes.</summary>
    public static ValidRange CanyonFrequencyMHz { get; } = new(800, 82_000, "MHz");

    /// <summary>Section 4.1.1: distances.</summary>
    public static ValidRange CanyonDistanceM { get; } = new(5, 660, "m");

    /// <summary>Section 4.3.1, out of sight: frequencies.</summary>
    public static ValidRange CornerFrequencyMHz { get; } = new(300, 3000, "MHz");

    /// <summary>Section 4.3.1: distances.</summary>
    public static ValidRange CornerDistanceM { get; } = new(1, 3000, "m");

    /// <summary>Section 4.3.1: antenna heights.</summary>
    public static ValidRange CornerHeightM { get; } = new(1.9, 3, "m");

    /// <summary>Section 4.1.1: standard deviation round the median in dB.</summary>
    public const double CanyonSigmaDb = 5.06;

    /// <summary>Section 4.3.1: standard deviation by location in dB.</summary>
    public const double CornerSigmaDb = 7;

    /// <summary>Section 4.1.2: lower bound, median and upper bound of the loss in dB.</summary>
    public static (double Lower, double Median, double Upper) UhfDb(in PathInputs path, double distanceM)
    {
        double wavelength = path.WavelengthM;
        double atBreakpoint = Math.Abs(20 * Math.Log10(wavelength * wavelength / (8 * Math.PI * path.TransmitHeightM * path.ReceiveHeightM)));
        double x = Math.Log10(distanceM / path.BreakpointM);
        double lower = atBreakpoint + (x <= 0 ? 20 * x : 40 * x);
        return (lower, lower + 6, atBreakpoint + 20 + (x <= 0 ? 25 * x : 40 * x));
    }

    /// <summary>Section 4.1.1: median loss in dB.</summary>
    public static double CanyonDb(double frequencyMHz, double distanceM) =>
        (21.2 * Math.Log10(distanceM)) + 29.2 + (21.1 * Math.Log10(frequencyMHz / 1000));

    /// <summary>Section 4.3.1 whole, for terminals placed anywhere: loss in dB not exceeded at a share of locations.</summary>
    /// <param name="frequencyMHz">Frequency in MHz.</param>
    /// <param name="distanceM">Distance in metres.</param>
    /// <param name="locationFraction">Share of locations, above 0 and below 1.</param>
    /// <param name="street">Kind of street.</param>
    public static double AnywhereDb(double frequencyMHz, double distanceM, double locationFraction, StreetKind street)
    {
        const double CornerM = 20;
        double sightM = locationFraction < 0.45
            ? (212 * Math.Pow(Math.Log10(locationFraction), 2)) - (64 * Math.Log10(locationFraction))
            : 79.2 - (70 * locationFraction);
        if (distanceM < sightM)
        {
            return InSight(distanceM);
        }

        if (distanceM > sightM + CornerM)
        {
            return OutOfSight(distanceM);
        }

        double near = InSight(sightM), far = OutOfSight(sightM + CornerM);
        return near + ((far - near) * (distanceM - sightM) / CornerM);

        double InSight(double d) => FreeSpace.LossDb(frequencyMHz, d)
            + (1.5624 * CornerSigmaDb * (Math.Sqrt(-2 * Math.Log(1 - locationFraction)) - 1.1774));

        double OutOfSight(double d) => CornerMedianDb(frequencyMHz, d, street) + (CornerSigmaDb * Normal.InvCDF(0, 1, locationFraction));
    }

    /// <summary>Section 4.3.1, the branch out of sight: median loss in dB.</summary>
    public static double CornerMedianDb(double frequencyMHz, double distanceM, StreetKind street) =>
        9.5 + (45 * Math.Log10(frequencyMHz)) + (40 * Math.Log10(distanceM / 1000)) + (street == StreetKind.Urban ? 6.8 : 0);
}
