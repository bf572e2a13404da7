namespace Quarterlight.Acoustics;

/// <summary>The one guard for physical quantities that cannot be zero or negative.</summary>
internal static class Positive
{
    /// <summary>Throws unless the value is a number above 0, or 0 where that is allowed.</summary>
    public static void Check(double value, string name, bool zeroAllowed = false)
    {
        if (!(zeroAllowed ? value >= 0 : value > 0))
        {
            throw new ArgumentOutOfRangeException(name, value, zeroAllowed ? "A number of 0 or more." : "A number above 0.");
        }
    }
}
