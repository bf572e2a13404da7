namespace Quarterlight.Crew.Language;

/// <summary>Reads which windows are down out of a question.</summary>
public static class WindowReader
{
    private const double HalfOpen = 0.5;

    // How far "a crack" is: judgement.
    private const double Cracked = 0.15;

    /// <summary>Windows said to be down or shut; empty when none is, or when the glass is meant as a place for a microphone.</summary>
    public static IReadOnlyList<WindowSaid> Read(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var said = new List<WindowSaid>();
        for (int i = 0; i < tokens.Count; i++)
        {
            bool rearGlass = tokens[i].Is("rearglass") && i > 0;
            if (!(tokens[i].IsAny(Lexicon.Windows) || rearGlass))
            {
                continue;
            }

            IReadOnlyList<Token> near = [.. tokens.Skip(Math.Max(0, i - 4)).Take(Math.Min(i, 4) + 6)];
            bool open = near.Any(t => t.IsAny(Lexicon.Opened)), closed = near.Any(t => t.IsAny(Lexicon.Closed));
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
        if (near.FirstOrDefault(t => t.Number is > 0 and <= 100) is { Number: { } percent } && near.Any(t => t.Word is "percent"))
        {
            return percent / 100;
        }

        return near.Any(t => t.Word is "half" or "halfway") ? HalfOpen : near.Any(t => t.Word is "crack" or "cracked" or "cracks" or "bit" or "inch" or "touch" or "slightly" or "ajar" or "quarter") ? Cracked : 1;
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
