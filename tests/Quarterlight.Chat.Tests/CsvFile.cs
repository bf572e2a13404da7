namespace Quarterlight.Chat.Tests;

/// <summary>Reads the test vectors: a header, then rows; fields may be quoted.</summary>
internal static class CsvFile
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string name)
    {
        string[] lines = [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "vectors", name)).Where(l => l.Length > 0)];
        Assert.True(lines.Length > 1, $"{name} has no rows.");
        string[] header = Fields(lines[0]);
        return [.. lines.Skip(1).Select(line =>
        {
            string[] fields = Fields(line);
            Assert.Equal(header.Length, fields.Length);
            return (IReadOnlyDictionary<string, string>)header.Zip(fields).ToDictionary(p => p.First, p => p.Second);
        })];
    }

    private static string[] Fields(string line)
    {
        var fields = new List<string>();
        var field = new System.Text.StringBuilder();
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                fields.Add(field.ToString());
                field.Clear();
            }
            else
            {
                field.Append(c);
            }
        }

        fields.Add(field.ToString());
        return [.. fields];
    }
}
