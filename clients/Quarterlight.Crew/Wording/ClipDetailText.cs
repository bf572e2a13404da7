using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>What a judged clip holds, one thing asked about at a time.</summary>
internal static class ClipDetailText
{
    private const int MostChannels = 12;
    private const int AllPlaces = 10;

    // Fainter readings of hum and low end are not worth a word: judgement.
    private const double LeastConfidence = 0.3;

    /// <summary>Headline and lines of one aspect.</summary>
    public static (string Headline, List<CrewLine> Lines) Of(ClipReport report, ClipAspect aspect, Scene? scene, UnitPreference units) => aspect switch
    {
        ClipAspect.Why => Why(report),
        ClipAspect.Where => Where(report),
        ClipAspect.Figures => ($"{ClipText.File(report)}: {Lower(ClipText.Headline(report))}", [.. Shown(report).SelectMany(c => Channel(report, c)), .. Pairs(report), .. Limits(report)]),
        ClipAspect.Channels => Channels(report),
        ClipAspect.Comparison => Comparison(report, scene),
        ClipAspect.Loudness => Loudness(report),
        ClipAspect.EngineSpeed => EngineSpeed(report),
        ClipAspect.Heard => Heard(report),
        ClipAspect.Noise => Noise(report),
        ClipAspect.File => File(report),
        _ => (ClipText.Headline(report), ClipText.Lines(report, scene, units)),
    };

    private static (string, List<CrewLine>) Why(ClipReport report) => report.Verdict is { Reasons.Count: > 0 } verdict
        ? (ClipText.Headline(report), [.. verdict.Reasons.Select(r => new CrewLine(CrewLineKind.Reason, $"{ClipText.Reason(report, r, AllPlaces)}{Judged(r)}"))])
        : (ClipText.Headline(report), [new(CrewLineKind.Reason, "Nothing was found that would hurt.")]);

    private static string Judged(ClipReason r) => r.HasMeasured && r.HasLimit ? Say($" Measured {r.Measured:0.##}, limit {r.Limit:0.##} {CrewText.Clean(r.Unit, 20)}.") : "";

    private static (string, List<CrewLine>) Where(ClipReport report)
    {
        ClipReason[] placed = [.. (report.Verdict is { } v ? v.Reasons : []).Where(r => r.Stretches.Count > 0)];
        List<CrewLine> lines = [.. placed.Select(r => new CrewLine(CrewLineKind.Reason, $"{ClipTimes.Say(r.Stretches, AllPlaces)}{(r.Channel > 0 && report.Channels.Count > 1 ? Say($" on channel {r.Channel}") : "")}: {Lower(ClipText.Sentence(r.Words))}"))];
        ClipChannel? channel = ClipText.Channel(report);
        if (channel is { HasTruePeakAtS: true })
        {
            lines.Add(new(CrewLineKind.Figures, Say($"Loudest peak at {ClipTimes.Say(channel.TruePeakAtS)}, {channel.TruePeakDbtp:0.0} dBTP.")));
        }

        string headline = placed.Length > 0 ? $"First at {ClipTimes.Say(placed[0].Stretches[0].StartS)}." : "All through the clip; no reason has a place of its own.";
        return (headline, lines);
    }

    private static (string, List<CrewLine>) Channels(ClipReport report)
    {
        string headline = report.Channels.Count <= 1 ? "The clip has one channel." : Say($"Channel {ClipText.Channel(report)?.Number ?? 1} is the one the verdict speaks of; {report.Channels.Count} channels in all.");
        return (headline, [.. Shown(report).Select(c => new CrewLine(CrewLineKind.Plain, Say($"Channel {c.Number}{(c.TrackName.Length > 0 ? $" ({CrewText.Clean(c.TrackName, 40)})" : "")}: {Lower(ClipText.Outcome(c.Outcome))}{Worst(report, c)}."))), .. Pairs(report)]);
    }

    private static string Worst(ClipReport report, ClipChannel c) =>
        report.Verdict?.Reasons.FirstOrDefault(r => r.Channel == c.Number) is { } r ? $"; {Lower(ClipText.Sentence(r.Words)).TrimEnd('.')}" : "";

    private static (string, List<CrewLine>) Comparison(ClipReport report, Scene? scene)
    {
        if (report.Comparisons.Count == 0)
        {
            return ("The clip was not held against a plan.", [new(CrewLineKind.Plain, "Ask for the plan of the scene, then send the clip again, and say whose microphone it is if it has one channel.")]);
        }

        PlanComparison first = report.Comparisons[0];
        List<CrewLine> lines = [.. report.Comparisons.Skip(1).Select(c => new CrewLine(CrewLineKind.Comparison, ClipText.Comparison(report, c, scene)))];
        lines.AddRange(first.Bands.Where(b => b.SpeechToNoise is { HasMeasuredDb: true }).Select(b => new CrewLine(CrewLineKind.Figures,
            Say($"{Hz(b.CentreHz)}: planned {b.SpeechToNoise.PredictedDb:0}, measured {b.SpeechToNoise.MeasuredDb:0} dB of speech over noise."))));
        lines.Add(new(CrewLineKind.Certainty, ClipText.Certainty(report)));
        return (ClipText.Comparison(report, first, scene), lines);
    }

