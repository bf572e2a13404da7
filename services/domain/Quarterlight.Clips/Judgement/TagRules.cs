using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips.Judgement;

/// <summary>What kinds of noise were heard, and pressure in the cabin.</summary>
internal static class TagRules
{
    /// <summary>A kind of noise that was heard, on its own.</summary>
    public static Finding Heard(ChannelMeasures channel, ClipThresholds limits, HeardTag heard)
    {
        (string code, double harm, bool care) = heard.Tag switch
        {
            ClipTag.AirConditioning => (ClipReasonCodes.AirConditioning, Harm.AirConditioning, limits.AirConditioningNeedsCare),
            ClipTag.Wind => (ClipReasonCodes.Wind, Harm.Wind, limits.WindNeedsCare),
            _ => (ClipReasonCodes.Engine, Harm.Engine, limits.EngineNeedsCare),
        };
        double? chance = channel.Tags?.Overall[heard.Tag];
        return new(
            new ClipReason
            {
                Code = code,
                Outcome = care ? ClipOutcome.UseWithCare : ClipOutcome.Use,
                Harm = Harm.Of(harm, chance ?? 0.5, 1),
                Words = $"{heard.Words}{Say.Places(heard.Places)}.",
                Remedy = heard.Remedy,
                Stretches = heard.Places,
                Channel = channel.Index,
            },
            heard.Short + Say.Places(heard.Places),
            heard.Mend);
    }

    /// <summary>Steady pressure below 20 Hz.</summary>
    public static Finding? CabinPressure(ChannelMeasures channel) => channel.Spectrum.Wind is not { IsPressure: true } low
        ? null
        : new(
            new ClipReason
            {
                Code = ClipReasonCodes.CabinPressure,
                Outcome = ClipOutcome.UseWithCare,
                Harm = Harm.Of(Harm.CabinPressure, low.InfraOverLowDb - WindIndex.InfraOverLow.Min, 20),
                Words = $"Pressure in the cabin shakes the capsule: below 20 Hz is {Say.Number(low.InfraOverLowDb)} dB above 20 to 100 Hz.",
                Remedy = "Low cut on; shut the windows, or open a second one slightly. A wind-shield does not help: the cabin pressure itself moves the capsule.",
                Channel = channel.Index,
                Measured = low.InfraOverLowDb,
                Unit = "dB",
            },
            "cabin pressure shakes the capsule",
            "Low cut on, windows shut");

    /// <summary>What the tagger cannot tell.</summary>
    public static Finding? Unsure(ChannelMeasures channel)
    {
        IReadOnlyList<string> words = HeardTags.Unsure(channel);
        if (words.Count == 0)
        {
            return null;
        }

        string said = $"cannot tell whether {Say.List(words, "or")} is heard";
        return new(
            new ClipReason
            {
                Code = ClipReasonCodes.Unsure,
                Outcome = ClipOutcome.Use,
                Harm = Harm.Of(Harm.Unsure, words.Count, 3),
                Words = Say.Sentence(said) + ": listen.",
                Remedy = "Listen to it on headphones.",
                Channel = channel.Index,
            },
            said,
            "Listen");
    }
}
