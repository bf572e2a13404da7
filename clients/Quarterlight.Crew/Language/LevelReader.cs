using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads what a question says about gain and how hard someone speaks.</summary>
public static class LevelReader
{
    /// <summary>Everything said.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="talkerId">Talker named, an id of the scene, or null.</param>
    public static LevelSaid Read(IReadOnlyList<Token> tokens, string? talkerId)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        bool cable = tokens.Any(t => t.Word is "cable" or "cables" or "cabled" or "wired" or "hardwired");
        bool wireless = tokens.Any(t => t.Word is "transmitter" or "transmitters" or "bodypack" or "bodypacks" or "beltpack" or "beltpacks" or "pack" or "packs" or "wireless");
        return new LevelSaid
        {
            Aspect = tokens.Any(t => t.Word is "pad" or "pads" or "padding" or "padded" or "attenuator" or "attenuators" or "attenuation") ? LevelAspect.Pad : tokens.Any(t => t.Is("safety")) || (tokens.Any(t => t.Word is "backup" or "spare") && tokens.Any(t => t.Word is "track" or "tracks" or "recording")) ? LevelAspect.Safety : wireless ? LevelAspect.Transmitter
                : tokens.Any(t => t.IsAny(ForecastWords.Clipping)) ? LevelAspect.Clips : LevelAspect.Any,
            Effort = Effort(tokens),
            TalkerId = talkerId,
            HeadroomDb = Headroom(tokens),
            Wireless = cable ? false : wireless ? true : null,
        };
    }

    /// <summary>How hard someone will speak, or null.</summary>
    public static VocalEffort? Effort(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        // "Nobody shouts here".
        bool Said(IReadOnlySet<string> words) => tokens.Where((t, i) => t.IsAny(words) && !tokens.Take(i).TakeLast(2).Any(b => b.Word is "no" or "not" or "nobody" or "never" or "without" or "none")).Any();
        if (Said(ForecastWords.Shouting))
        {
            return VocalEffort.Shout;
        }

        if (Said(ForecastWords.Whispering))
        {
            return VocalEffort.Whisper;
        }

        for (int i = 0; i < tokens.Count; i++)
        {
            bool spoken = tokens.Skip(i + 1).Take(1).Any(t => t.Word is "line" or "lines" or "voice" or "speech" or "talking" or "speaking" or "dialogue" or "delivery") || tokens.Take(i).TakeLast(2).Any(t => t.Word is "speaks" or "talks" or "gets" or "talk" or "speak" or "get" or "goes" or "is");
            VocalEffort? effort = tokens[i].Word switch
            {
                "raised" => VocalEffort.Raised,
                "raise" or "raises" or "raising" when tokens.Any(t => t.Word is "voice" or "voices") => VocalEffort.Raised,
                "loud" or "loudly" or "louder" when spoken => VocalEffort.Loud,
                "relaxed" or "softly" or "soft" => VocalEffort.Relaxed,
                "normal" or "normally" when spoken => VocalEffort.Normal,
                _ => null,
            };
            if (effort is not null)
            {
                return effort;
            }
        }

        return null;
    }

    // "headroom 10 dB", "12 dB of headroom", "with 10 db spare".
    private static double? Headroom(IReadOnlyList<Token> tokens)
    {
        if (!tokens.Any(t => t.Word is "headroom" or "spare" or "margin"))
        {
            return null;
        }

        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Number is >= 0 && (i + 1 < tokens.Count && tokens[i + 1].Word is "db" || i + 1 == tokens.Count || tokens.Skip(i + 1).Take(2).Any(t => t.Is("headroom"))))
            {
                return tokens[i].Number;
            }
        }

        return null;
    }
}
