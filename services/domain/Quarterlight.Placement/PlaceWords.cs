using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>Places and aims in a rigger's words.</summary>
public static class PlaceWords
{
    /// <summary>
    /// An aim in words: where it leans ("down and back"), what it looks at ("toward the driver's mouth" or "past" it), and degrees.
    /// </summary>
    /// <param name="aim">Unit vector.</param>
    /// <param name="towardMouth">Unit vector from the capsule to the talker's mouth.</param>
    /// <param name="whose">Whose mouth, such as "the driver".</param>
    /// <param name="isOmni">True when the pattern has no direction.</param>
    public static string Aim(Vector3D aim, Vector3D towardMouth, string whose, bool isOmni)
    {
        ArgumentNullException.ThrowIfNull(whose);
        if (isOmni)
        {
            return "any way round (it hears alike from everywhere)";
        }

        double off = Angles.RadToDeg(aim.AngleTo(towardMouth));
        string target = off < 12 ? $"at {Possessive(whose)} mouth" : FormattableString.Invariant($"{off:0}° {SideOf(aim, towardMouth)} {Possessive(whose)} mouth");
        double elevation = Angles.RadToDeg(aim.ElevationRad);
        string tilt = Math.Abs(elevation) < 5 ? "level" : FormattableString.Invariant($"{Math.Abs(elevation):0}° {(elevation < 0 ? "below" : "above")} level");
        return $"{Lean(aim)}, {target}, {tilt}";
    }

    /// <summary>Where a capsule is, in centimetres: from the mouth, above the floor, off the centre line.</summary>
    public static string Place(string siteWords, Vector3D capsule, double mouthDistanceM, string whose)
    {
        string side = Math.Abs(capsule.Y) < 0.03 ? "on the centre line" : FormattableString.Invariant($"{Math.Abs(capsule.Y) * 100:0} cm {(capsule.Y > 0 ? "left" : "right")} of centre");
        return FormattableString.Invariant($"{siteWords}: {mouthDistanceM * 100:0} cm from {Possessive(whose)} mouth, {capsule.Z * 100:0} cm above the floor, {side}");
    }

    internal static string Possessive(string whose) => whose.EndsWith('s') ? whose + "'" : whose + "'s";

    private static string Lean(Vector3D aim)
    {
        var parts = new List<string>(3);
        if (Math.Abs(aim.Z) > 0.26)
        {
            parts.Add(aim.Z < 0 ? "down" : "up");
        }

        if (Math.Abs(aim.X) > 0.26)
        {
            parts.Add(aim.X < 0 ? "back" : "forward");
        }

        if (Math.Abs(aim.Y) > 0.26)
        {
            parts.Add(aim.Y < 0 ? "to the right" : "to the left");
        }

        return parts.Count switch { 0 => "level", 1 => parts[0], 2 => $"{parts[0]} and {parts[1]}", _ => $"{parts[0]}, {parts[1]} and {parts[2]}" };
    }

    private static string SideOf(Vector3D aim, Vector3D toward)
    {
        Vector3D difference = aim - toward;
        if (Math.Abs(difference.Z) >= Math.Max(Math.Abs(difference.X), Math.Abs(difference.Y)))
        {
            return difference.Z > 0 ? "above" : "below";
        }

        return Math.Abs(difference.X) > Math.Abs(difference.Y)
            ? difference.X > 0 ? "ahead of" : "behind"
            : difference.Y > 0 ? "left of" : "right of";
    }
}
