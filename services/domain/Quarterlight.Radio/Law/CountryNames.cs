namespace Quarterlight.Radio.Law;

/// <summary>Which table a country's code or name leads to.</summary>
internal static class CountryNames
{
    /// <summary>The table for everywhere in Europe that has none of its own here.</summary>
    public const string Europe = "EU";

    // Members of the European Union and of the European Free Trade Association without a table of their own: all in the CEPT, whose
    // recommendation the EU table holds.
    private static readonly Dictionary<string, string[]> s_europe = new(StringComparer.OrdinalIgnoreCase)
    {
        ["AT"] = ["Austria"],
        ["BE"] = ["Belgium"],
        ["BG"] = ["Bulgaria"],
        ["CH"] = ["Switzerland"],
        ["CY"] = ["Cyprus"],
        ["CZ"] = ["Czechia", "Czech Republic"],
        ["DK"] = ["Denmark"],
        ["EE"] = ["Estonia"],
        ["ES"] = ["Spain"],
        ["FI"] = ["Finland"],
        ["FR"] = ["France"],
        ["GR"] = ["Greece", "EL"],
        ["HR"] = ["Croatia"],
        ["HU"] = ["Hungary"],
        ["IE"] = ["Ireland"],
        ["IS"] = ["Iceland"],
        ["IT"] = ["Italy"],
        ["LI"] = ["Liechtenstein"],
        ["LT"] = ["Lithuania"],
        ["LU"] = ["Luxembourg"],
        ["LV"] = ["Latvia"],
        ["MT"] = ["Malta"],
        ["NL"] = ["Netherlands", "The Netherlands", "Holland"],
        ["NO"] = ["Norway"],
        ["PL"] = ["Poland"],
        ["PT"] = ["Portugal"],
        ["RO"] = ["Romania"],
        ["SE"] = ["Sweden"],
        ["SI"] = ["Slovenia"],
        ["SK"] = ["Slovakia"],
    };

    private static readonly Dictionary<string, string[]> s_own = new(StringComparer.OrdinalIgnoreCase)
    {
        ["US"] = ["USA", "United States", "United States of America", "America"],
        ["GB"] = ["UK", "United Kingdom", "Great Britain", "Britain", "England", "Scotland", "Wales", "Northern Ireland"],
        [Europe] = ["European Union", "Europe", "CEPT"],
        ["DE"] = ["Germany", "Deutschland"],
        ["CA"] = ["Canada"],
        ["AU"] = ["Australia"],
        ["JP"] = ["Japan"],
        ["NZ"] = ["New Zealand", "Aotearoa"],
    };

    private static readonly Dictionary<string, string> s_tables = Build();

    /// <summary>The table's code, and the European country's own name when it has no table; null when unknown.</summary>
    public static (string Table, string? StandsFor)? Resolve(string? codeOrName)
    {
        string key = Key(codeOrName);
        if (!s_tables.TryGetValue(key, out string? code))
        {
            return null;
        }

        return s_europe.TryGetValue(code, out string[]? names) ? (Europe, names[0]) : (code, null);
    }

    private static string Key(string? text) => string.Join(' ', (text ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static Dictionary<string, string> Build()
    {
        var tables = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        foreach ((string code, string[] names) in s_europe.Concat(s_own))
        {
            tables.Add(code, code);
            foreach (string name in names)
            {
                tables.Add(name, code);
            }
        }

        return tables;
    }
}
