using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing;

/// <summary>Says in words what a noise picture shows.</summary>
internal static class NoiseText
{
    private const int RemarkMax = 160, RowMax = 60;

    /// <summary>The picture in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</summary>
    public static string Of(NoiseView view) => SentenceFit.Join(
        [
            (30, SentenceFit.Stopped(NoiseWords.Headline(view))),
            (28, view.Report.Verdict is null ? "" : SentenceFit.Stopped(NoiseWords.Level(view))),
            (29, SentenceFit.Stopped(NoiseWords.Fan(view))),
            (29, SentenceFit.Stopped(NoiseWords.Worst(view))),
            (20, SentenceFit.Stopped(NoiseWords.Loudest(view))),
            (27, SentenceFit.Stopped(NoiseWords.DailyLimit(view))),
            (12, Octaves(view)),
            .. view.Report.Table.Select((r, i) => (18 - i, Row(view, r))),
            (6, view.Report.Advisories is [{ } first, ..] ? SentenceFit.Stopped(SentenceFit.Cut(UserText.Clean(first.Message), RemarkMax)) : ""),
            (4, $"The picture shows noise by octave at the driver's ear{(view.Worst is null ? "" : ", speech against noise at the microphone")} and a table of speeds and conditions."),
        ]);

    private static string Octaves(NoiseView view)
    {
        double[] levels = view.Report.Noise.LevelsDb.ToArray();
        return Array.TrueForAll(levels, double.IsFinite) ? $"By octave from {FigureWords.Number(OctaveBands.CentresHz[0])} Hz, in dB: {string.Join(", ", levels.Select(db => FigureWords.Number(db)))}." : "";
    }

    private static string Row(NoiseView view, NoiseRow row)
    {
        string words = UserText.Cut(UserText.Clean(row.Words), RowMax);
        words = words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : "One row";
        if (view.Judged)
        {
            return $"{words}: {NoiseWords.Row(view, row)}.";
        }

        string[] cells = [.. row.Cells.Where(c => double.IsFinite(c.NoiseDba)).Select(c => $"{FigureWords.Number(c.NoiseDba)} at {SpeedWords.Figure(c.SpeedKmPerHour, view.Unit)}")];
        return cells.Length == 0 ? "" : $"{words}, dB(A) by {SpeedWords.Sign(view.Unit)}: {string.Join(", ", cells)}.";
    }
}
