namespace Quarterlight.Clips.Judgement;

/// <summary>Judges a measured clip: use, use with care, redo; what is wrong, where, and what mends it. docs/models/clip-verdict.md.</summary>
public static class ClipJudge
{
    /// <summary>Judges a clip.</summary>
    /// <param name="measures">What was measured.</param>
    /// <param name="thresholds">From where a clip is used with care or redone; valid.</param>
    /// <param name="channelNames">Name of each channel, empty for none; null when there are none.</param>
    /// <exception cref="ArgumentException">There are no channels, or as many names as channels are not given.</exception>
    public static ClipVerdict Judge(ClipMeasures measures, ClipThresholds thresholds, IReadOnlyList<string>? channelNames = null)
    {
        ArgumentNullException.ThrowIfNull(measures);
        ArgumentNullException.ThrowIfNull(thresholds);
        int channels = measures.Channels.Count;
        if (channels == 0 || (channelNames is not null && channelNames.Count != channels))
        {
            throw new ArgumentException("There must be a channel, and a name for each when there are names.", nameof(measures));
        }

        var outcomes = new ClipOutcome[channels];
        if (measures.Channels.All(c => c.IsSilent))
        {
            Array.Fill(outcomes, ClipOutcome.Redo);
            return Verdict([ChannelRules.Silent(measures)], outcomes, 0, channelNames);
        }

        List<Finding> findings = Find(measures, thresholds);
        foreach (Finding finding in findings)
        {
            if (finding.Reason.Channel is { } c && finding.Reason.Outcome > outcomes[c])
            {
                outcomes[c] = finding.Reason.Outcome;
            }
        }

        // A copy of a channel is no better than what it copies.
        foreach (ChannelPair pair in Copies(measures))
        {
            outcomes[pair.Second] = (ClipOutcome)Math.Max((int)outcomes[pair.Second], (int)outcomes[pair.First]);
        }

        int best = Enumerable.Range(0, channels).Where(c => !measures.Channels[c].IsSilent)
            .MaxBy(c => measures.Channels[c].Spectrum.SpeechNoise?.SpeechToNoiseDb ?? double.NegativeInfinity);
        if (findings.All(f => f.Reason.Outcome == ClipOutcome.Use))
        {
            findings.Add(ChannelRules.Clean(measures.Channels[best]));
        }

        Finding[] ordered = [.. findings.OrderByDescending(f => f.Reason.Outcome).ThenByDescending(f => f.Reason.Harm).ThenBy(f => f.Reason.Channel ?? -1)];
        return Verdict(ordered, outcomes, ordered[0].Reason.Channel ?? best, channelNames);
    }

    private static List<Finding> Find(ClipMeasures measures, ClipThresholds limits)
    {
        var findings = new List<Finding>(ChannelRules.Remarks(measures));
        HashSet<int> copies = [.. Copies(measures).Select(p => p.Second)];
        foreach (ChannelMeasures channel in measures.Channels.Where(c => !copies.Contains(c.Index)))
        {
            if (channel.IsSilent)
            {
                findings.Add(ChannelRules.Unused(channel));
            }
            else
            {
                findings.AddRange(OfChannel(measures, channel, limits).OfType<Finding>());
            }
        }

        foreach (ChannelPair pair in measures.Pairs.Where(p => !measures.Channels[p.First].IsSilent && !measures.Channels[p.Second].IsSilent))
        {
            if (pair.Relation.Identical)
            {
                // Of three alike the third is named beside the first only.
                if (!copies.Contains(pair.First))
                {
                    findings.Add(ChannelRules.Identical(pair));
                }
            }
            else if (!copies.Contains(pair.First) && !copies.Contains(pair.Second) && ChannelRules.Polarity(pair) is { } polarity)
            {
                findings.Add(polarity);
            }
        }

        return findings;
    }

    private static IEnumerable<Finding?> OfChannel(ClipMeasures clip, ChannelMeasures channel, ClipThresholds limits)
    {
        double seconds = clip.DurationSeconds;
        yield return DefectRules.Dropouts(channel, limits, seconds, clip.SampleRateHz);
        yield return DefectRules.Clipping(channel, limits, seconds, clip.SampleRateHz);
        yield return DefectRules.Offset(channel, limits);
        yield return LevelRules.Peak(channel, limits);
        bool speech = NoiseRules.HasSpeech(channel, limits);
        IReadOnlyList<HeardTag> heard = HeardTags.Of(channel, seconds);
        IReadOnlyList<HeardTag> causes = NoiseRules.Causes(channel, heard);
        Finding? ratio = speech ? NoiseRules.SpeechToNoise(channel, limits, causes) : NoiseRules.NoSpeech(channel, limits);
        yield return ratio;
        yield return speech ? LevelRules.Speech(channel, limits) : null;
        bool engine = heard.Any(h => h.Tag == Tagging.ClipTag.Engine);
        yield return NoiseRules.Hum(channel, limits, speech, engine);
        yield return TagRules.CabinPressure(channel);

        // What the speech over noise has named already is not said twice.
        bool folded = speech && ratio is not null;
        foreach (HeardTag tag in heard.Where(h => !(folded && causes.Contains(h))))
        {
            yield return TagRules.Heard(channel, limits, tag);
        }

        yield return TagRules.Unsure(channel);
    }

    // Channels that carry the same sound as an earlier one; each once as the second, beside the first of its kind.
    private static IEnumerable<ChannelPair> Copies(ClipMeasures measures) => measures.Pairs
        .Where(p => p.Relation.Identical && !measures.Channels[p.First].IsSilent)
        .GroupBy(p => p.Second)
        .Select(g => g.MinBy(p => p.First)!)
        .OrderBy(p => p.Second);

    private static ClipVerdict Verdict(Finding[] ordered, ClipOutcome[] outcomes, int worst, IReadOnlyList<string>? names)
    {
        Finding first = ordered[0];
        string? channel = outcomes.Length > 1 && first.Reason.Channel is { } c ? ChannelWords(c, names) : null;
        return new ClipVerdict(first.Reason.Outcome, Headline.Of(first, channel), [.. ordered.Select(f => f.Reason)], outcomes, worst);
    }

    private static string ChannelWords(int channel, IReadOnlyList<string>? names) =>
        names?[channel] is { Length: > 0 } name ? $"channel {channel + 1} ({name})" : $"channel {channel + 1}";
}
