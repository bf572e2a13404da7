namespace Quarterlight.Clips.Levels;

/// <summary>A sinc under Kaiser's window, from which the filters of this room are made. Kaiser, System Analysis by Digital Computer, 1974, chapter 7 (from memory).</summary>
internal static class KaiserSinc
{
    /// <summary>Height of a tap, not yet divided by the sum of all.</summary>
    /// <param name="t">Place in samples of the cut-off rate, 0 in the middle.</param>
    /// <param name="r">Place as a share of the window's half length; outside of -1 to 1 nothing is left.</param>
    /// <param name="beta">Shape of the window.</param>
    public static double At(double t, double r, double beta) => Math.Abs(r) > 1
        ? 0
        : (t == 0 ? 1 : Math.Sin(Math.PI * t) / (Math.PI * t)) * Bessel0(beta * Math.Sqrt(1 - (r * r)));

    /// <summary>Modified Bessel function of the first kind and order 0, by its series.</summary>
    public static double Bessel0(double x)
    {
        double sum = 1, term = 1;
        for (int k = 1; term > 1e-17 * sum; k++)
        {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }

        return sum;
    }
}
