namespace Quarterlight.Crew.Language;

/// <summary>Reads which windows are down out of a question.</summary>
public static class WindowReader
{
    private const double HalfOpen = 0.5, Quarter = 0.25, Third = 0.33;

    // How far "a crack" is: judgement.
    private const double Cracked = 0.15;

    /// <summary>Windows said to be down or shut; empty when none is, or when the glass is meant as a place for a microphone.</summary>
    public static IReadOnlyList<WindowSaid> Read(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var said = new List<WindowSaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            bool rearGlass = tokens[i].Is("rearglass");
            if (!(tokens[i].IsAny(Lexicon.Windows) || rearGlass))
            {
                continue;
            }

            IReadOnlyList<Token> near = [.. tokens.Skip(Math.Max(0, i - 4)).Take(Math.Min(i, 4) + 8)];
            bool open = near.Any(t => t.IsAny(Lexicon.Opened)) || Partly(near) is not null, closed = near.Any(t => t.IsAny(Lexicon.Closed));
            if (!open && !closed)
            {
                continue;
            }

            bool negated = near.Any(t => t.Word is "no" or "without" or "not");
            double fraction = (open && !negated) || (closed && !open && negated) ? HowFar(near) : 0;
            said.Add(new WindowSaid(SeatOf(tokens, i, rearGlass), fraction));
        }

        return said;
    }

    private static double HowFar(IReadOnlyList<Token> near)
    {
        bool little = near.Any(t => t.Word is "crack" or "cracked" or "cracks" or "bit" or "inch" or "inches" or "touch" or "slightly" or "ajar" or "finger" or "gap" or "smidge" or "centimetre" or "centimetres" or "cm");
        return Partly(near) ?? (little ? Cracked : 1);
    }

    // "30 percent", "three quarters", "a third", "half"; "two thirds" to the hundredth.
    private static double? Partly(IReadOnlyList<Token> near)
    {
        for (int i = 0; i < near.Count; i++)
        {
            double? before = i > 0 ? near[i - 1].Number : null;
            switch (near[i].Word)
            {
                case "percent" when before is > 0 and <= 100:
                    return before / 100;
                case "quarter" or "quarters" when !(i + 1 < near.Count && near[i + 1].Word is "mile" or "past" or "to" or "inch" or "of"):
                    return before == 3 ? 0.75 : Quarter;
                case "third" when i > 0 && near[i - 1].Word is "a" or "one":
                    return Third;
                case "thirds":
                    return 1 - Third;
                case "half" or "halfway" when !(i + 1 < near.Count && near[i + 1].Word is "inch" or "mile" or "hour" or "an" or "past" || i + 2 < near.Count && near[i + 1].Word is "a" && near[i + 2].Word is "mile" or "inch"):
                    return HalfOpen;
            }
        }

        return null;
    }

    private static SeatMention? SeatOf(IReadOnlyList<Token> tokens, int window, bool rearGlass)
    {
        if (rearGlass)
        {
            return new SeatMention(2, SeatPlace.Any, window, 1);
        }

        IReadOnlyList<Token> before = [.. tokens.Take(window).TakeLast(4)];
        if (SeatWords.Find(before) is { Count: > 0 } seats)
        {
            return seats[^1];
        }

        return (before.Count > 0 ? before[^1].Word : null) switch
        {
            "front" => new SeatMention(1, SeatPlace.Any, window - 1, 1),
            "rear" or "back" => new SeatMention(2, SeatPlace.Any, window - 1, 1),
            "left" => new SeatMention(1, SeatPlace.Left, window - 1, 1),
            "right" => new SeatMention(1, SeatPlace.Right, window - 1, 1),
            _ => null,
        };
    }
}
