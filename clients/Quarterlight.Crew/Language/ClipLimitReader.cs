using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads limits for clips out of a question.</summary>
internal static class ClipLimitReader
{
    /// <summary>Limits that are said; null when none is. Levels below full scale are taken as negative, with or without the sign.</summary>
    /// <param name="tokens">Words.</param>
    public static ClipThresholds? Read(IReadOnlyList<Token> tokens)
    {
        var limits = new ClipThresholds();
        bool Any(params ReadOnlySpan<string> words)
        {
            foreach (Token token in tokens)
            {
                if (words.Contains(token.Word))
                {
                    return true;
                }
            }

            return false;
        }

        bool speech = Any("speech", "voice", "voices", "dialogue", "dialog", "talking", "snr"), care = Any("care");
        bool denied = Any("not", "off", "without", "ignore", "never", "no", "stop", "fine", "ok", "okay");
        // "Use from 25 dB, care from 14 dB": two limits in one breath.
        double? use = After(tokens, "use"), withCare = After(tokens, "care");
        if (use is not null && withCare is not null && use != withCare)
        {
            (limits.SpeechToNoiseUseDb, limits.SpeechToNoiseCareDb) = (Math.Abs(use.Value), Math.Abs(withCare.Value));
            return limits;
        }

        if (Number(tokens) is { } number)
        {
            double positive = Math.Abs(number);
            if (Any("hum", "mains"))
            {
                limits.HumCareDb = positive;
            }
            else if (Any("seconds", "second", "sec", "s") && speech)
            {
                limits.LeastSpeechS = positive;
            }
            else if (Any("clipping", "clipped", "clips") && !speech)
            {
                limits.ClippingRedoPerMinute = positive;
            }
            else if (Any("dropouts", "dropout", "gaps"))
            {
                limits.DropoutRedoPerMinute = positive;
            }
            else if (Any("dc", "offset"))
            {
                limits.DcOffsetCareFraction = Any("percent") ? positive / 100 : positive;
            }
            else if (Any("peak", "peaks", "dbtp", "headroom"))
            {
                limits.TruePeakCareDbtp = -positive;
            }
            else if (speech && Any("level", "levels", "dbov", "quiet", "loud") && !Any("noise", "over", "above"))
            {
                if (Any("high", "highest", "loud", "most", "max", "maximum", "hot"))
                {
                    limits.SpeechHighDbov = -positive;
                }
                else
                {
                    limits.SpeechLowDbov = -positive;
                }
            }
            else if (speech && (Any("noise", "over", "above", "snr") || care))
            {
                if (care)
                {
                    limits.SpeechToNoiseCareDb = positive;
                }
                else
                {
                    limits.SpeechToNoiseUseDb = positive;
                }
            }
        }
        else if (care || Any("mark", "marks", "count", "penalise", "penalize", "flag", "mind", "complain", "ignore", "warn", "warning", "bother"))
        {
            if (Any("engine", "motor"))
            {
                limits.EngineNeedsCare = !denied;
            }

            if (Any("wind"))
            {
                limits.WindNeedsCare = !denied;
            }

            if (tokens.Any(t => t.IsAny(Lexicon.Fans)))
            {
                limits.AirConditioningNeedsCare = !denied;
            }
        }

        return limits.CalculateSize() == 0 ? null : limits;
    }

    // The number within three words after the word.
    private static double? After(IReadOnlyList<Token> tokens, string word)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Is(word))
            {
                return tokens.Skip(i + 1).Take(3).FirstOrDefault(t => t.Number is not null)?.Number;
            }
        }

        return null;
    }

    private static double? Number(IReadOnlyList<Token> tokens) => tokens.LastOrDefault(t => t.Number is not null)?.Number;
}
