namespace Quarterlight.Quantities;

/// <summary>Degrees at the surface, radians inside: the one place that converts.</summary>
public static class Angles
{
    /// <summary>Radians from degrees.</summary>
    public static double DegToRad(double deg) => deg * (Math.PI / 180);

    /// <summary>Degrees from radians.</summary>
    public static double RadToDeg(double rad) => rad * (180 / Math.PI);
}
