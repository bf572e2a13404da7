using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>Light of the sun and the sky on the ground.</summary>
/// <param name="DirectNormalW">Direct, on a surface that faces the sun, W/m2.</param>
/// <param name="DiffuseW">Diffuse, on level ground, W/m2.</param>
/// <param name="GlobalW">Both together on level ground, W/m2.</param>
public readonly record struct Irradiance(double DirectNormalW, double DiffuseW, double GlobalW);

/// <summary>Sun and sky from the sun's height and the clouds.</summary>
/// <remarks>
/// Global: Haurwitz 1945, 1098 cos z exp(-0.059 / cos z). Direct: Meinel 1976, 1353 x 0.7^(m^0.678), with the air mass m of Kasten and Young 1989.
/// Clouds: Kasten and Czeplak 1980, global x (1 - 0.75 N^3.4); their diffuse share 0.3 + 0.7 N^2 starts here from the clear sky's own share.
/// Sea level, mean distance of the sun (3.4 % either way left out).
/// </remarks>
public static class ClearSky
{
    private const double SolarConstantW = 1353; // The value Meinel's fit was made with.

    /// <summary>Air mass relative to the zenith, Kasten and Young 1989; infinite below the horizon.</summary>
    public static double AirMass(double elevationDeg) => elevationDeg < 0
        ? double.PositiveInfinity
        : 1 / (Math.Sin(Angles.DegToRad(elevationDeg)) + (0.50572 * Math.Pow(elevationDeg + 6.07995, -1.6364)));

    /// <summary>Irradiance under a sky with clouds.</summary>
    /// <param name="elevationDeg">Height of the sun, degrees.</param>
    /// <param name="cloudFraction">Share of the sky under cloud, 0 to 1.</param>
    public static Irradiance At(double elevationDeg, double cloudFraction)
    {
        double cos = Math.Sin(Angles.DegToRad(elevationDeg));
        if (cos <= 0.001)
        {
            return default;
        }

        double clear = 1098 * cos * Math.Exp(-0.059 / cos);
        double direct = Math.Min(SolarConstantW * Math.Pow(0.7, Math.Pow(AirMass(elevationDeg), 0.678)), clear / cos);
        if (cloudFraction <= 0)
        {
            return new Irradiance(direct, Math.Max(0, clear - (direct * cos)), clear);
        }

        double n2 = cloudFraction * cloudFraction, share = Math.Max(0, 1 - (direct * cos / clear));
        double global = clear * (1 - (0.75 * Math.Pow(cloudFraction, 3.4))), diffuse = global * (share + ((1 - share) * n2));
        return new Irradiance((global - diffuse) / cos, diffuse, global);
    }
}
