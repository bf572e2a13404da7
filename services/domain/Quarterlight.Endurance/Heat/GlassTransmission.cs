using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>How much of the sun car glass lets in.</summary>
/// <remarks>
/// Angle: Fresnel's equations with all reflections between the two faces, index 1.526 (Duffie and Beckman, Solar Engineering of Thermal Processes,
/// chapter 5); absorption is taken as at normal incidence. Diffuse light: as a beam at 60 degrees (same source).
/// </remarks>
public static class GlassTransmission
{
    private const double Index = 1.526, DiffuseAngleDeg = 60;
    private const int Steps = 256;

    // Ratio to normal incidence by the cosine, so that a look-up needs no inverse cosine.
    private static readonly double[] s_byCosine = [.. Enumerable.Range(0, Steps + 1).Select(i => Ratio((double)i / Steps))];

    /// <summary>Share for diffuse light of that at normal incidence.</summary>
    public static double DiffuseRatio { get; } = Ratio(Math.Cos(Angles.DegToRad(DiffuseAngleDeg)));

    /// <summary>Solar transmittance at normal incidence, 0 to 1.</summary>
    /// <remarks>Clear and tinted from memory; solar control 36 % from the abstract of SAE 880050 (Young and Bernardi 1988).</remarks>
    public static double Normal(GlassKind glass) => glass switch
    {
        GlassKind.Clear => 0.78,
        GlassKind.SolarControl => 0.36,
        _ => 0.55,
    };

    /// <summary>Transmittance at an angle over that at normal incidence, 0 to 1.</summary>
    /// <param name="cosine">Cosine of the angle of incidence; 0 or less lets nothing in.</param>
    public static double AngleRatio(double cosine)
    {
        if (cosine <= 0)
        {
            return 0;
        }

        double at = Math.Min(cosine, 1) * Steps;
        int i = Math.Min((int)at, Steps - 1);
        return s_byCosine[i] + ((at - i) * (s_byCosine[i + 1] - s_byCosine[i]));
    }

    /// <summary>Share reflected by one face for the two polarisations.</summary>
    public static (double Perpendicular, double Parallel) Reflectance(double cosine)
    {
        double inside = Math.Sqrt(1 - ((1 - (cosine * cosine)) / (Index * Index)));
        double s = (cosine - (Index * inside)) / (cosine + (Index * inside)), p = ((Index * cosine) - inside) / ((Index * cosine) + inside);
        return (s * s, p * p);
    }

    private static double Ratio(double cosine) => Clean(cosine) / Clean(1);

    private static double Clean(double cosine)
    {
        (double s, double p) = Reflectance(cosine);
        return (((1 - s) / (1 + s)) + ((1 - p) / (1 + p))) / 2;
    }
}