    private static (string, List<CrewLine>) Loudness(ClipReport report)
    {
        var lines = new List<CrewLine>();
        foreach (ClipChannel c in Shown(report))
        {
            string[] parts = [.. new[]
            {
                c.HasTruePeakDbtp ? Say($"true peak {c.TruePeakDbtp:0.0} dBTP{(c.HasTruePeakAtS ? $" at {ClipTimes.Say(c.TruePeakAtS)}" : "")}") : "digital silence",
                c.Loudness is { HasIntegratedLufs: true } l ? Say($"{l.IntegratedLufs:0.0} LUFS") : "too short or too quiet for a loudness",
                SpeechLevel(c),
            }.Where(p => p.Length > 0)];
            lines.Add(new(CrewLineKind.Figures, $"{(report.Channels.Count > 1 ? Say($"Channel {c.Number}: {string.Join("; ", parts)}") : Capital(string.Join("; ", parts)))}."));
        }

        Loudness? all = report.Programme;
        string loudest = all is { HasMaxShortTermLufs: true } ? Say($"; loudest three seconds {all.MaxShortTermLufs:0.0} LUFS{(all.HasMaxShortTermStartS ? $" from {ClipTimes.Say(all.MaxShortTermStartS)}" : "")}") : "";
        return (all is { HasIntegratedLufs: true } ? Say($"{all.IntegratedLufs:0.0} LUFS{(all.HasRangeLu ? Say($", range {all.RangeLu:0.0} LU") : "")}{loudest}.") : "The clip is too short or too quiet for a loudness.", lines);
    }

    private static (string, List<CrewLine>) EngineSpeed(ClipReport report)
    {
        EngineReading? best = report.Channels.Select(c => c.Engine).Where(e => e is { HasRpm: true }).MaxBy(e => e!.Confidence);
        EngineReading? any = best ?? report.Channels.Select(c => c.Engine).FirstOrDefault(e => e is not null);
        return best is not null
            ? (Say($"About {Math.Round(best.Rpm / 10) * 10:0} rpm, taken as {best.Cylinders} cylinders, four-stroke (confidence {best.Confidence * 100:0} %)."), [new(CrewLineKind.Figures, Say($"It fires at {best.FiringHz:0.0} Hz. Say another number of cylinders if it is wrong, such as \"it has six cylinders\"."))])
            : any is not null ? ("No engine speed could be told: the engine does not stand out.", [])
            : ("The engine speed needs the number of cylinders.", [new(CrewLineKind.Plain, "Say it, such as \"it has four cylinders\".")]);
    }

    private static (string, List<CrewLine>) Heard(ClipReport report)
    {
        ClipChannel? channel = ClipText.Channel(report);
        string heard = channel is null ? "" : ClipText.Heard(channel);
        var lines = new List<CrewLine>();
        foreach (ClipChannel c in Shown(report))
        {
            string lead = report.Channels.Count > 1 ? Say($"Channel {c.Number}: ") : "";
            if (c != channel && ClipText.Heard(c) is { Length: > 0 } other)
            {
                lines.Add(new(CrewLineKind.Heard, $"{lead}{other}."));
            }

            lines.AddRange(Faults(c).Select(f => new CrewLine(CrewLineKind.Figures, $"{lead}{f}")));
        }

        return (heard.Length > 0 ? $"Heard{(report.Channels.Count > 1 ? Say($" on channel {channel!.Number}") : "")}: {heard}." : report.Advisories.FirstOrDefault(a => a.Code == "no-tags") is { } none ? ClipText.Sentence(none.Message) : "Nothing was listened for: the clip is too short or silent.", lines);
    }

    private static (string, List<CrewLine>) Noise(ClipReport report)
    {
        ClipChannel? channel = ClipText.Channel(report);
        if (channel?.SpeechAndNoise is not { } s)
        {
            return ("The noise could not be measured: the clip is shorter than half a second.", []);
        }

        var lines = new List<CrewLine>();
        if (s.NoiseOctaves.Count > 0)
        {
            lines.Add(new(CrewLineKind.Figures, $"Noise by octave: {string.Join(", ", s.NoiseOctaves.Where(b => !b.IsCut).Select(b => Say($"{Hz(b.CentreHz)} {b.LevelDbfs:0}")))} dBFS."));
        }

        if (ClipText.Heard(channel) is { Length: > 0 } heard)
        {
            lines.Add(new(CrewLineKind.Heard, $"Heard: {heard}."));
        }

        lines.AddRange((report.Verdict is { } v ? v.Reasons : []).Where(r => r.Code is "speech-to-noise" or "engine" or "wind" or "air-conditioning" or "hum" or "cabin-pressure" or "no-speech").Select(r => new CrewLine(CrewLineKind.Reason, ClipText.Reason(report, r, AllPlaces))));
        return (ClipText.Figures(report, channel), lines);
    }

