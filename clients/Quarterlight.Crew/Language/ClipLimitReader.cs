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
            else if (Any("clipping", "clipped", "clips") && !speech && !Any("db", "decibels", "dbtp", "peak", "peaks"))
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
            else if (OfNoise(tokens))
            {
                // Without another word a limit is of speech over noise; below the lower one a clip is redone.
                if (care || Any("redo", "lower"))
                {
                    limits.SpeechToNoiseCareDb = positive;
                }
                else
                {
                    limits.SpeechToNoiseUseDb = positive;
                }
            }
        }
        else if (care || Any("mark", "marks", "count", "penalise", "penalize", "flag", "mind", "complain", "ignore", "warn", "warning", "bother", "flagging", "marking", "counting", "minding", "complaining", "ignoring", "warnings", "penalising", "penalizing"))
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

    // "Set the limit to 14", "use from 16 dB": a plain number of decibels with a word of limits, and nothing else it could measure.
    private static bool OfNoise(IReadOnlyList<Token> tokens)
    {
        int at = tokens.Count - 1;
        while (at >= 0 && tokens[at].Number is null)
        {
            at--;
        }

        bool decibels = at + 1 < tokens.Count && tokens[at + 1].Word is "db" or "decibels";
        bool other = tokens.Any(t => t.Word is "speed" or "power" or "mhz" or "mph" or "kmh" or "mw" or "erp" or "eirp" or "metres" or "meters" or "feet" or "degrees" or "gain" or "pad" or "percent" or "minutes" or "hours" or "channel" or "channels" or "fan" or "gb" or "lufs");
        bool word = tokens.Any(t => t.Word is "limit" or "limits" or "threshold" or "thresholds");
        bool from = decibels && tokens.Any(t => t.Word is "from" or "above" or "below" or "under") && tokens.Any(t => t.Word is "use" or "care" or "redo" or "usable" or "clips");
        bool setting = tokens.Any(t => t.IsAny(ClipWords.Setting)) || tokens.Any(t => t.Word is "should" or "be" or "to");
        bool clips = decibels && tokens.Any(t => t.Word is "clip" or "clips") && tokens.Any(t => t.Word is "use" or "using" or "usable" or "accept" or "keep" or "care" or "redo");
        return !other && tokens[at].Number is > 0 and <= 60 && (from || clips || word && (decibels || setting));
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
