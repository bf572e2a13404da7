using Quarterlight.Tests.Shared;

namespace Quarterlight.Chat.Tests;

/// <summary>Reads the test vectors: a header, then rows; fields may be quoted.</summary>
internal static class CsvFile
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string name)
    {
        string[] lines = [.. File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "vectors", name)).Where(l => l.Length > 0)];
        Assert.True(lines.Length > 1, $"{name} has no rows.");
        string[] header = Vectors.Split(lines[0]);
        return [.. lines.Skip(1).Select(line =>
        {
            string[] fields = Vectors.Split(line);
            Assert.Equal(header.Length, fields.Length);
            return (IReadOnlyDictionary<string, string>)header.Zip(fields).ToDictionary(p => p.First, p => p.Second);
        })];
    }
}
