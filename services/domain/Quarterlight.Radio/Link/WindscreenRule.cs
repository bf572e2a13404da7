using Quarterlight.Quantities;

namespace Quarterlight.Radio.Link;

/// <summary>How far down a windscreen something may be stuck.</summary>
/// <remarks>
/// 49 CFR 393.60(e)(1)(ii) as amended by 87 FR 12596 (7 March 2022), trucks and buses in the United States: at most 8.5 in below the upper edge of
/// the area swept by the wipers, and
/// outside the driver's sight lines. Private cars have rules of their own, often stricter: the strictest published one stands in for them, and local
/// law decides.
/// </remarks>
public static class WindscreenRule
{
    /// <summary>Drops below the upper edge of the swept area that can be stated.</summary>
    public static ValidRange DropM { get; } = new(0, 1, "m");

    /// <summary>Largest drop in metres: 8.5 in.</summary>
    public const double LargestDropM = 8.5 * 0.0254;

    /// <summary>True when something that reaches this far below the upper edge of the swept area is allowed.</summary>
    public static bool Allows(double dropM) => dropM <= LargestDropM;

    /// <summary>What to say of an antenna; null when it is not on glass.</summary>
    /// <param name="antenna">The antenna.</param>
    /// <param name="whose">Whose it is, such as "picture car's".</param>
    internal static Advisory? Remark(Antenna antenna, string whose)
    {
        if (antenna.Place != AntennaPlace.OnGlass)
        {
            return null;
        }

        return antenna.WindscreenDropM is { } drop && !Allows(drop)
            ? new("windscreen-too-low", $"The {whose} antenna reaches too far down the windscreen: at most 8.5 in (0.22 m) below the top of the swept area, out of the driver's view (49 CFR 393.60, trucks and buses; local law decides).", AdvisorySeverity.Safety)
            : new("glass-in-view", $"Keep the {whose} antenna out of the driver's view and off airbags; on a windscreen not more than 8.5 in (0.22 m) below the top of the swept area (49 CFR 393.60, trucks and buses; local law decides).", AdvisorySeverity.Safety);
    }
}
