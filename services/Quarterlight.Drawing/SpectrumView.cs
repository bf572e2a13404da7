namespace Quarterlight.Drawing;

/// <summary>What part of a spectrum map is drawn: the stretch in use with a margin, so that a cluster of carriers is not a single line.</summary>
internal sealed class SpectrumView
{
    private const double LeastSpanMHz = 1;

    // A planned range little wider than what is used is shown whole.
    private const double WorthCropping = 1.5;

    // A break is a jump the reader has to notice, so it must buy a good deal of width.
    private const double WorthBreaking = 0.5;
    private const int MostBreaks = 2;

    public SpectrumView(SpectrumMap map)
    {
        Map = map;
        Channels = [.. map.Channels.OrderBy(c => c.FrequencyMHz).ThenBy(c => c.Label, StringComparer.Ordinal)];
        Stretched = Crop();
        (LowMHz, HighMHz) = (Stretched[0].LowMHz, Stretched[^1].HighMHz);
        IsCropped = Stretched.Count > 1 || LowMHz > map.LowMHz || HighMHz < map.HighMHz;
        Shown = [.. Channels.Where(c => Shows(c.FrequencyMHz))];
        Products = [.. map.Products.Where(p => Shows(p.FrequencyMHz)).OrderBy(p => p.FrequencyMHz).ThenBy(p => p.Order)];
        Blocks = [.. map.Excluded.Where(b => Stretched.Any(s => b.HighMHz >= s.LowMHz && b.LowMHz <= s.HighMHz)).OrderBy(b => b.LowMHz)];
        Decimals = Enumerable.Range(1, 2).FirstOrDefault(d => Channels.All(c => Math.Abs(c.FrequencyMHz - Math.Round(c.FrequencyMHz, d)) < 5e-4), 3);
    }

    public SpectrumMap Map { get; }

    /// <summary>All carriers, lowest first.</summary>
    public IReadOnlyList<SpectrumChannel> Channels { get; }

    /// <summary>The carriers inside the view, lowest first.</summary>
    public IReadOnlyList<SpectrumChannel> Shown { get; }

    /// <summary>The products inside the view, lowest first.</summary>
    public IReadOnlyList<SpectrumProduct> Products { get; }

    /// <summary>The excluded blocks that reach into the view, lowest first.</summary>
    public IReadOnlyList<ExcludedBlock> Blocks { get; }

    /// <summary>The parts of the spectrum drawn, lowest first.</summary>
    public IReadOnlyList<SpectrumStretch> Stretched { get; }

    public double LowMHz { get; }

    public double HighMHz { get; }

    public bool IsCropped { get; }

    /// <summary>Decimals that tell every carrier's frequency to the kilohertz, 1 to 3.</summary>
    public int Decimals { get; }

    public string Frequency(double mHz) => FigureWords.Number(mHz, "0." + new string('0', Decimals));

    /// <summary>An edge of the view or of a block: no more decimals than it needs.</summary>
    public static string Edge(double mHz) => FigureWords.Number(mHz, "0.###");

    public bool Shows(double mHz) => Stretched.Any(s => s.Contains(mHz));

    /// <summary>What the crop leaves out, in words; empty when nothing.</summary>
    public string CropWords()
    {
        if (!IsCropped)
        {
            return "";
        }

        (int Count, string One, string Many)[] left =
        [
            (Channels.Count - Shown.Count, "carrier", "carriers"),
            (Map.Products.Count - Products.Count, "product", "products"),
            (Map.Excluded.Count - Blocks.Count, "excluded block", "excluded blocks"),
        ];
        string rest = string.Join(", ", left.Where(l => l.Count > 0).Select(l => $"{l.Count} {(l.Count == 1 ? l.One : l.Many)}"));
        return $"Cropped to {Words("–")} MHz of {Edge(Map.LowMHz)}–{Edge(Map.HighMHz)} MHz" + (rest.Length > 0 ? $"; outside: {rest}" : "");
    }

    /// <summary>What is drawn, such as 514 to 544.</summary>
    public string Words(string to = " to ") => string.Join(" and ", Stretched.Select(s => $"{Edge(s.LowMHz)}{to}{Edge(s.HighMHz)}"));

    private List<SpectrumStretch> Crop()
    {
        SpectrumChannel[] own = [.. Channels.Where(c => !c.IsNeighbour)];
        if (own.Length == 0)
        {
            own = [.. Channels];
        }

        if (own.Length == 0)
        {
            return [new(Map.LowMHz, Map.HighMHz)];
        }

        // Neighbours count as far off as the own carriers spread; beyond that they would only squeeze the picture.
        double low = own[0].FrequencyMHz, high = own[^1].FrequencyMHz, reach = Math.Max(LeastSpanMHz, high - low);
        double[] used = [.. Channels.Select(c => c.FrequencyMHz).Where(f => f >= low - reach && f <= high + reach)];
        List<SpectrumStretch> best = Stretches(used, 0);
        for (int breaks = 1; breaks <= MostBreaks; breaks++)
        {
            List<SpectrumStretch> broken = Stretches(used, breaks);
            if (broken.Sum(s => s.SpanMHz) < WorthBreaking * best.Sum(s => s.SpanMHz))
            {
                best = broken;
            }
        }

        (low, high) = (Math.Min(Map.LowMHz, used[0]), Math.Max(Map.HighMHz, used[^1]));
        return high - low < WorthCropping * best.Sum(s => s.SpanMHz) ? [new(low, high)] : best;
    }

    /// <summary>The stretches round the frequencies in use, broken at the widest gaps.</summary>
    private List<SpectrumStretch> Stretches(double[] used, int breaks)
    {
        int[] ends = [.. Enumerable.Range(0, used.Length - 1).OrderByDescending(i => used[i + 1] - used[i]).Take(breaks).Append(used.Length - 1).Order()];
        var clusters = new List<SpectrumStretch>();
        int first = 0;
        foreach (int end in ends)
        {
            clusters.Add(new(used[first], used[end]));
            first = end + 1;
        }

        double inUse = clusters.Sum(c => c.SpanMHz);
        double margin = Math.Max(Math.Max(0.08 * inUse, 2 * Map.GuardKHz / 1000), (LeastSpanMHz - inUse) / 2);
        double step = AxisScale.EvenStep(inUse + (2 * margin), 20);
        var stretches = new List<SpectrumStretch>();
        foreach (SpectrumStretch cluster in clusters)
        {
            // Rounded to a thousandth of a step more than needed, or 863.0999 would start a step too early.
            double low = Math.Max(step * Math.Floor(((cluster.LowMHz - margin) / step) + 1e-3), step), high = step * Math.Ceiling(((cluster.HighMHz + margin) / step) - 1e-3);
            if (stretches.Count > 0 && low <= stretches[^1].HighMHz)
            {
                low = stretches[^1].LowMHz;
                stretches.RemoveAt(stretches.Count - 1);
            }

            stretches.Add(new(low, high));
        }

        return stretches;
    }
}
