using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A judged clip in words, for a phone and a tired reader: what to do, why and where, then figures.</summary>
internal static class ClipText
{
    // What fits a phone's screen beside the rest: judgement.
    private const int MostReasons = 5;
    private const int MostPlaces = 3;
    private const int MostCautions = 2;

    // Says what headline and figures say already.
    private const string Clean = "clean";

    /// <summary>The decision in one line.</summary>
    public static string Headline(ClipReport report) => report.Verdict is { Headline.Length: > 0 } verdict ? Sentence(verdict.Headline) : $"{Outcome(report.Verdict?.Outcome ?? ClipOutcome.Unspecified)}.";

    /// <summary>The standard answer, about twelve lines at most.</summary>
    public static List<CrewLine> Lines(ClipReport report, Scene? scene, UnitPreference units)
    {
        List<CrewLine> lines = Reasons(report, MostReasons, MostPlaces);
        if (Channel(report) is { } channel)
        {
            lines.Add(new(CrewLineKind.Figures, Figures(report, channel)));
            if (Heard(channel) is { Length: > 0 } heard)
            {
                lines.Add(new(CrewLineKind.Heard, $"Heard{On(report, channel.Number)}: {heard}."));
            }
        }

        if (report.Comparisons.Count > 0)
        {
            lines.Add(new(CrewLineKind.Comparison, Comparison(report, report.Comparisons.FirstOrDefault(c => c.Channel == Channel(report)?.Number) ?? report.Comparisons[0], scene)));
        }

        lines.Add(new(CrewLineKind.Certainty, Certainty(report)));
        lines.AddRange(RadioWordings.Cautions(report.Advisories, units, MostCautions));
        if (report.Remarks.Count > 0)
        {
            lines.Add(new(CrewLineKind.Plain, $"About the file: {string.Join(" ", report.Remarks.Take(2).Select(Sentence))}"));
        }

        return lines;
    }

    /// <summary>Reasons in order of harm, each with where and the way out.</summary>
    public static List<CrewLine> Reasons(ClipReport report, int most, int places)
    {
        ClipReason[] all = [.. (report.Verdict?.Reasons ?? []).Where(r => r.Code != Clean)];
        List<CrewLine> lines = [.. all.Take(most).Select(r => new CrewLine(CrewLineKind.Reason, Reason(report, r, places)))];
        if (all.Length > most)
        {
            lines.Add(new(CrewLineKind.Reason, Say($"And {all.Length - most} more: ask \"why?\".")));
        }

        return lines;
    }

    /// <summary>One reason: what, where, what mends it.</summary>
    public static string Reason(ClipReport report, ClipReason reason, int places)
    {
        string where = reason.Stretches.Count == 0 ? "" : ClipTimes.Say(reason.Stretches, places);
        string channel = reason.Channel > 0 && report.Channels.Count > 1 ? Say($"channel {reason.Channel}") : "";
        string at = string.Join(", ", new[] { channel, where }.Where(p => p.Length > 0));
        string remedy = reason.Remedy.Length > 0 ? $" {Sentence(reason.Remedy)}" : "";
        return $"{(at.Length > 0 ? $"{Capital(at)}: " : "")}{(at.Length > 0 ? Lower(Sentence(reason.Words)) : Sentence(reason.Words))}{remedy}";
    }

    /// <summary>The channel that the verdict speaks of: that of the worst reason that names one, else the worst; null without channels.</summary>
    public static ClipChannel? Channel(ClipReport report)
    {
        int named = report.Verdict?.Reasons.FirstOrDefault(r => r.Channel > 0 && r.Outcome == report.Verdict.Outcome)?.Channel ?? 0;
        return report.Channels.FirstOrDefault(c => c.Number == named) ?? report.Channels.OrderByDescending(c => (int)c.Outcome).ThenBy(c => c.Number).FirstOrDefault();
    }

    /// <summary>Speech over noise, peak, loudness and noise in one line.</summary>
    public static string Figures(ClipReport report, ClipChannel channel)
    {
        SpeechAndNoise? s = channel.SpeechAndNoise;
        var parts = new List<string> { s?.SpeechToNoiseDb is { } over ? $"speech over noise {PlacementText.Estimate(over)} dB(A)" : "no speech to measure" };
        if (channel.HasTruePeakDbtp)
        {
            parts.Add(Say($"true peak {channel.TruePeakDbtp:0.0} dBTP"));
        }

        if (channel.Loudness is { HasIntegratedLufs: true } loudness)
        {
            parts.Add(Say($"loudness {loudness.IntegratedLufs:0.0} LUFS"));
        }

        if (s?.NoiseDbfsA is { } noise)
        {
            parts.Add($"noise {PlacementText.Estimate(noise)} dBFS(A)");
        }

        string lead = On(report, channel.Number);
        return $"{(lead.Length > 0 ? $"Figures{lead}: {string.Join(", ", parts)}" : Capital(string.Join(", ", parts)))}.";
    }

