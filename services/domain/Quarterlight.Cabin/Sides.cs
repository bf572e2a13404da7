namespace Quarterlight.Cabin;

/// <summary>The two sides of a cabin as it is built, driver on the left: +1 is the driver's.</summary>
internal static class Sides
{
    public static readonly (string Words, int Side)[] Both = [("driver", 1), ("passenger", -1)];

    /// <summary>Left or right of a cabin built with the driver on the left.</summary>
    public static string LeftOrRight(int side) => side > 0 ? "left" : "right";
}
