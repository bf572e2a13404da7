using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>The limits of clips in words.</summary>
internal static class ClipLimitText
{
    /// <summary>All limits in force.</summary>
    public static List<CrewLine> All(ClipThresholds t) =>
    [
        new(CrewLineKind.Figures, Say($"Speech over noise: use from {t.SpeechToNoiseUseDb:0.#} dB, with care from {t.SpeechToNoiseCareDb:0.#} dB, else record again.")),
        new(CrewLineKind.Figures, Say($"Peaks: care above {t.TruePeakCareDbtp:0.#} dBTP; clipping: record again from {t.ClippingRedoPerMinute:0.#} runs a minute; dropouts: from {t.DropoutRedoPerMinute:0.#} a minute.")),
        new(CrewLineKind.Figures, Say($"Speech level: care below {t.SpeechLowDbov:0.#} or above {t.SpeechHighDbov:0.#} dBov; at least {t.LeastSpeechS:0.#} s of speech to judge by.")),
        new(CrewLineKind.Figures, Say($"Hum: care when less than {t.HumCareDb:0.#} dB below the speech; offset: care from {t.DcOffsetCareFraction * 100:0.##} % of full scale.")),
        new(CrewLineKind.Figures, $"Care when heard: engine {OnOff(t.EngineNeedsCare)}, wind {OnOff(t.WindNeedsCare)}, fan {OnOff(t.AirConditioningNeedsCare)}."),
    ];

    /// <summary>What was set, as it is now in force.</summary>
    /// <param name="said">What was asked for.</param>
    /// <param name="now">All limits in force.</param>
    public static string Set(ClipThresholds said, ClipThresholds now)
    {
        var parts = new List<string>();
        Add(said.HasSpeechToNoiseUseDb, Say($"use from {now.SpeechToNoiseUseDb:0.#} dB of speech over noise"));
        Add(said.HasSpeechToNoiseCareDb, Say($"use with care from {now.SpeechToNoiseCareDb:0.#} dB of speech over noise"));
        Add(said.HasTruePeakCareDbtp, Say($"care above a true peak of {now.TruePeakCareDbtp:0.#} dBTP"));
        Add(said.HasClippingRedoPerMinute, Say($"record again from {now.ClippingRedoPerMinute:0.#} clipped runs a minute"));
        Add(said.HasSpeechLowDbov, Say($"care below a speech level of {now.SpeechLowDbov:0.#} dBov"));
        Add(said.HasSpeechHighDbov, Say($"care above a speech level of {now.SpeechHighDbov:0.#} dBov"));
        Add(said.HasDropoutRedoPerMinute, Say($"record again from {now.DropoutRedoPerMinute:0.#} dropouts a minute"));
        Add(said.HasDcOffsetCareFraction, Say($"care from an offset of {now.DcOffsetCareFraction * 100:0.##} % of full scale"));
        Add(said.HasHumCareDb, Say($"care when hum is less than {now.HumCareDb:0.#} dB below the speech"));
        Add(said.HasLeastSpeechS, Say($"at least {now.LeastSpeechS:0.#} s of speech"));
        Add(said.HasEngineNeedsCare, $"an engine that is heard {Needs(now.EngineNeedsCare)}");
        Add(said.HasWindNeedsCare, $"wind that is heard {Needs(now.WindNeedsCare)}");
        Add(said.HasAirConditioningNeedsCare, $"a fan that is heard {Needs(now.AirConditioningNeedsCare)}");
        return Join(parts);

        void Add(bool set, string words)
        {
            if (set)
            {
                parts.Add(words);
            }
        }
    }

    private static string OnOff(bool on) => on ? "yes" : "no";

    private static string Needs(bool care) => care ? "needs care" : "needs no care";
}