    /// <summary>What was heard on a channel: what is there, what cannot be told, what is not there; empty when nobody listened.</summary>
    public static string Heard(ClipChannel channel)
    {
        if (channel.Tags is not { Findings.Count: > 0 } tags)
        {
            return "";
        }

        var parts = new List<string>();
        string[] there = [.. tags.Findings.Where(f => f.State == TagState.Present).OrderByDescending(f => f.Chance).Select(f => Say($"{Tag(f.Tag)} ({f.Chance * 100:0} %)"))];

        // With a noise there, whether the sound is clean is no longer a question.
        string[] unsure = [.. tags.Findings.Where(f => f.State == TagState.Unsure && (f.Tag != ClipTag.Clean || there.Length == 0)).Select(f => Tag(f.Tag))];
        string[] absent = [.. tags.Findings.Where(f => f.State == TagState.Absent && f.Tag != ClipTag.Clean).Select(f => "no " + Tag(f.Tag))];
        parts.Add(there.Length > 0 ? Join(there) : "nothing for certain");
        if (unsure.Length > 0)
        {
            parts.Add($"cannot tell about {Join(unsure)}, so listen");
        }

        if (absent.Length > 0)
        {
            parts.Add(string.Join(", ", absent));
        }

        return string.Join("; ", parts);
    }

    /// <summary>The forecast beside the measurement, in one line.</summary>
    public static string Comparison(ClipReport report, PlanComparison comparison, Scene? scene)
    {
        string who = scene is null ? Name(comparison.TalkerId) : Talker(scene, comparison.TalkerId);
        string lead = report.Comparisons.Count > 1 ? Say($"Beside the plan, channel {comparison.Channel}, {who}") : $"Beside the plan, {who}";
        string levels = comparison.SpeechToNoiseDb is { } s
            ? s.HasMeasuredDb ? Say($"planned {Math.Round(s.PredictedDb):0} dB of speech over noise, measured {Math.Round(s.MeasuredDb):0} (±{comparison.PlusMinusDb:0})") : Say($"planned {Math.Round(s.PredictedDb):0} dB of speech over noise, not measured")
            : "";
        string words = comparison.Words.Length > 0 ? Sentence(comparison.Words) : "";
        return words.Length > 0 ? $"{lead}: {Lower(words)}" : $"{lead}: {levels}.";
    }

    /// <summary>How far the figures can be trusted.</summary>
    public static string Certainty(ClipReport report)
    {
        var parts = new List<string>();
        if (Channel(report)?.SpeechAndNoise?.SpeechToNoiseDb is { PlusMinus: > 0 } over)
        {
            parts.Add(Say($"speech over noise ±{over.PlusMinus:0} dB"));
        }

        if (report.Comparisons.Count > 0)
        {
            parts.Add(Say($"a difference from the plan within ±{report.Comparisons[0].PlusMinusDb:0} dB says nothing{(report.Comparisons[0].TiedToSpeech ? "; levels are tied to the forecast speech" : "")}"));
        }

        parts.Add("peaks and faults are counted, what is heard is a likelihood");
        return $"How sure: {string.Join("; ", parts)}.";
    }

    /// <summary>What the file is, in a few words.</summary>
    public static string File(ClipReport report)
    {
        string name = FileName(report.FileName);
        return report.Format is { } f
            ? Say($"{name} ({(f.Words.Length > 0 ? CrewText.Clean(f.Words, 60) + ", " : "")}{f.SampleRateHz / 1000.0:0.###} kHz, {Channels(f.ChannelCount)}, {ClipTimes.Say(f.DurationS)})") : name;
    }

    /// <summary>A file's name, safe to repeat and short.</summary>
    public static string FileName(string name)
    {
        string clean = CrewText.Clean(name, CrewText.LongestName);
        return clean.Length == 0 ? "the clip" : clean.Length <= 40 ? clean : $"{clean[..24]}...{clean[^12..]}";
    }

    public static string Channels(int count) => count switch { 1 => "mono", 2 => "stereo", _ => Say($"{count} channels") };

    public static string Outcome(ClipOutcome outcome) => outcome switch
    {
        ClipOutcome.Use => "Use it",
        ClipOutcome.UseWithCare => "Use it with care",
        ClipOutcome.Redo => "Record it again",
        _ => "No verdict",
    };

    public static string Tag(ClipTag tag) => tag switch
    {
        ClipTag.Engine => "engine",
        ClipTag.Wind => "wind",
        ClipTag.AirConditioning => "fan",
        ClipTag.Clean => "clean sound",
        _ => "something else",
    };

    /// <summary>A sentence of the planner's, safe, with its final stop.</summary>
    public static string Sentence(string text) => $"{CrewText.Clean(text, CrewText.LongestSentence).TrimEnd('.', ' ')}.";

    /// <summary>A sentence as it follows a colon; unlike elsewhere, a lone first letter is an article.</summary>
    public static string Lower(string sentence) => sentence.StartsWith("A ", StringComparison.Ordinal) ? "a" + sentence[1..] : RadioWordings.Lower(sentence);

    private static string On(ClipReport report, int channel) => report.Channels.Count > 1 ? Say($" on channel {channel}{Track(report, channel)}") : "";

    private static string Track(ClipReport report, int channel) =>
        report.Channels.FirstOrDefault(c => c.Number == channel) is { TrackName.Length: > 0 } c ? $" ({CrewText.Clean(c.TrackName, 40)})" : "";
}
