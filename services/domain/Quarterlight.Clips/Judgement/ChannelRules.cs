namespace Quarterlight.Clips.Judgement;

/// <summary>What concerns channels together, or the clip as a whole.</summary>
internal static class ChannelRules
{
    // Judgement: below this two microphones in one car may well disagree by distance alone.
    private const double PolarityCorrelation = 0.6;
    private const double ShortSeconds = 2, FullRateHz = 44_100;

    /// <summary>Nothing on any channel.</summary>
    public static Finding Silent(ClipMeasures clip) => new(
        new ClipReason
        {
            Code = ClipReasonCodes.Silent,
            Outcome = ClipOutcome.Redo,
            Harm = Harm.Silent,
            Words = clip.Channels.Count == 1 ? "There is nothing but digital silence." : $"There is nothing but digital silence on all {clip.Channels.Count} channels.",
            Remedy = "Check that the microphone is powered, patched and armed, then record again.",
        },
        "there is no sound",
        "Check power, patch and arming");

    /// <summary>A channel with nothing on it beside channels with sound.</summary>
    public static Finding Unused(ChannelMeasures channel) => new(
        new ClipReason
        {
            Code = ClipReasonCodes.UnusedChannel,
            Outcome = ClipOutcome.Use,
            Harm = Harm.UnusedChannel,
            Words = "There is nothing but digital silence on this channel.",
            Remedy = "If it should carry sound, check that it is powered, patched and armed.",
            Channel = channel.Index,
        },
        "there is no sound on it");

    /// <summary>Two channels that carry the same sound.</summary>
    public static Finding Identical(ChannelPair pair) => new(
        new ClipReason
        {
            Code = ClipReasonCodes.IdenticalChannels,
            Outcome = ClipOutcome.UseWithCare,
            Harm = Harm.IdenticalChannels,
            Words = $"Channels {pair.First + 1} and {pair.Second + 1} are the same sound.",
            Remedy = "Check the routing; if one microphone feeds both on purpose, keep one.",
            Channel = pair.Second,
        },
        $"channels {pair.First + 1} and {pair.Second + 1} are the same sound",
        "Check the routing");

    /// <summary>Two channels of opposite polarity.</summary>
    public static Finding? Polarity(ChannelPair pair) => pair.Relation is not { PolarityInverted: true } relation || Math.Abs(relation.Correlation) < PolarityCorrelation
        ? null
        : new(
            new ClipReason
            {
                Code = ClipReasonCodes.Polarity,
                Outcome = ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.Polarity, Math.Abs(relation.Correlation) - PolarityCorrelation, 1),
                Words = $"Channel {pair.Second + 1} stands upside down against channel {pair.First + 1} (correlation {Say.Number(relation.Correlation, 2)}): mixed, they cancel.",
                Remedy = $"Flip the polarity of channel {pair.Second + 1}, or check the cable's wiring.",
                Channel = pair.Second,
                Measured = relation.Correlation,
                Limit = -PolarityCorrelation,
            },
            $"channel {pair.Second + 1} is upside down against channel {pair.First + 1}",
            $"Flip the polarity of channel {pair.Second + 1}");

    /// <summary>Remarks on the clip as a whole.</summary>
    public static IEnumerable<Finding> Remarks(ClipMeasures clip)
    {
        if (clip.SampleRateHz < FullRateHz)
        {
            string half = Say.Limit(clip.SampleRateHz / 2000.0);
            yield return new(
                new ClipReason
                {
                    Code = ClipReasonCodes.LowRate,
                    Outcome = ClipOutcome.Use,
                    Harm = Harm.LowRate,
                    Words = $"The sample rate of {Say.Limit(clip.SampleRateHz / 1000.0)} kHz holds nothing above {half} kHz: what lies there was not judged.",
                    Remedy = "Record at 48 kHz.",
                    Measured = clip.SampleRateHz,
                    Limit = FullRateHz,
                    Unit = "Hz",
                },
                $"nothing above {half} kHz was judged");
        }

        if (clip.DurationSeconds < ShortSeconds)
        {
            yield return new(
                new ClipReason
                {
                    Code = ClipReasonCodes.ShortClip,
                    Outcome = ClipOutcome.Use,
                    Harm = Harm.ShortClip,
                    Words = $"The clip is only {Say.Number(clip.DurationSeconds, 1)} s long: low sounds and the noise floor are hardly judged.",
                    Remedy = "Send 10 s or more.",
                    Measured = clip.DurationSeconds,
                    Limit = ShortSeconds,
                    Unit = "s",
                },
                "the clip is very short");
        }
    }

    /// <summary>Nothing found, with the key figures of the channel that carries speech best.</summary>
    public static Finding Clean(ChannelMeasures channel)
    {
        var figures = new List<string>();
        if (channel.Spectrum.SpeechNoise?.SpeechToNoiseDb is { } ratio)
        {
            figures.Add($"speech {Say.Number(ratio)} dB over the noise");
        }

        if (channel.TruePeak.PeakDbtp is { } peak)
        {
            figures.Add($"peak {Say.Number(peak)} dBTP");
        }

        string said = string.Join(", ", figures);
        return new(
            new ClipReason { Code = ClipReasonCodes.Clean, Outcome = ClipOutcome.Use, Harm = Harm.Clean + 4, Words = $"Nothing found that would hurt: {said}." },
            said);
    }
}
