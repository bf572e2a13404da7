namespace Quarterlight.Crew.Language;

/// <summary>A seat as said: by name or by where it is.</summary>
/// <param name="Row">1 front, 2 rear, 3 third; null when not said.</param>
/// <param name="Place">Where across.</param>
/// <param name="Start">First word that says so.</param>
/// <param name="Count">Words that say so.</param>
public sealed record SeatMention(int? Row, SeatPlace Place, int Start, int Count)
{
    /// <summary>Seat ids this can mean with the driver on that side, likeliest first.</summary>
    /// <param name="driverOnLeft">True in a left-hand-drive car.</param>
    public IReadOnlyList<string> SeatIds(bool driverOnLeft)
    {
        string near = driverOnLeft ? "left" : "right", far = driverOnLeft ? "right" : "left";
        return (Row, Place) switch
        {
            (1, SeatPlace.Driver) => ["driver"],
            (1, SeatPlace.Passenger) => ["front-passenger"],
            (1, SeatPlace.Centre) => ["front-centre"],
            (1, SeatPlace.Left) => [driverOnLeft ? "driver" : "front-passenger"],
            (1, SeatPlace.Right) => [driverOnLeft ? "front-passenger" : "driver"],
            (1, _) => ["driver", "front-passenger"],
            (3, SeatPlace.Left) => ["third-left"],
            (3, SeatPlace.Right) => ["third-right"],
            (3, _) => ["third-left", "third-right"],
            (_, SeatPlace.Driver) => [$"rear-{near}"],
            (_, SeatPlace.Passenger) => [$"rear-{far}"],
            (_, SeatPlace.Left) => ["rear-left"],
            (_, SeatPlace.Right) => ["rear-right"],
            (_, SeatPlace.Centre) => ["rear-centre"],
            (_, _) => ["rear-left", "rear-right", "rear-centre"],
        };
    }
}

/// <summary>Where across the car.</summary>
public enum SeatPlace
{
    /// <summary>Not said.</summary>
    Any,

    /// <summary>Driver, or the driver's side in a rear row.</summary>
    Driver,

    /// <summary>Front passenger, or the passenger's side in a rear row.</summary>
    Passenger,

    /// <summary>Left, facing forward.</summary>
    Left,

    /// <summary>Right, facing forward.</summary>
    Right,

    /// <summary>Middle.</summary>
    Centre,
}

/// <summary>Finds seats in a question.</summary>
public static class SeatWords
{
    private static readonly HashSet<string> Rear = Lexicon.Words("rear back backseat behind");
    private static readonly HashSet<string> Third = Lexicon.Words("third");
    private static readonly HashSet<string> Seat = Lexicon.Words("seat seats passenger passengers talker side row");

    /// <summary>Words this reader knows.</summary>
    public static IReadOnlySet<string> All { get; } = Lexicon.Words("driver drivers passenger passengers rear back backseat third seat seats row behind left right front");

    /// <summary>Every seat said, in order.</summary>
    public static IReadOnlyList<SeatMention> Find(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        var found = new List<SeatMention>();
        for (int i = 0; i < tokens.Count;)
        {
            if (ReadAt(tokens, i) is { } mention)
            {
                found.Add(mention);
                i += mention.Count;
            }
            else
            {
                i++;
            }
        }

        return found;
    }

    private static SeatMention? ReadAt(IReadOnlyList<Token> tokens, int i)
    {
        Token token = tokens[i];
        if (token.Is("behind") && Word(tokens, Skip(tokens, i + 1)) is { } whom && Name(whom) is { } name && !tokens[Skip(tokens, i + 1)].Possessive)
        {
            return new SeatMention(2, name, i, Skip(tokens, i + 1) - i + 1);
        }

        if (token.IsAny(Rear) || token.IsAny(Third))
        {
            int row = token.IsAny(Third) ? 3 : 2;
            int next = i + 1;
            SeatPlace place = SeatPlace.Any;
            while (next < tokens.Count && next < i + 4)
            {
                if (Across(tokens[next].Word) is { } across && place == SeatPlace.Any)
                {
                    place = across;
                }
                else if (!tokens[next].IsAny(Seat))
                {
                    break;
                }

                next++;
            }

            return place != SeatPlace.Any || next > i + 1 || token.Is("backseat") || (i > 0 && tokens[i - 1].Word is "the" && token.Is("back") && i > 1 && tokens[i - 2].Word is "in") ? new SeatMention(row, place, i, next - i) : null;
        }

        if (Across(token.Word) is { } side && i + 1 < tokens.Count && (tokens[i + 1].IsAny(Rear) || tokens[i + 1].IsAny(Third)))
        {
            return new SeatMention(tokens[i + 1].IsAny(Third) ? 3 : 2, side, i, 2);
        }

        if (token.Is("front") && i + 1 < tokens.Count && Across(tokens[i + 1].Word) is { } frontSide)
        {
            return new SeatMention(1, frontSide, i, 2);
        }

        return Name(token.Word) is { } said ? new SeatMention(1, said, i, 1) : null;
    }

    private static int Skip(IReadOnlyList<Token> tokens, int i) => i < tokens.Count && tokens[i].Is("the") ? i + 1 : i;

    private static string? Word(IReadOnlyList<Token> tokens, int i) => i < tokens.Count ? tokens[i].Word : null;

    private static SeatPlace? Name(string word) => word switch
    {
        "driver" or "drivers" => SeatPlace.Driver,
        "passenger" or "passengers" => SeatPlace.Passenger,
        _ => null,
    };

    private static SeatPlace? Across(string word) => word switch
    {
        "left" => SeatPlace.Left,
        "right" => SeatPlace.Right,
        "centre" or "center" or "middle" => SeatPlace.Centre,
        _ => null,
    };
}
