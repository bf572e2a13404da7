using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Drawing;

/// <summary>Says in words what a clip's picture shows.</summary>
internal static class ClipText
{
    private const int ReasonMax = 200, ComparisonMax = 240, NameMax = 40;
    private const int MostReasons = 3, MostStretches = 4;

    /// <summary>The picture in complete sentences, at most <see cref="PlanText.MaxLength"/> characters.</summary>
    public static string Of(ClipFacts facts)
    {
        List<(int Weight, string Words)> sentences = [];
        IReadOnlyList<ClipReason> reasons = facts.View.Verdict.Reasons;
        if (reasons.Count == 0)
        {
            sentences.Add((20, $"{ClipWords.Of(facts.Outcome)}: {SentenceFit.Stopped(SentenceFit.Cut(facts.FirstReason, ReasonMax))}"));
        }

        for (int i = 0; i < Math.Min(MostReasons, reasons.Count); i++)
        {
            sentences.Add((20 - (6 * i), (i == 0 ? $"{ClipWords.Of(facts.Outcome)}: " : "") + Reason(facts, reasons[i])));
        }

        sentences.Add((15, Ratio(facts)));
        sentences.Add((12, Peaks(facts)));
        sentences.Add((13, Tags(facts)));
        sentences.Add((16, facts.View.Comparison is { } comparison ? SentenceFit.Stopped(SentenceFit.Cut(UserText.Clean(comparison.Words), ComparisonMax)) : ""));
        sentences.Add((9, Bands(facts)));
        sentences.Add((10, Counted(facts, facts.Clipping, "clipping run", "clipping runs")));
        sentences.Add((10, Counted(facts, facts.Dropouts, "dropout", "dropouts")));
        sentences.Add((6, Speech(facts)));
        sentences.Add((3, Octaves(facts)));
        string file = facts.FileName.Length > 0 ? $"{UserText.Cut(facts.FileName, NameMax)}, " : "";
        sentences.Add((4, $"The picture shows {file}{facts.ChannelWords}, {ClipWords.Length(facts.DurationSeconds)} long: tags, spectrum and level along the time, and octaves."));
        return SentenceFit.Join(sentences);
    }

    private static string Reason(ClipFacts facts, ClipReason reason)
    {
        string words = SentenceFit.Stopped(SentenceFit.Cut(UserText.Clean(reason.Words), ReasonMax));
        if (reason.Stretches.Count == 0)
        {
            return words;
        }

        string more = reason.Stretches.Count > MostStretches ? $" and {reason.Stretches.Count - MostStretches} more" : "";
        return $"{words} At {string.Join(", ", reason.Stretches.Take(MostStretches).Select(s => ClipWords.Stretch(s, facts.TimeDecimals)))}{more}.";
    }

    private static string Ratio(ClipFacts facts)
    {
        if (facts.SpeechNoise is not { } report)
        {
            return facts.Channel.IsSilent ? "" : "The clip is too short to part speech from noise.";
        }

        string noise = $"noise is {FigureWords.Number(report.NoiseAWeightedDb)} dBFS";
        return report is { SpeechToNoiseDb: { } ratio, SpeechAWeightedDb: { } speech }
            ? $"Speech is {FigureWords.Number(ratio)} dB over noise, give or take {FigureWords.Number(report.SpeechToNoiseUncertaintyDb ?? 0)} dB; speech is {FigureWords.Number(speech)} dBFS and {noise}, A-weighted."
            : $"No speech was found; {noise}, A-weighted.";
    }

    private static string Peaks(ClipFacts facts)
    {
        if (facts.Channel.IsSilent)
        {
            return "The channel is digital silence.";
        }

        TruePeak peak = facts.Channel.TruePeak;
        string at = peak.Seconds is { } seconds ? $" at {ClipWords.Time(seconds, facts.TimeDecimals)}" : "";
        string loudness = facts.Channel.Loudness.IntegratedLkfs is { } lufs ? $"loudness is {FigureWords.Number(lufs)} LUFS" : "it is too short or too quiet for a loudness";
        return peak.PeakDbtp is { } dbtp ? $"True peak is {FigureWords.Number(dbtp, "0.0")} dBTP{at}; {loudness}." : "";
    }

