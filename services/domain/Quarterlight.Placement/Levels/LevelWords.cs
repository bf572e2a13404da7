using Quarterlight.Acoustics;

namespace Quarterlight.Placement.Levels;

/// <summary>What to do, in one sentence each.</summary>
internal static class LevelWords
{
    /// <summary>What a sentence about an input rests on.</summary>
    internal readonly record struct Situation(
        Microphone Microphone, RecorderGain Recorder, double GainDb, double PadDb, ChainVerdict Verdict, double CapsuleMarginDb, bool HeadroomIsThin, bool NoiseIsThin, bool CapsuleIsThin,
        VocalEffort Loudest, double SpeechDbfs, double CabinNoiseDbfs, double SelfNoiseDbfs, double ChainNoiseDbfs, TransmitterLevel? Way, double MostGainDb);

    public static string Input(Situation s)
    {
        string set = FormattableString.Invariant($"Set {s.GainDb:0.#} dB") + (s.PadDb > 0 ? FormattableString.Invariant($" with the {s.PadDb:0.#} dB pad in") : "");
        string effort = Named(s.Loudest);
        return s.Verdict switch
        {
            ChainVerdict.CapsuleOverload => FormattableString.Invariant(
                $"The capsule of {s.Microphone.DisplayName} is overdriven by {-s.CapsuleMarginDb:0.#} dB when the line is {effort}, and no gain mends that: take a microphone that stands more than {s.Microphone.MaxLevelDb:0} dB, move it away, or have the line played down."),
            ChainVerdict.InputOverload when s.Way?.Verdict == ChainVerdict.InputOverload =>
                $"The transmitter is overdriven at its least gain when the line is {effort}: take a microphone with a lower output, one with a pad, or a cable.",
            ChainVerdict.InputOverload => $"The input clips at its least gain{(s.PadDb > 0 ? " even with the pad in" : "")} when the line is {effort}: put an attenuator into the cable, or take a microphone with a lower output.",
            ChainVerdict.Tight when s.CapsuleIsThin => FormattableString.Invariant($"{set}, but the capsule of {s.Microphone.DisplayName} is within {s.CapsuleMarginDb:0.#} dB of its limit when the line is {effort}: try it loud before the take. {Rules(s)}"),
            ChainVerdict.Tight when s.HeadroomIsThin || s.Way?.Verdict == ChainVerdict.Tight => $"{set}; there is less headroom than asked for when the line is {effort}: ride it, or put an attenuator in. {Rules(s)}",
            ChainVerdict.Tight => $"{set}; {(s.GainDb >= s.MostGainDb - 1e-9 ? "that is all the gain there is, and " : "")}the noise of the {(s.Way is null ? "input" : "radio way and input")} is heard beside the cabin's: {(s.Way is null ? "a more sensitive or nearer microphone would mend it" : "a cable would mend it")}. {Rules(s)}",
            _ => $"{set}. {Rules(s)}",
        };
    }

    public static string Limiter(RecorderGain recorder) => recorder switch
    {
        { FloatRecording: true } => "Leave the limiter off: floats do not clip at full scale, and what overloads the input no limiter after it can mend.",
        { Limiter: LimiterKind.Analogue } => "Switch the limiter on: it works ahead of the converter and catches a shout; the gain is set so that it rests in normal lines.",
        { Limiter: LimiterKind.Digital } => "The limiter works after the converter: it keeps the mix in bounds, but what clipped before it stays clipped, so trust the headroom.",
        _ => "There is no limiter: the headroom and a safety track are all that catch a shout.",
    };

    public static string Transmitter(TransmitterAudio transmitter, double gainDb, double headroomDb, double wantedDb, ChainVerdict verdict)
    {
        string set = FormattableString.Invariant($"Set {transmitter.DisplayName} to {gainDb:0.#} dB");
        string over = transmitter.Modulation == TransmitterModulation.Digital ? "it clips hard at full scale" : "it distorts above full modulation";
        string limiter = (transmitter.Limiter, transmitter.Modulation) switch
        {
            (true, TransmitterModulation.Digital) => "; switch its limiter on",
            (true, _) => "; its limiter only catches what is louder than planned",
            _ => "",
        };
        return verdict switch
        {
            ChainVerdict.InputOverload => FormattableString.Invariant($"{set}, its least, and it is still {-headroomDb:0.#} dB over: {over}, so lower the level that feeds it."),
            ChainVerdict.Tight => FormattableString.Invariant($"{set}, its least: that leaves {headroomDb:0.#} dB instead of {wantedDb:0.#} dB before {over}{(transmitter.Feed == TransmitterFeed.Recorder ? FormattableString.Invariant($"; turn that output of the recorder down by {wantedDb - headroomDb:0.#} dB") : "")}{limiter}."),
            _ => FormattableString.Invariant($"{set}: the loudest peak stays {headroomDb:0.#} dB under full modulation, because {over}{limiter}."),
        };
    }

    public static string Named(VocalEffort effort) => effort switch
    {
        VocalEffort.Whisper => "whispered",
        VocalEffort.Relaxed => "relaxed",
        VocalEffort.Normal => "normal",
        VocalEffort.Raised => "raised",
        VocalEffort.Loud => "loud",
        _ => "shouted",
    };

    private static string Rules(Situation s)
    {
        double all = AudioVoltage.NoiseSum(s.CabinNoiseDbfs, s.SelfNoiseDbfs, s.ChainNoiseDbfs), most = Math.Max(s.CabinNoiseDbfs, Math.Max(s.SelfNoiseDbfs, s.ChainNoiseDbfs));
        string whose = most == s.CabinNoiseDbfs ? "the cabin" : most == s.SelfNoiseDbfs ? "the microphone" : s.Way is null ? "the input" : "the radio way and input";
        double over = Math.Round(s.SpeechDbfs - all);
        return FormattableString.Invariant($"Most of the noise is of {whose}, and the scene's speech lies {Math.Abs(over):0} dB {(over < 0 ? "under" : "over")} all of it.");
    }
}
