namespace Quarterlight.Drawing;

/// <summary>Maps figures on one axis to pixels, evenly or by logarithm.</summary>
/// <param name="Low">Figure at the start.</param>
/// <param name="High">Figure at the end; larger than the low one.</param>
/// <param name="FromPx">Pixel at the start.</param>
/// <param name="ToPx">Pixel at the end; smaller than the start on an axis that rises.</param>
/// <param name="Logarithmic">True when equal ratios take equal lengths; both figures are then positive.</param>
internal readonly record struct AxisScale(double Low, double High, float FromPx, float ToPx, bool Logarithmic)
{
    private static readonly double[] Steps = [1, 2, 5];

    /// <summary>Pixel of a figure, kept a sheet's width round the axis so that lines may leave the frame.</summary>
    public float At(double value)
    {
        double t = Logarithmic ? Math.Log(Math.Max(value, 1e-9) / Low) / Math.Log(High / Low) : (value - Low) / (High - Low);
        return (float)(FromPx + (Math.Clamp(double.IsNaN(t) ? 0 : t, -2, 3) * (ToPx - FromPx)));
    }

    /// <summary>Pixel of a figure, kept on the axis.</summary>
    public float Within(double value) => At(Math.Clamp(value, Low, High));

    /// <summary>1, 2 and 5 of every decade between two figures.</summary>
    public static IEnumerable<double> DecadeTicks(double low, double high)
    {
        for (int decade = (int)Math.Floor(Math.Log10(low)); Math.Pow(10, decade) <= high; decade++)
        {
            foreach (double step in Steps)
            {
                double tick = step * Math.Pow(10, decade);
                if (tick >= low * (1 - 1e-9) && tick <= high * (1 + 1e-9))
                {
                    yield return tick;
                }
            }
        }
    }

    /// <summary>Least step of 1, 2 or 5 times a power of ten that divides a span into no more than so many parts.</summary>
    public static double EvenStep(double span, int mostParts)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(span / mostParts)));
        foreach (double step in Steps)
        {
            if (span / (step * power) <= mostParts + 1e-9)
            {
                return step * power;
            }
        }

        return 10 * power;
    }

    /// <summary>Whole multiples of a step between two figures.</summary>
    public static IEnumerable<double> EvenTicks(double low, double high, double step)
    {
        for (double k = Math.Ceiling((low / step) - 1e-9); k * step <= high + (1e-9 * step); k++)
        {
            yield return k * step;
        }
    }
}
