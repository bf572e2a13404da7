using Quarterlight.Clips.Levels;

namespace Quarterlight.Clips.Judgement;

/// <summary>What is broken in the samples: dropouts, clipping, an offset.</summary>
internal static class DefectRules
{
    // Judgement, as docs/models/clip-verdict.md says of each.
    private const double LeastGainDownDb = 6, MostOvershootDb = 12, HeadroomDb = 3, CutHz = 300, BelowFullScaleDb = -0.5, PlaceGapSeconds = 0.5;

    /// <summary>Dropouts: any needs care; from the limit a minute on it is redone, though never for one alone.</summary>
    public static Finding? Dropouts(ChannelMeasures channel, ClipThresholds limits, double seconds, double rateHz)
    {
        Stretches found = channel.Samples.Dropouts;
        if (found.Count == 0)
        {
            return null;
        }

        double perMinute = found.Count * 60 / seconds;
        bool redo = IsOften(found.Count, perMinute, limits.DropoutRedoPerMinute);
        IReadOnlyList<TimeStretch> places = Places(found, rateHz);
        double longestMs = found.First.Count == 0 ? 0 : found.First.Max(s => s.Samples) * 1000 / rateHz;
        string count = Say.Count(found.Count, "dropout", "dropouts");
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.Dropouts,
                Outcome = redo ? ClipOutcome.Redo : ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.Dropouts, perMinute, 20),
                Words = $"{count}{Where(found, places, 2)}, up to {Say.Number(longestMs)} ms of nothing within the sound.",
                Remedy = "Check cable and connector, the transmitter's battery and path, and the card; then record again.",
                Stretches = places,
                Channel = channel.Index,
                Measured = perMinute,
                Limit = limits.DropoutRedoPerMinute,
                Unit = "a minute",
            },
            count + Where(found, places, 1),
            "Check cable, transmitter and card");
    }

    /// <summary>Clipping: any needs care; from the limit a minute on it is redone, though never for one run alone.</summary>
    public static Finding? Clipping(ChannelMeasures channel, ClipThresholds limits, double seconds, double rateHz)
    {
        Stretches found = channel.Samples.Clipping;
        if (found.Count == 0)
        {
            return null;
        }

        double perMinute = found.Count * 60 / seconds;
        bool redo = IsOften(found.Count, perMinute, limits.ClippingRedoPerMinute);
        IReadOnlyList<TimeStretch> places = Places(found, rateHz);
        int down = ClippedGainDownDb(channel, limits, rateHz);
        double peak = channel.Samples.PeakDbfs ?? 0;
        bool before = peak < BelowFullScaleDb;
        string runs = Say.Count(found.Count, "place", "places");
        string where = before ? $"cut flat at {Say.Number(peak, 1)} dBFS, so before the recorder" : "cut off at full scale";
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.Clipping,
                Outcome = redo ? ClipOutcome.Redo : ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.Clipping, perMinute, 60),
                Words = $"Clipped in {runs}{Where(found, places, 2)}: {where}.",
                Remedy = before
                    ? $"Gain down {down} dB at the transmitter or preamp, where it is cut, and record again."
                    : $"Gain down {down} dB and record again.",
                Stretches = places,
                Channel = channel.Index,
                Measured = perMinute,
                Limit = limits.ClippingRedoPerMinute,
                Unit = "runs a minute",
            },
            $"clipped in {runs}{Where(found, places, 1)}",
            $"Gain down {down} dB");
    }

    /// <summary>An offset of the samples.</summary>
    public static Finding? Offset(ChannelMeasures channel, ClipThresholds limits)
    {
        double offset = Math.Abs(channel.Samples.DcOffset);
        return offset < limits.DcOffsetCareFraction
            ? null
            : new(
                new ClipReason
                {
                    Code = ClipReasonCodes.DcOffset,
                    Outcome = ClipOutcome.UseWithCare,
                    Harm = Harm.Of(Harm.DcOffset, offset - limits.DcOffsetCareFraction, 0.2),
                    Words = $"The wave stands {Say.Beside(100 * offset, 100 * limits.DcOffsetCareFraction)} % of full scale off zero.",
                    Remedy = "Low cut on at the recorder; if it stays, change the cable or the input. A low cut in post mends the take.",
                    Channel = channel.Index,
                    Measured = offset,
                    Limit = limits.DcOffsetCareFraction,
                    Unit = "of full scale",
                },
                "the wave is off zero",
                "Low cut on");
    }

    // One alone is not a rate; with a limit of 0 the team wants none at all.
    private static bool IsOften(long count, double perMinute, double limit) => perMinute >= limit && (count >= 2 || limit == 0);

    // A sine of 300 Hz cut for a time t rose 1/cos(pi f t) above the cut. What is cut is taken for such a wave; speech at its loudest is about that low.
    private static int ClippedGainDownDb(ChannelMeasures channel, ClipThresholds limits, double rateHz)
    {
        Stretches found = channel.Samples.Clipping;
        double turn = Math.Min(Math.PI * CutHz * found.Samples / found.Count / rateHz, 0.49 * Math.PI);
        double overshoot = Math.Min(MostOvershootDb, -20 * Math.Log10(Math.Cos(turn)));
        double over = Math.Max(0, (channel.TruePeak.PeakDbtp ?? 0) - limits.TruePeakCareDbtp);
        int clear = (int)Math.Max(LeastGainDownDb, Math.Ceiling(over + overshoot + HeadroomDb));

        // What speech asks for as well, so that one clip is not told two gains.
        return channel.SpeechLevel.ActiveDbov is { } level && level > limits.SpeechHighDbov ? Math.Max(clear, LevelRules.HotGainDownDb(level, limits)) : clear;
    }

    // Only the first places are known: where there are more, the last known one must not be taken for the last.
    private static string Where(Stretches found, IReadOnlyList<TimeStretch> places, int most) => found.First.Count < found.Count && places.Count > 0
        ? $" (from {Say.Number(places[0].StartSeconds, 1)} s on)"
        : Say.Places(places, most);

    private static IReadOnlyList<TimeStretch> Places(Stretches found, double rateHz) =>
        Say.Merge(found.First.Select(s => new TimeStretch(s.StartSeconds, s.StartSeconds + (s.Samples / rateHz))), PlaceGapSeconds);
}
