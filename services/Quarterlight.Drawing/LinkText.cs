using Quarterlight.Radio.Link;

namespace Quarterlight.Drawing;

/// <summary>Says in words what a link picture shows.</summary>
internal static class LinkText
{
    private const int HeadlineMax = 320;

    /// <summary>What stands at the gap, such as gap 60 m: -71 dBm, SNR 48 dB.</summary>
    public static string GapWords(LinkView view)
    {
        LinkReport report = view.Report;
        string second = report.SnrDb is < 0 ? "no sound" : report.SnrDb is { } snr ? $"SNR {FigureWords.Number(snr)} dB" : $"margin {FigureWords.Number(report.MarginDb)} dB";
        string end = view.GapIsOutsideTheModel ? " (outside the model)" : "";
        return $"gap {view.Distance(report.GapM)}: {FigureWords.Number(report.LevelDbm)} dBm, {second}{end}";
    }

    /// <summary>The picture in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</summary>
    public static string Of(LinkView view)
    {
        LinkReport report = view.Report;
        return SentenceFit.Join(
        [
            (9, SentenceFit.Stopped(SentenceFit.Cut(FigureWords.Rewritten(report.Headline, view.Unit), HeadlineMax))),
            (1, $"The picture shows the level at the receiver against the distance between the antennas, from {view.Distance(view.LowM)} to {view.Distance(view.HighM)}."),
            (8, AtTheGap(view)),
            (7, Ranges(view)),
            (3, $"Noise and other stations together are at {FigureWords.Number(report.NoiseDbm)} dBm."),
            (6, Lawful(view)),
            (2, view.TargetSnrDb is { } target ? $"The {(view.TargetIsStated ? "signal over noise asked for" : "signal over noise at the level needed")} is {FigureWords.Number(target)} dB." : ""),
            (5, view.GapIsOutsideTheModel ? $"The gap is outside what the path model covers, {view.Distance(report.Path.NearestM)} to {view.Distance(report.Path.FarthestM)}." : ""),
        ]);
    }

    private static string AtTheGap(LinkView view)
    {
        LinkReport report = view.Report;
        string snr = report.SnrDb is { } db ? $", with an audio signal over noise of {FigureWords.Number(db)} dB" : "";
        string margin = report.MarginDb >= 0 ? $"{FigureWords.Number(report.MarginDb)} dB less than it has" : $"{FigureWords.Number(-report.MarginDb)} dB more than it has";
        return $"At the gap of {view.Distance(report.GapM)} the level is {FigureWords.Number(report.LevelDbm)} dBm, give or take {FigureWords.Number(report.LevelUncertaintyDb)} dB{snr}; "
            + $"the receiver needs {FigureWords.Number(report.NeededLevelDbm)} dBm, {margin}, and reception holds for {FigureWords.Share(report.AvailabilityFraction)} of time and places.";
    }

    private static string Ranges(LinkView view)
    {
        if (view.Bands.All(b => b.RangeM <= 0))
        {
            return $"Reception holds at no distance for {string.Join(", ", view.Bands.Select(b => FigureWords.Share(b.AvailabilityFraction)))} of time and places.";
        }

        return $"By share of time and places it holds: {string.Join(", ", view.Bands.Select(view.RangeWords))}.";
    }

    private static string Lawful(LinkView view)
    {
        if (view.Report.LawfulLevelDbm is not { } level)
        {
            return "There is no licence-exempt level there, so none is drawn.";
        }

        string range = view.Report.LawfulRange is { } lawful ? $"; reception then holds: {view.RangeWords(lawful)}" : "";
        return $"At the lawful level{(view.Curve.Count > 1 ? ", a dashed curve," : "")} the gap gets {FigureWords.Number(level)} dBm{range}.";
    }
}
