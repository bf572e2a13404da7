using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Clips.Judgement;

/// <summary>Whether the speech stands clear of the noise, whatever the noise is; and hum.</summary>
internal static class NoiseRules
{
    // Level that ITU-T recommendations put speech at, -26 dBov (from memory), in dBFS as AES17 counts.
    private const double NominalSpeechDbfs = -26 + 3.01;
    private const string NoCause = "Move the microphone nearer the mouth (half the distance gives up to 6 dB), take a quieter road or drive slower.";

    // Firing orders and what the bonnet lets through lie below; a noise wholly above is not the engine's. Judgement.
    private const double EngineReachesHz = 1000;

    /// <summary>True when there is enough speech to judge it.</summary>
    public static bool HasSpeech(ChannelMeasures channel, ClipThresholds limits) =>
        channel.Spectrum.SpeechNoise is { SpeechToNoiseDb: not null } found && found.ActiveSeconds >= limits.LeastSpeechSeconds;

    /// <summary>Those of the kinds of noise heard that can be what the speech stands too little above.</summary>
    public static IReadOnlyList<HeardTag> Causes(ChannelMeasures channel, IReadOnlyList<HeardTag> heard) =>
        channel.Spectrum.SpeechNoise is { } found && NoiseBands.Mostly(found.NoiseOctaves) is { LowerHz: > EngineReachesHz }
            ? [.. heard.Where(h => h.Tag != Tagging.ClipTag.Engine)]
            : heard;

    /// <summary>Speech over noise; names and mends the noise that causes it. Asked only of a channel with enough speech.</summary>
    public static Finding? SpeechToNoise(ChannelMeasures channel, ClipThresholds limits, IReadOnlyList<HeardTag> causes)
    {
        if (channel.Spectrum.SpeechNoise is not { SpeechToNoiseDb: { } ratio } found || ratio >= limits.SpeechToNoiseUseDb)
        {
            return null;
        }

        bool redo = ratio < limits.SpeechToNoiseCareDb;
        double limit = redo ? limits.SpeechToNoiseCareDb : limits.SpeechToNoiseUseDb, spread = found.SpeechToNoiseUncertaintyDb ?? 0;
        bool near = Math.Abs(ratio - limit) <= spread || (!redo && ratio - limits.SpeechToNoiseCareDb <= spread);
        string shown = (near ? "about " : "") + Say.Beside(ratio, limit);
        string[] nouns = [.. causes.Select(h => h.Noun)];
        string? band = NoiseBands.Mostly(found.NoiseOctaves)?.Words;
        string cause = (nouns.Length, band) switch
        {
            (0, null) => "",
            (0, _) => $"; the noise is {band}",
            (_, null) => $"; heard: {Say.List(nouns)}",
            _ => $"; heard: {Say.List(nouns)}; the noise is {band}",
        };
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.SpeechToNoise,
                Outcome = redo ? ClipOutcome.Redo : ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.SpeechToNoise, limit - ratio, 20),
                Words = $"Speech stands {shown} dB over the noise, {Say.Limit(limit)} needed{(redo ? " at least" : " to use it as it is")}{cause}.",
                Remedy = causes.Count == 0 ? NoCause : string.Join(" ", causes.Select(h => h.Remedy)),
                Stretches = causes.Count == 1 ? causes[0].Places : [],
                Channel = channel.Index,
                Measured = ratio,
                Limit = limit,
                Unit = "dB",
            },
            $"speech {shown} dB over the noise{(nouns.Length > 0 ? $" ({Say.List(nouns)})" : "")}",
            causes.Count == 0 ? "Microphone nearer, or a quieter road" : string.Join("; ", causes.Select(h => h.Mend)));
    }

    /// <summary>Too little speech: only the noise can be judged. So loud a noise that speech at its usual level would not stand clear of it is redone.</summary>
    public static Finding NoSpeech(ChannelMeasures channel, ClipThresholds limits)
    {
        SpeechNoiseReport? found = channel.Spectrum.SpeechNoise;
        double seconds = found?.ActiveSeconds ?? 0;
        bool drowned = found is not null && NominalSpeechDbfs - found.NoiseAWeightedDb < limits.SpeechToNoiseCareDb;
        string heard = seconds > 0 ? $"Only {Say.Beside(seconds, limits.LeastSpeechSeconds)} s of speech" : "No speech";
        string noise = found is null ? "" : $": {Say.Number(found.NoiseAWeightedDb)} dBFS(A)";
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.NoSpeech,
                Outcome = drowned ? ClipOutcome.Redo : ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.NoSpeech, drowned ? 1 : 0, 1),
                Words = drowned
                    ? $"{heard} was heard, and the noise is so loud{noise} that speech at its usual level would drown."
                    : $"{heard} was heard, so only the noise was judged{noise}.",
                Remedy = $"Record a line at playing level, {Say.Limit(Math.Max(3, limits.LeastSpeechSeconds))} s or more, and send that.",
                Channel = channel.Index,
                Measured = seconds,
                Limit = limits.LeastSpeechSeconds,
                Unit = "s",
            },
            drowned ? "no speech stands out of the noise" : seconds > 0 ? "too little speech" : "no speech heard",
            "Record a line at playing level");
    }

    /// <summary>Mains hum too near the speech, or above the noise floor where there is no speech.</summary>
    public static Finding? Hum(ChannelMeasures channel, ClipThresholds limits, bool hasSpeech, bool engine)
    {
        HumReport? hum = new[] { channel.Spectrum.Hum50, channel.Spectrum.Hum60 }.Where(h => h is { IsPresent: true }).MaxBy(h => h!.LevelDb);
        if (hum is null || channel.Spectrum.SpeechNoise is not { } found)
        {
            return null;
        }

        double level = hasSpeech ? found.SpeechAWeightedDb ?? found.NoiseAWeightedDb : found.NoiseAWeightedDb;
        double below = level - hum.LevelDb, limit = hasSpeech ? limits.HumCareDb : 0;
        if (below >= limit)
        {
            return null;
        }

        string mains = Say.Number(hum.MainsHz);
        string where = hasSpeech ? $"{Say.Beside(below, limit)} dB below the speech ({Say.Limit(limit)} wanted)" : $"{Say.Number(-below)} dB over the noise floor";
        string doubt = engine ? " An engine held at one speed can look like it." : "";
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.Hum,
                Outcome = ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.Hum, limit - below, 40),
                Words = $"Mains hum at {mains} Hz, {where}.{doubt}",
                Remedy = "Run on batteries, lift the ground, keep cables away from inverter and charger.",
                Channel = channel.Index,
                Measured = below,
                Limit = limit,
                Unit = "dB",
            },
            $"{mains} Hz hum",
            "Run on batteries, away from the inverter");
    }
}
