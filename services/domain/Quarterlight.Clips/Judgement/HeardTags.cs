using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips.Judgement;

/// <summary>One kind of noise that was heard in a channel, and how to speak of it.</summary>
/// <param name="Tag">Which.</param>
/// <param name="Noun">Such as "the fan".</param>
/// <param name="Words">Such as "The fan or the air conditioning is running".</param>
/// <param name="Short">Such as "the fan is running".</param>
/// <param name="Remedy">In one line.</param>
/// <param name="Mend">In a few words.</param>
/// <param name="Places">Where; empty for all of the clip.</param>
internal sealed record HeardTag(ClipTag Tag, string Noun, string Words, string Short, string Remedy, string Mend, IReadOnlyList<TimeStretch> Places);

/// <summary>What noise was heard in a channel: by the tagger, and wind also by its gusts.</summary>
internal static class HeardTags
{
    // From here a second shows the tag: more likely than not. Judgement.
    private const double SecondFrom = 0.5, PlaceGapSeconds = 1.5, AllOfIt = 0.9;

    /// <summary>The tags that hold, the one that is mended first in front: fan, wind, engine.</summary>
    public static IReadOnlyList<HeardTag> Of(ChannelMeasures channel, double seconds)
    {
        var heard = new List<HeardTag>();
        if (Is(channel, ClipTag.AirConditioning, TagState.Present))
        {
            heard.Add(new(
                ClipTag.AirConditioning,
                "fan",
                "The fan or the air conditioning is running",
                "the fan is running",
                "Fan and air conditioning off: cool the cabin before the take, never during it.",
                "Fan off",
                Where(channel, ClipTag.AirConditioning, seconds)));
        }

        bool gusty = channel.Spectrum.Wind is { IsGusty: true };
        if (gusty || Is(channel, ClipTag.Wind, TagState.Present))
        {
            heard.Add(new(
                ClipTag.Wind,
                "wind at the capsule",
                "Wind at the capsule",
                "wind at the capsule",
                "Windows up and vents away from the microphone; a wind-shield helps against moving air only.",
                "Windows up, wind-shield on",
                Where(channel, ClipTag.Wind, seconds)));
        }

        if (Is(channel, ClipTag.Engine, TagState.Present))
        {
            string speed = channel.Spectrum.Engine?.Rpm is { } rpm ? $", about {Say.Number(Math.Round(rpm / 50) * 50)} rpm" : "";
            heard.Add(new(
                ClipTag.Engine,
                "engine",
                "The engine is heard" + speed,
                "the engine is heard",
                "Turn the microphone's null toward the engine, or park with the engine off and record wild lines.",
                "Null toward the engine",
                Where(channel, ClipTag.Engine, seconds)));
        }

        return heard;
    }

    /// <summary>Kinds of noise of which the tagger cannot tell, in words.</summary>
    public static IReadOnlyList<string> Unsure(ChannelMeasures channel)
    {
        var words = new List<string>();
        if (Is(channel, ClipTag.AirConditioning, TagState.Unsure))
        {
            words.Add("a fan");
        }

        if (Is(channel, ClipTag.Wind, TagState.Unsure) && channel.Spectrum.Wind is not { IsGusty: true })
        {
            words.Add("wind");
        }

        if (Is(channel, ClipTag.Engine, TagState.Unsure))
        {
            words.Add("an engine");
        }

        return words;
    }

    private static bool Is(ChannelMeasures channel, ClipTag tag, TagState state) =>
        channel.Tags is { } tags && tags.States.TryGetValue(tag, out TagState found) && found == state;

    private static IReadOnlyList<TimeStretch> Where(ChannelMeasures channel, ClipTag tag, double seconds)
    {
        if (channel.Tags is not { } tags)
        {
            return [];
        }

        IReadOnlyList<TimeStretch> places = Say.Merge(
            tags.Seconds.Where(s => s.Probabilities[tag] >= SecondFrom).Select(s => new TimeStretch(s.StartSeconds, s.EndSeconds)), PlaceGapSeconds);
        return places.Sum(p => p.EndSeconds - p.StartSeconds) >= AllOfIt * seconds ? [] : places;
    }
}
