using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>A place in the car as said, before it is looked up among the car's sites.</summary>
public sealed record SiteMention
{
    /// <summary>Families it can belong to; at least one.</summary>
    public required IReadOnlyList<MountFamily> Families { get; init; }

    /// <summary>Words that single it out, such as inner or high.</summary>
    public IReadOnlyList<string> Qualifiers { get; init; } = [];

    /// <summary>Seat it was said with; null when with none.</summary>
    public SeatMention? Seat { get; init; }

    /// <summary>Side without a seat, such as "left" alone.</summary>
    public SeatPlace Side { get; init; }

    /// <summary>First word of it.</summary>
    public int Start { get; init; }

    /// <summary>Id of the site when it was chosen from a list; null when it was said in words.</summary>
    public string? SiteId { get; init; }

    /// <summary>Word that named the family.</summary>
    public required string Word { get; init; }
}

/// <summary>Finds the place a question is about.</summary>
public static class SiteReader
{
    /// <summary>The place said, or null. Windows that are up or down are conditions, not places.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="windowsAreConditions">True when the windows were already read as open or shut.</param>
    public static SiteMention? Read(IReadOnlyList<Token> tokens, bool windowsAreConditions)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        for (int i = 0; i < tokens.Count; i++)
        {
            IReadOnlyList<MountFamily> families = SiteWords.FamiliesOf(tokens[i]);
            bool condition = windowsAreConditions && tokens[i].Word is "window" or "windows" or "rearglass";
            bool vent = tokens[i].Is("vent") && i + 1 < tokens.Count && SiteWords.FamiliesOf(tokens[i + 1]).Count > 0;
            if (families.Count == 0 || (condition && windowsAreConditions) || vent)
            {
                continue;
            }

            // "headrest of the back seat": words up to "for" belong to the place; so do the few before it.
            int end = i + 1;
            while (end < tokens.Count && !tokens[end].Is("for") && end < i + 8)
            {
                end++;
            }

            int start = i;
            while (start > 0 && start > i - 4 && !Stops(tokens[start - 1]))
            {
                start--;
            }

            IReadOnlyList<Token> span = [.. tokens.Skip(start).Take(end - start)];
            SeatMention? seat = SeatWords.Find(span).FirstOrDefault(s => !FollowedByMicrophone(tokens, s, start));
            return new SiteMention
            {
                Families = families,
                Word = tokens[i].Word,
                Qualifiers = [.. span.Where(t => t.IsAny(SiteWords.Qualifiers)).Select(t => t.Word).Distinct()],
                Seat = seat is null ? null : seat with { Start = seat.Start + start },
                Side = seat is null ? SideOf(span) : SeatPlace.Any,
                Start = i,
            };
        }

        return null;
    }

    private static bool Stops(Token token) => token.Word is "on" or "in" or "at" or "for" or "why" or "not" or "use" or "and" || token.IsAny(Lexicon.Microphones);

    private static bool FollowedByMicrophone(IReadOnlyList<Token> tokens, SeatMention seat, int offset)
    {
        int next = offset + seat.Start + seat.Count;
        return next < tokens.Count && tokens[next].IsAny(Lexicon.Microphones);
    }

    private static SeatPlace SideOf(IReadOnlyList<Token> span) =>
        span.Any(t => t.Is("left")) ? SeatPlace.Left : span.Any(t => t.Is("right")) ? SeatPlace.Right : SeatPlace.Any;
}
