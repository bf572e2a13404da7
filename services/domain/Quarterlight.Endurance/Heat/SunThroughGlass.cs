using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Heat;

/// <summary>Sun and sky through the panes of a car, before the kind of glass, shade and covers: watts at a normal transmittance of 1.</summary>
/// <param name="WindscreenDirectW">Direct, through the windscreen.</param>
/// <param name="WindscreenDiffuseW">From sky and ground, through the windscreen.</param>
/// <param name="OtherDirectW">Direct, through all else.</param>
/// <param name="OtherDiffuseW">From sky and ground, through all else.</param>
public readonly record struct PaneLight(double WindscreenDirectW, double WindscreenDiffuseW, double OtherDirectW, double OtherDiffuseW)
{
    internal static PaneLight Between(in PaneLight a, in PaneLight b, double share) => new(
        a.WindscreenDirectW + (share * (b.WindscreenDirectW - a.WindscreenDirectW)),
        a.WindscreenDiffuseW + (share * (b.WindscreenDiffuseW - a.WindscreenDiffuseW)),
        a.OtherDirectW + (share * (b.OtherDirectW - a.OtherDirectW)),
        a.OtherDiffuseW + (share * (b.OtherDiffuseW - a.OtherDiffuseW)));
}

/// <summary>Adds up what comes through each pane by where it faces.</summary>
/// <remarks>Sky taken as evenly bright; the ground reflects 20 % of the light that falls on it (albedo of the trade's solar models, from memory).</remarks>
public static class SunThroughGlass
{
    /// <summary>Share of light the ground sends back.</summary>
    public const double GroundReflectance = 0.2;

    /// <summary>Id of the pane that a windscreen screen covers.</summary>
    public const string WindscreenId = "windscreen";

    private const int Headings = 24;

    private static readonly double[] s_cosines = [.. Enumerable.Range(0, Headings).Select(i => Math.Cos((i + 0.5) * Math.PI / Headings))];

    /// <summary>Light through all panes.</summary>
    /// <param name="panes">The glass.</param>
    /// <param name="light">Irradiance.</param>
    /// <param name="elevationDeg">Height of the sun, degrees.</param>
    /// <param name="azimuthDeg">Bearing of the sun, degrees.</param>
    /// <param name="headingDeg">Heading of the car, degrees; null takes the mean of all headings.</param>
    public static PaneLight Through(IReadOnlyList<GlassPane> panes, Irradiance light, double elevationDeg, double azimuthDeg, double? headingDeg)
    {
        ArgumentNullException.ThrowIfNull(panes);
        if (light.GlobalW <= 0)
        {
            return default;
        }

        double elevation = Angles.DegToRad(elevationDeg), up = Math.Sin(elevation), level = Math.Cos(elevation);
        double frontDirect = 0, frontDiffuse = 0, otherDirect = 0, otherDiffuse = 0;
        for (int i = 0; i < panes.Count; i++)
        {
            GlassPane pane = panes[i];
            double tilt = Angles.DegToRad(pane.TiltDeg), cosTilt = Math.Cos(tilt), sinTilt = Math.Sin(tilt);
            double direct = light.DirectNormalW * pane.AreaM2 * (headingDeg is { } heading
                ? Beam((up * cosTilt) + (level * sinTilt * Math.Cos(Angles.DegToRad(azimuthDeg - heading - pane.BearingDeg))))
                : MeanBeam(up * cosTilt, level * sinTilt));
            double diffuse = GlassTransmission.DiffuseRatio * pane.AreaM2
                * ((light.DiffuseW * (1 + cosTilt) / 2) + (light.GlobalW * GroundReflectance * (1 - cosTilt) / 2));
            if (pane.Id == WindscreenId)
            {
                frontDirect += direct;
                frontDiffuse += diffuse;
            }
            else
            {
                otherDirect += direct;
                otherDiffuse += diffuse;
            }
        }

        return new PaneLight(frontDirect, frontDiffuse, otherDirect, otherDiffuse);
    }

    // Projected area times the angle's transmittance.
    private static double Beam(double cosine) => cosine <= 0 ? 0 : cosine * GlassTransmission.AngleRatio(cosine);

    // The mean over all headings; half a turn is enough, as the other half mirrors it.
    private static double MeanBeam(double fixedPart, double turningPart)
    {
        if (turningPart < 1e-9)
        {
            return Beam(fixedPart);
        }

        double sum = 0;
        foreach (double cosine in s_cosines)
        {
            sum += Beam(fixedPart + (turningPart * cosine));
        }

        return sum / Headings;
    }
}
