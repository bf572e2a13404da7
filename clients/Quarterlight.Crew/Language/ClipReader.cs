namespace Quarterlight.Crew.Language;

/// <summary>Reads channels, cylinders and limits of clips out of a question.</summary>
public static class ClipReader
{
    private const int MostChannels = 64;

    /// <summary>All that is said about a clip, what is asked about it aside.</summary>
    /// <param name="tokens">Words.</param>
    public static ClipSaid Read(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        return new ClipSaid
        {
            Channel = Channel(tokens),
            Cylinders = Cylinders(tokens),
            Demo = Demo(tokens),
            Limits = ClipLimitReader.Read(tokens),
            ResetsLimits = tokens.Any(t => t.IsAny(ClipWords.Defaults)),
        };
    }

    /// <summary>True where "clip" or a recording is a thing one points at, not a fixing and not a deed.</summary>
    public static bool NamesClip(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            bool pointed = i > 0 && tokens[i - 1].IsAny(ClipWords.Pointing);
            bool deed = i + 1 < tokens.Count && tokens[i + 1].Word is "it" or "them" or "onto" or "to" or "on";
            bool bare = tokens[i].Is("clip") && i == 0 && !deed && tokens.Count <= 4 && (tokens.Count == 1 || tokens[1].Word is not ("the" or "a" or "my" or "our"));
            if ((tokens[i].Is("clip") && ((pointed && !deed) || bare || (i > 0 && tokens[i - 1].IsAny(ClipWords.Judging)))) || tokens[i].Is("clips"))
            {
                return true;
            }

            if (tokens[i].IsAny(ClipWords.Files) && (pointed || tokens[i].Word is "wav" or "flac" or "mp3" or "audiofile" or "soundfile" || tokens.Count <= 2))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Demo(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Word is "demo" or "example" or "invented" or "sample" && (tokens[i + 1].Is("clip") || tokens[i + 1].IsAny(ClipWords.Files)))
            {
                return true;
            }
        }

        return false;
    }

    // "channel 2", "ch two", "2nd track", "left channel".
    private static int? Channel(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (!IsChannel(tokens[i]))
            {
                continue;
            }

            if (i + 1 < tokens.Count && tokens[i + 1].Number is { } after && Whole(after))
            {
                return (int)after;
            }

            string before = i > 0 ? tokens[i - 1].Word : "";
            int? said = before switch
            {
                "first" or "left" => 1,
                "second" or "right" or "other" => 2,
                "third" => 3,
                "fourth" => 4,
                _ => i > 1 && tokens[i - 1].Word is "st" or "nd" or "rd" or "th" && tokens[i - 2].Number is { } ordinal && Whole(ordinal) ? (int)ordinal : null,
            };
            if (said is not null)
            {
                return said;
            }
        }

        return null;
    }

    private static bool IsChannel(Token token) => token.Word is "channel" or "ch" or "chan" or "track" or "trk" or "input";

    private static bool Whole(double number) => number is >= 1 and <= MostChannels && number == Math.Floor(number);

    private static int? Cylinders(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            bool counted = i + 1 < tokens.Count && tokens[i + 1].Word is "cylinder" or "cylinders" or "cyl" or "pot";
            bool vee = i > 0 && tokens[i - 1].Is("v") && tokens[i].Number is 6 or 8 or 10 or 12;
            if ((counted || vee) && tokens[i].Number is { } number && number == Math.Floor(number) && number is > 0 and < 100)
            {
                return (int)number;
            }
        }

        return null;
    }
}