    private static (string, List<CrewLine>) File(ClipReport report)
    {
        ClipMetadata m = report.Metadata ?? new ClipMetadata();
        string[] said = [.. new[] { ("project", m.Project), ("scene", m.Scene), ("take", m.Take), ("roll", m.Tape), ("note", m.Note), ("starts at", m.StartTime), ("date", m.Date), ("written by", m.Originator) }
            .Where(p => p.Item2.Length > 0).Select(p => $"{p.Item1} {CrewText.Clean(p.Item2, 60)}")];
        List<CrewLine> lines = [new(CrewLineKind.Plain, said.Length == 0 ? "The recorder wrote nothing beside the sound." : $"{Capital(string.Join(", ", said))}{(m.Circled ? ", circled" : "")}.")];
        lines.AddRange(report.Remarks.Take(5).Select(r => new CrewLine(CrewLineKind.Plain, ClipText.Sentence(r))));
        return ($"{ClipText.File(report)}.", lines);
    }

    private static IEnumerable<CrewLine> Channel(ClipReport report, ClipChannel c)
    {
        yield return new(CrewLineKind.Figures, ClipText.Figures(report, c));
        string[] parts = [.. new[]
        {
            SpeechLevel(c),
            c.HasSamplePeakDbfs ? Say($"sample peak {c.SamplePeakDbfs:0.0} dBFS") : "",
            c.HasRmsDbov ? Say($"mean level {c.RmsDbov:0.0} dBov") : "",
            c.Engine is { HasRpm: true } e ? Say($"engine about {Math.Round(e.Rpm / 10) * 10:0} rpm") : "",
            Math.Abs(c.DcOffsetFraction) >= 0.001 ? Say($"offset {c.DcOffsetFraction * 100:0.0} % of full scale") : "",
        }.Where(p => p.Length > 0)];
        if (parts.Length > 0)
        {
            yield return new(CrewLineKind.Figures, $"{Capital(string.Join(", ", parts))}.");
        }

        foreach (string fault in Faults(c))
        {
            yield return new(CrewLineKind.Figures, fault);
        }

        if (ClipText.Heard(c) is { Length: > 0 } heard)
        {
            yield return new(CrewLineKind.Heard, $"Heard: {heard}.");
        }
    }

    private static string SpeechLevel(ClipChannel c) =>
        c.HasActiveSpeechLevelDbov ? Say($"speech {c.ActiveSpeechLevelDbov:0.0} dBov, active {c.ActivityFraction * 100:0} % of the time") : "";

    private static IEnumerable<string> Faults(ClipChannel c)
    {
        foreach ((string one, string many, ClipStretches? at) in new[] { ("clipped run", "clipped runs", c.Clipping), ("dropout", "dropouts", c.Dropouts) })
        {
            yield return at is { Count: > 0 } ? Say($"{at.Count} {(at.Count == 1 ? one : many)}: {ClipTimes.Say(at.First, AllPlaces)}.") : $"No {many}.";
        }

        foreach (HumReading hum in c.Hum.Where(h => h.Confidence >= LeastConfidence))
        {
            yield return Say($"Mains hum at {hum.MainsHz:0} Hz, {hum.LevelDbfs:0} dBFS.");
        }

        if (c.LowEnd is { } low && (low.Wind >= LeastConfidence || low.Pressure >= LeastConfidence))
        {
            yield return Say($"Low end moves: gusts {low.Wind * 100:0} %, cabin pressure {low.Pressure * 100:0} %.");
        }
    }

    private static IEnumerable<CrewLine> Pairs(ClipReport report) => report.Pairs.Where(p => p.Identical || p.PolarityInverted || p.HasDelayMs).Take(6).Select(p => new CrewLine(CrewLineKind.Plain,
        Say($"Channels {p.First} and {p.Second}: {(p.Identical ? "the same, sample for sample" : $"{(p.PolarityInverted ? "opposite polarity, " : "")}correlation {p.Correlation:0.00}{(p.HasDelayMs ? Say($", {p.DelayMs:0.0} ms apart") : "")}")}.")));

    private static IEnumerable<CrewLine> Limits(ClipReport report) => report.Thresholds is null ? [] :
        [new(CrewLineKind.Plain, Say($"Held against: use from {report.Thresholds.SpeechToNoiseUseDb:0.#} dB of speech over noise, with care from {report.Thresholds.SpeechToNoiseCareDb:0.#}; ask \"what are the limits\" for all."))];

    private static IEnumerable<ClipChannel> Shown(ClipReport report) => report.Channels.Take(MostChannels);

    private static string Hz(double hz) => hz >= 1000 ? Say($"{hz / 1000:0.#} kHz") : Say($"{hz:0.#} Hz");

    private static string Lower(string sentence) => ClipText.Lower(sentence);
}
