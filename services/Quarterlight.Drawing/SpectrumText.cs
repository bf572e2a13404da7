namespace Quarterlight.Drawing;

/// <summary>Says in words what a spectrum picture shows.</summary>
internal static class SpectrumText
{
    private const int HeadlineMax = 320;
    private const int MostNamed = 12;

    /// <summary>The picture in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</summary>
    public static string Of(SpectrumView view)
    {
        SpectrumMap map = view.Map;
        SpectrumChannel[] own = [.. view.Channels.Where(c => !c.IsNeighbour)], neighbours = [.. view.Channels.Where(c => c.IsNeighbour)];
        SpectrumChannel[] hit = [.. view.Channels.Where(c => !c.IsClean)];
        return SentenceFit.Join(
        [
            (9, SentenceFit.Stopped(SentenceFit.Cut(map.Headline, HeadlineMax))),
            (1, $"The picture shows carriers and intermodulation products from {view.Words()} MHz."),
            (8, Counted(own, hit)),
            (7, hit.Length > 0 ? $"Hit by a product: {List(view, hit)}." : ""),
            (4, own.Any(c => c.IsClean) ? $"Clean, in MHz: {List(view, [.. own.Where(c => c.IsClean)])}." : ""),
            (3, neighbours.Length > 0 ? $"Neighbours: {List(view, neighbours)}." : ""),
            (6, Products(map)),
            (5, map.Excluded.Count > 0 ? $"Not to be used: {string.Join("; ", map.Excluded.OrderBy(b => b.LowMHz).Select(b => $"{SpectrumView.Edge(b.LowMHz)} to {SpectrumView.Edge(b.HighMHz)} MHz, {b.Reason}"))}." : ""),
            (2, SentenceFit.Stopped(view.CropWords())),
        ]);
    }

    private static string Counted(SpectrumChannel[] own, SpectrumChannel[] hit)
    {
        if (own.Length == 0)
        {
            return "There is no own carrier.";
        }

        int clean = own.Length - hit.Count(c => !c.IsNeighbour);
        return own.Length == 1 ? $"The one carrier is {(clean == 1 ? "clean" : "hit by a product")}." : $"Of {own.Length} carriers {clean} are clean.";
    }

    private static string Products(SpectrumMap map)
    {
        if (map.Products.Count == 0)
        {
            return "There are no products.";
        }

        (int thirds, int fifths, int hits) = (map.Products.Count(p => p.Order < 5), map.Products.Count(p => p.Order >= 5), map.Products.Count(p => p.IsHit));
        double[] own = [.. map.Channels.Select(c => c.FrequencyMHz)];
        string nearest = own.Length == 0 ? "" : $"; the nearest is {FigureWords.Number(1000 * map.Products.Min(p => own.Min(f => Math.Abs(f - p.FrequencyMHz))))} kHz from a carrier, with a guard of {FigureWords.Number(map.GuardKHz, "0.#")} kHz";
        return $"There are {thirds} products of third and {fifths} of fifth order, {hits} of them on a carrier{nearest}.";
    }

    private static string List(SpectrumView view, SpectrumChannel[] channels) =>
        string.Join(", ", channels.Take(MostNamed).Select(c => $"{c.Label} {view.Frequency(c.FrequencyMHz)}"))
        + (channels.Length > MostNamed ? $" and {channels.Length - MostNamed} more" : "");
}
