using System.Globalization;

namespace Quarterlight.Clips.Judgement;

/// <summary>Figures and places in words.</summary>
internal static class Say
{
    /// <summary>Most stretches named in a reason.</summary>
    public const int MostStretches = 10;

    /// <summary>A figure beside its limit: whole, or with as many decimals as tell both apart.</summary>
    public static string Beside(double value, double limit)
    {
        for (int decimals = 0; decimals < 2; decimals++)
        {
            string shown = Number(value, decimals);
            if (shown != Number(limit, decimals) || value == limit)
            {
                return shown;
            }
        }

        return Number(value, 2);
    }

    /// <summary>A limit without needless decimals.</summary>
    public static string Limit(double limit) => (Math.Round(limit, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A figure with so many decimals; no "-0".</summary>
    public static string Number(double value, int decimals = 0) =>
        (Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0).ToString(decimals == 0 ? "0" : "0." + new string('0', decimals), CultureInfo.InvariantCulture);

    /// <summary>A count with its noun.</summary>
    public static string Count(long count, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    /// <summary>A stretch such as "12-31 s", or "at 3.2 s" when it is short.</summary>
    public static string Place(TimeStretch stretch)
    {
        int decimals = stretch.EndSeconds < 10 ? 1 : 0;
        string start = Number(stretch.StartSeconds, decimals), end = Number(stretch.EndSeconds, decimals);
        return stretch.EndSeconds - stretch.StartSeconds < 0.5 || start == end ? $"at {start} s" : $"{start}-{end} s";
    }

    /// <summary>The first stretches in brackets, with a space before; nothing when there are none.</summary>
    public static string Places(IReadOnlyList<TimeStretch> stretches, int most = 2) => stretches.Count == 0
        ? ""
        : $" ({string.Join(", ", stretches.Take(most).Select(Place))}{(stretches.Count > most ? ", ..." : "")})";

    /// <summary>Stretches with gaps of up to <paramref name="gapSeconds"/> closed; the first <see cref="MostStretches"/> of them.</summary>
    public static IReadOnlyList<TimeStretch> Merge(IEnumerable<TimeStretch> stretches, double gapSeconds)
    {
        var merged = new List<TimeStretch>();
        foreach (TimeStretch s in stretches.OrderBy(s => s.StartSeconds))
        {
            if (merged.Count > 0 && s.StartSeconds - merged[^1].EndSeconds <= gapSeconds)
            {
                merged[^1] = merged[^1] with { EndSeconds = Math.Max(merged[^1].EndSeconds, s.EndSeconds) };
            }
            else
            {
                merged.Add(s);
            }
        }

        return [.. merged.Take(MostStretches)];
    }

    /// <summary>Words as a list: "a", "a and b", "a, b and c".</summary>
    public static string List(IReadOnlyList<string> words, string last = "and") =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.Take(words.Count - 1))} {last} {words[^1]}";

    /// <summary>With a capital.</summary>
    public static string Sentence(string words) => words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
}