    private static string Tags(ClipFacts facts)
    {
        if (facts.Channel.Tags is not { } tags)
        {
            return facts.Channel.IsSilent ? "" : "Engine, wind and fan were not listened for.";
        }

        string[] parts = [Of(TagState.Present, "heard"), Of(TagState.Unsure, "unsure of"), Of(TagState.Absent, "not heard")];
        string all = string.Join("; ", parts.Where(p => p.Length > 0));
        return $"Tags: {all}.";

        string Of(TagState state, string words)
        {
            ClipTag[] alike = [.. ClipWords.Tags.Where(t => tags.States.GetValueOrDefault(t) == state)];
            return alike.Length == 0 ? "" : $"{words} {string.Join(", ", alike.Select(t => $"{ClipWords.Of(t)} ({FigureWords.Share(tags.Overall[t])})"))}";
        }
    }

    private static string Bands(ClipFacts facts)
    {
        if (facts.View.Comparison is not { } comparison)
        {
            return "";
        }

        string ratio = comparison.SpeechToNoiseDb is { MeasuredDb: { } measured, PredictedDb: var predicted }
            ? $"Forecast was {FigureWords.Number(predicted)} dB of speech over noise, measured {FigureWords.Number(measured)} dB, give or take {FigureWords.Number(comparison.PlusMinusDb)} dB." : "";
        ComparedBand? farthest = comparison.Bands.Where(b => b.Noise.DifferenceDb is not null).MaxBy(b => Math.Abs(b.Noise.DifferenceDb!.Value));
        string band = farthest?.Noise.DifferenceDb is { } off && Math.Abs(off) >= 1
            ? $"Noise is farthest from the forecast at {FigureWords.Number(farthest.CentreHz)} Hz: {FigureWords.Number(Math.Abs(off))} dB {(off > 0 ? "more" : "less")}." : "";
        return $"{ratio} {band}".Trim();
    }

    private static string Counted(ClipFacts facts, Stretches stretches, string one, string many) => stretches.Count switch
    {
        0 => "",
        1 when stretches.First.Count > 0 => $"There is one {one}, at {ClipWords.Time(stretches.First[0].StartSeconds, facts.TimeDecimals)}.",
        1 => $"There is one {one}.",
        _ when stretches.First.Count > 0 => $"There are {FigureWords.Number(stretches.Count)} {many}, the first at {ClipWords.Time(stretches.First[0].StartSeconds, facts.TimeDecimals)}.",
        _ => $"There are {FigureWords.Number(stretches.Count)} {many}.",
    };

    private static string Speech(ClipFacts facts)
    {
        IReadOnlyList<TimeStretch> speech = facts.Channel.Speech;
        if (speech.Count == 0)
        {
            return "";
        }

        string seconds = FigureWords.Number(speech.Sum(s => s.EndSeconds - s.StartSeconds), "0.#");
        return $"Speech is marked from {ClipWords.Time(speech[0].StartSeconds, facts.TimeDecimals)} to {ClipWords.Time(speech.Max(s => s.EndSeconds), facts.TimeDecimals)}, {seconds} s in all.";
    }

    private static string Octaves(ClipFacts facts)
    {
        int noise = facts.Octaves.Series.ToList().IndexOf(OctaveSeries.MeasuredNoise);
        OctaveBar[] bars = noise < 0 ? [] : [.. facts.Octaves.Bars.Where(b => b.LevelsDb[noise] is not null)];
        return bars.Length == 0 ? "" : $"Noise by octave from {FigureWords.Number(bars[0].CentreHz)} Hz, in {facts.Octaves.Unit}: {string.Join(", ", bars.Select(b => FigureWords.Number(b.LevelsDb[noise]!.Value)))}.";
    }
}
