namespace Quarterlight.Crew.Language;

/// <summary>Reads which units a question asks for.</summary>
internal static class UnitReader
{
    /// <summary>Units that words ask for, or null.</summary>
    public static UnitPreference? Of(IReadOnlyList<Token> tokens)
    {
        // "A hundred yards back" only measures; "answer in yards" asks.
        bool asked = tokens.All(t => t.Number is null) && (tokens.Any(t => t.Word is "units" or "unit" or "measurements" or "measures" or "system")
            || tokens.Any(t => t.Word is "answer" or "answers" or "speak" or "talk" or "works" or "use" or "think" or "prefer" or "want" or "not" or "numbers" or "figures" or "everything") && tokens.Count <= 8);
        bool Any(params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));
        if (asked)
        {
            int not = IndexOf(tokens, "not");
            IReadOnlyList<Token> wanted = not > 0 ? [.. tokens.Take(not)] : tokens;
            bool old = wanted.Any(t => t.Word is "mph" or "miles" or "mile" or "yards" or "foot" or "inch" or "american" or "us" or "english" or "freedom" or "customary");
            bool si = wanted.Any(t => t.Word is "kmh" or "kilometres" or "kilometers" or "km" or "european" or "si" or "continental");
            if (old != si && (old ? !wanted.Any(t => t.Is("us")) || Any("units", "measurements", "measures") : true))
            {
                return old ? UnitPreference.Imperial : UnitPreference.Metric;
            }
        }

        // "No more inches, go metric": what is turned away does not count while the other is there too.
        bool Wanted(params string[] words) => tokens.Where((t, i) => t.Number is null && words.Contains(t.Word) && !tokens.Take(i).TakeLast(3).Any(b => b.Word is "no" or "not" or "stop" or "forget" or "instead" or "than" or "from" or "drop" or "hate" or "without" or "enough")).Any();
        string[] imperial = ["imperial", "feet", "inches", "fahrenheit"], metric = ["metric", "centimetres", "centimeters", "metres", "meters", "celsius", "cm"];
        bool both = Any(imperial) && Any(metric);
        if (both && Wanted(imperial) != Wanted(metric))
        {
            return Wanted(imperial) ? UnitPreference.Imperial : UnitPreference.Metric;
        }

        return Any(imperial) ? UnitPreference.Imperial : Any(metric) ? UnitPreference.Metric : null;
    }

    private static int IndexOf(IReadOnlyList<Token> tokens, string word)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Is(word))
            {
                return i;
            }
        }

        return -1;
    }
}
