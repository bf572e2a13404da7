using System.Globalization;

using Quarterlight.Quantities;

namespace Quarterlight.Drawing;

/// <summary>An aim in a few words, where the planner's full ones are too long.</summary>
internal static class AimText
{
    private static readonly string[] Headings = ["forward", "forward left", "left", "back left", "back", "back right", "right", "forward right"];

    /// <summary>Heading to the nearest eighth of a turn and tilt in whole degrees, such as "back left, 31° up".</summary>
    public static string Short(Vector3D aim)
    {
        double tiltDeg = Angles.RadToDeg(aim.ElevationRad);
        string tilt = string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(tiltDeg):0}° {(tiltDeg < 0 ? "down" : "up")}");
        if (Math.Abs(tiltDeg) > 80)
        {
            return tilt;
        }

        int eighth = (int)Math.Round(aim.AzimuthRad / (Math.PI / 4));
        string heading = Headings[(eighth + 8) % 8];
        return Math.Abs(tiltDeg) < 5 ? heading + ", level" : $"{heading}, {tilt}";
    }
}
