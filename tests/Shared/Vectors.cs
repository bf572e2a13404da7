using System.Globalization;
using System.Text;

namespace Quarterlight.Tests.Shared;

/// <summary>Reads published check values; a missing or empty file fails, so that no check passes for want of rows.</summary>
internal static class Vectors
{
    public static List<Dictionary<string, string>> Read(string file)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "vectors", file + ".csv"));
        string[] header = Split(lines[0]);
        List<Dictionary<string, string>> rows =
            [.. lines.Skip(1).Where(l => l.Length > 0).Select(l => header.Zip(Split(l)).GroupBy(p => p.First).ToDictionary(g => g.Key, g => g.First().Second))];
        Assert.NotEmpty(rows);
        return rows;
    }

    public static double Number(string text) => double.Parse(text.Replace("inf", "Infinity", StringComparison.Ordinal), CultureInfo.InvariantCulture);

    public static double[] Numbers(string text) => [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Number)];

    /// <summary>Cells of one line; cells may be quoted.</summary>
    public static string[] Split(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return [.. cells];
    }
}
