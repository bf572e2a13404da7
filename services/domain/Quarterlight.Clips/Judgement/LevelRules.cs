namespace Quarterlight.Clips.Judgement;

/// <summary>Whether the gain was right.</summary>
internal static class LevelRules
{
    // Judgement but for the nominal level: -26 dBov is the level ITU-T recommendations put speech at (from memory).
    private const double MarginDb = 3, NominalDbov = -26, PeakRoomDbtp = -6;

    /// <summary>A true peak too near full scale; said of clipping itself elsewhere.</summary>
    public static Finding? Peak(ChannelMeasures channel, ClipThresholds limits)
    {
        if (channel.Samples.Clipping.Count > 0 || channel.TruePeak.PeakDbtp is not { } peak || peak <= limits.TruePeakCareDbtp)
        {
            return null;
        }

        int down = (int)Math.Ceiling(peak - limits.TruePeakCareDbtp + MarginDb);
        double at = channel.TruePeak.Seconds ?? 0;
        TimeStretch[] place = [new(at, at)];
        string shown = Say.Beside(peak, limits.TruePeakCareDbtp);
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.HighPeak,
                Outcome = ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.HighPeak, peak - limits.TruePeakCareDbtp, 3),
                Words = $"The highest peak is {shown} dBTP{Say.Places(place)}; above {Say.Limit(limits.TruePeakCareDbtp)} there is no room for a louder word.",
                Remedy = $"Gain down {down} dB.",
                Stretches = place,
                Channel = channel.Index,
                Measured = peak,
                Limit = limits.TruePeakCareDbtp,
                Unit = "dBTP",
            },
            $"peaks at {shown} dBTP",
            $"Gain down {down} dB");
    }

    /// <summary>Speech too low or too high; asked only of a channel with enough speech.</summary>
    public static Finding? Speech(ChannelMeasures channel, ClipThresholds limits)
    {
        if (channel.SpeechLevel.ActiveDbov is not { } level)
        {
            return null;
        }

        return level < limits.SpeechLowDbov ? Low(channel, limits, level) : level > limits.SpeechHighDbov ? High(channel, limits, level) : null;
    }

    /// <summary>How far the gain comes down for speech that is too high, dB.</summary>
    public static int HotGainDownDb(double level, ClipThresholds limits) =>
        (int)Math.Ceiling(Math.Max(level - limits.SpeechHighDbov + MarginDb, level - Math.Min(NominalDbov, limits.SpeechHighDbov)));

    private static Finding Low(ChannelMeasures channel, ClipThresholds limits, double level)
    {
        double room = PeakRoomDbtp - (channel.TruePeak.PeakDbtp ?? 0), wanted = Math.Max(NominalDbov, limits.SpeechLowDbov) - level;
        int up = (int)Math.Floor(Math.Min(wanted, room));
        bool fits = up >= Math.Ceiling(limits.SpeechLowDbov - level);
        string shown = Say.Beside(level, limits.SpeechLowDbov);
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.LowLevel,
                Outcome = ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.LowLevel, limits.SpeechLowDbov - level, 20),
                Words = $"Speech is low: {shown} dBov while someone talks, {Say.Limit(limits.SpeechLowDbov)} or more wanted.",
                Remedy = fits
                    ? $"Gain up {up} dB."
                    : $"Move the microphone nearer the mouth: other peaks at {Say.Number(channel.TruePeak.PeakDbtp ?? 0)} dBTP leave no room for more gain.",
                Channel = channel.Index,
                Measured = level,
                Limit = limits.SpeechLowDbov,
                Unit = "dBov",
            },
            $"speech is low ({shown} dBov)",
            fits ? $"Gain up {up} dB" : "Microphone nearer");
    }

    private static Finding High(ChannelMeasures channel, ClipThresholds limits, double level)
    {
        int down = HotGainDownDb(level, limits);
        string shown = Say.Beside(level, limits.SpeechHighDbov);
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.HighLevel,
                Outcome = ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.HighLevel, level - limits.SpeechHighDbov, 10),
                Words = $"Speech is hot: {shown} dBov while someone talks, {Say.Limit(limits.SpeechHighDbov)} or less wanted.",
                Remedy = $"Gain down {down} dB.",
                Channel = channel.Index,
                Measured = level,
                Limit = limits.SpeechHighDbov,
                Unit = "dBov",
            },
            $"speech is hot ({shown} dBov)",
            $"Gain down {down} dB");
    }
}
