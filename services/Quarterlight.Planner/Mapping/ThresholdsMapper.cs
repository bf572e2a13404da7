using Quarterlight.Clips.Judgement;

namespace Quarterlight.Planner.Mapping;

/// <summary>Thresholds of the clip judge.</summary>
internal static class ThresholdsMapper
{
    /// <summary>Thresholds with those sent put over a basis.</summary>
    public static ClipThresholds ToDomain(V1.ClipThresholds? sent, ClipThresholds basis) => sent is null ? basis : new ClipThresholds
    {
        SpeechToNoiseUseDb = sent.HasSpeechToNoiseUseDb ? sent.SpeechToNoiseUseDb : basis.SpeechToNoiseUseDb,
        SpeechToNoiseCareDb = sent.HasSpeechToNoiseCareDb ? sent.SpeechToNoiseCareDb : basis.SpeechToNoiseCareDb,
        TruePeakCareDbtp = sent.HasTruePeakCareDbtp ? sent.TruePeakCareDbtp : basis.TruePeakCareDbtp,
        ClippingRedoPerMinute = sent.HasClippingRedoPerMinute ? sent.ClippingRedoPerMinute : basis.ClippingRedoPerMinute,
        SpeechLowDbov = sent.HasSpeechLowDbov ? sent.SpeechLowDbov : basis.SpeechLowDbov,
        SpeechHighDbov = sent.HasSpeechHighDbov ? sent.SpeechHighDbov : basis.SpeechHighDbov,
        DropoutRedoPerMinute = sent.HasDropoutRedoPerMinute ? sent.DropoutRedoPerMinute : basis.DropoutRedoPerMinute,
        DcOffsetCareFraction = sent.HasDcOffsetCareFraction ? sent.DcOffsetCareFraction : basis.DcOffsetCareFraction,
        HumCareDb = sent.HasHumCareDb ? sent.HumCareDb : basis.HumCareDb,
        LeastSpeechSeconds = sent.HasLeastSpeechS ? sent.LeastSpeechS : basis.LeastSpeechSeconds,
        EngineNeedsCare = sent.HasEngineNeedsCare ? sent.EngineNeedsCare : basis.EngineNeedsCare,
        WindNeedsCare = sent.HasWindNeedsCare ? sent.WindNeedsCare : basis.WindNeedsCare,
        AirConditioningNeedsCare = sent.HasAirConditioningNeedsCare ? sent.AirConditioningNeedsCare : basis.AirConditioningNeedsCare,
    };

    /// <summary>All of them, every field set.</summary>
    public static V1.ClipThresholds ToContract(ClipThresholds thresholds) => new()
    {
        SpeechToNoiseUseDb = thresholds.SpeechToNoiseUseDb,
        SpeechToNoiseCareDb = thresholds.SpeechToNoiseCareDb,
        TruePeakCareDbtp = thresholds.TruePeakCareDbtp,
        ClippingRedoPerMinute = thresholds.ClippingRedoPerMinute,
        SpeechLowDbov = thresholds.SpeechLowDbov,
        SpeechHighDbov = thresholds.SpeechHighDbov,
        DropoutRedoPerMinute = thresholds.DropoutRedoPerMinute,
        DcOffsetCareFraction = thresholds.DcOffsetCareFraction,
        HumCareDb = thresholds.HumCareDb,
        LeastSpeechS = thresholds.LeastSpeechSeconds,
        EngineNeedsCare = thresholds.EngineNeedsCare,
        WindNeedsCare = thresholds.WindNeedsCare,
        AirConditioningNeedsCare = thresholds.AirConditioningNeedsCare,
    };
}
