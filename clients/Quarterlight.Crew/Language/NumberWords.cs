namespace Quarterlight.Crew.Language;

/// <summary>Numbers written out. "one" is left a word, because it rarely counts anything in a question.</summary>
public static class NumberWords
{
    private static readonly Dictionary<string, double> Values = new()
    {
        ["zero"] = 0,
        ["two"] = 2,
        ["three"] = 3,
        ["four"] = 4,
        ["five"] = 5,
        ["six"] = 6,
        ["seven"] = 7,
        ["eight"] = 8,
        ["nine"] = 9,
        ["ten"] = 10,
        ["eleven"] = 11,
        ["twelve"] = 12,
        ["thirteen"] = 13,
        ["fourteen"] = 14,
        ["fifteen"] = 15,
        ["sixteen"] = 16,
        ["seventeen"] = 17,
        ["eighteen"] = 18,
        ["nineteen"] = 19,
        ["twenty"] = 20,
        ["thirty"] = 30,
        ["forty"] = 40,
        ["fourty"] = 40,
        ["fifty"] = 50,
        ["sixty"] = 60,
        ["seventy"] = 70,
        ["eighty"] = 80,
        ["ninety"] = 90,
        ["hundred"] = 100,
        ["thousand"] = 1000,
    };

    /// <summary>Reads a number written out in lower case.</summary>
    public static bool TryRead(string word, out double value) => Values.TryGetValue(word, out value);

    /// <summary>True for twenty to ninety.</summary>
    public static bool IsTens(string word) => Values.TryGetValue(word, out double value) && value is >= 20 and <= 90;
}
