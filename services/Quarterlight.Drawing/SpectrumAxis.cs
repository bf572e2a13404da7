namespace Quarterlight.Drawing;

/// <summary>One unbroken stretch of a frequency axis.</summary>
/// <param name="LowMHz">Lower edge in MHz.</param>
/// <param name="HighMHz">Upper edge in MHz.</param>
internal readonly record struct SpectrumStretch(double LowMHz, double HighMHz)
{
    public double SpanMHz => HighMHz - LowMHz;

    public bool Contains(double mHz) => mHz >= LowMHz && mHz <= HighMHz;
}

/// <summary>A frequency axis of one or more stretches, all to one scale, with breaks between them.</summary>
internal sealed class SpectrumAxis
{
    /// <summary>Width of a break, pixels.</summary>
    public const float BreakPx = 44;

    private readonly double pxPerMHz;

    public SpectrumAxis(IReadOnlyList<SpectrumStretch> stretches, float fromPx, float toPx)
    {
        (FromPx, ToPx) = (fromPx, toPx);
        pxPerMHz = (toPx - fromPx - (BreakPx * (stretches.Count - 1))) / stretches.Sum(s => s.SpanMHz);
        var scales = new List<AxisScale>();
        float left = fromPx;
        foreach (SpectrumStretch stretch in stretches)
        {
            float right = left + (float)(pxPerMHz * stretch.SpanMHz);
            scales.Add(new(stretch.LowMHz, stretch.HighMHz, left, right, false));
            left = right + BreakPx;
        }

        Scales = scales;
    }

    public float FromPx { get; }

    public float ToPx { get; }

    /// <summary>The stretches, lowest first.</summary>
    public IReadOnlyList<AxisScale> Scales { get; }

    /// <summary>Length in pixels of a span in MHz.</summary>
    public float Length(double mHz) => (float)(pxPerMHz * mHz);

    /// <summary>Pixel of a frequency; one inside a break or beyond the ends goes to the nearest drawn edge.</summary>
    public float At(double mHz) => Scales.MinBy(s => Math.Max(Math.Max(s.Low - mHz, mHz - s.High), 0)).Within(mHz);

    /// <summary>The parts of a block that are drawn, left and right in pixels, at least a line wide.</summary>
    public IEnumerable<(float Left, float Right)> Parts(double lowMHz, double highMHz) =>
        Scales.Where(s => highMHz >= s.Low && lowMHz <= s.High).Select(s => (s.Within(lowMHz), Math.Max(s.Within(highMHz), s.Within(lowMHz) + 3)));
}
