using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads what stands round the road and between the cars.</summary>
public static class RoadReader
{
    /// <summary>What stands round the road, or null.</summary>
    public static Surroundings? Surroundings(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        if (Any(tokens, "tunnel", "tunnels", "underpass"))
        {
            return V1.Surroundings.Tunnel;
        }

        if (Any(tokens, "city", "downtown", "canyon", "urban", "skyscrapers"))
        {
            return V1.Surroundings.CityCanyon;
        }

        bool tall = Any(tokens, "tall", "high") && Any(tokens, "buildings", "building", "blocks", "towers", "offices");
        if (tall || Any(tokens, "towers", "highrise", "highrises"))
        {
            return V1.Surroundings.CityCanyon;
        }

        if (Any(tokens, "suburb", "suburbs", "suburban", "residential", "village", "town") || (Any(tokens, "street", "streets") && !Any(tokens, "corner")))
        {
            return V1.Surroundings.SuburbanStreet;
        }

        bool open = tokens.Where((t, i) => (t.Is("open") && i + 1 < tokens.Count && tokens[i + 1].Word is "road" or "country" or "field" or "fields")
            || (t.Is("country") && ((i + 1 < tokens.Count && tokens[i + 1].Word is "road" or "lane") || (i > 1 && tokens[i - 1].Is("the") && tokens[i - 2].Is("in"))))).Any();
        return open || Any(tokens, "highway", "motorway", "freeway", "countryside", "rural", "desert") ? V1.Surroundings.OpenRoad : null;
    }

    /// <summary>What stands between the cars, or null.</summary>
    public static LinkSight? Sight(IReadOnlyList<Token> tokens)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        bool nothing = Any(tokens, "no", "nothing", "without", "nobody");
        if (Any(tokens, "corner", "corners", "bend", "bends", "hairpin") || (Any(tokens, "sight") && (Any(tokens, "out", "no", "not", "lose", "losing", "lost"))))
        {
            return LinkSight.RoundACorner;
        }

        if (Any(tokens, "sight"))
        {
            return LinkSight.Clear;
        }

        if (tokens.Where((t, i) => Big(t) is not null && tokens.Take(i).TakeLast(2).Any(b => b.Word is "without" or "no")).Any())
        {
            return LinkSight.Clear;
        }

        int between = IndexOf(tokens, "between");
        bool behind = tokens.Where((t, i) => t.Is("behind") && i + 2 < tokens.Count && tokens[i + 1].Word is "a" or "an" or "another" && Big(tokens[i + 2]) is not null).Any();
        bool inTheWay = tokens.Any(t => Big(t) is not null) && (Any(tokens, "blocking", "blocks", "blocked") || tokens.Where((t, i) => t.Is("way") && i > 1 && tokens[i - 1].Is("the") && tokens[i - 2].Is("in")).Any() || tokens.Where((t, i) => t.Is("front") && i > 0 && tokens[i - 1].Is("in")).Any());
        inTheWay |= tokens.Where((t, i) => Big(t) is not null && tokens.Skip(i + 1).Take(3).Any(c => c.Word is "cuts" or "cut" or "cutting" or "pulls" or "pull" or "pulling" or "gets" or "slips" or "squeezes") && tokens.Skip(i + 1).Take(4).Any(c => c.Word is "in" or "between")).Any();
        bool traffic = tokens.Where((t, i) => t.Is("traffic") && !(i + 1 < tokens.Count && tokens[i + 1].Word is "light" or "lights")).Any();
        if (!behind && !traffic && !inTheWay && (between < 0 || tokens.Skip(between + 1).Take(1).Any(t => t.Number is not null)))
        {
            return null;
        }

        LinkSight? largest = tokens.Select(Big).Where(s => s is not null).DefaultIfEmpty(null).Max();
        bool car = traffic || tokens.Where((t, i) => t.Word is "car" or "cars" && i > 0 && tokens[i - 1].Word is "a" or "another" or "other" or "one" && i < Math.Max(between, 0) + 5).Any();
        return (largest is not null || car) && nothing ? LinkSight.Clear : largest ?? (car ? LinkSight.CarBetween : nothing ? LinkSight.Clear : null);
    }

    private static LinkSight? Big(Token token) => token.Word switch
    {
        "truck" or "trucks" or "lorry" or "lorries" or "bus" or "buses" or "coach" => LinkSight.TruckBetween,
        "van" or "vans" => LinkSight.VanBetween,
        _ => null,
    };

    private static bool Any(IReadOnlyList<Token> tokens, params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));

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
