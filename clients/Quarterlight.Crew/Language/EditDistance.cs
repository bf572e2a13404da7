namespace Quarterlight.Crew.Language;

/// <summary>How many slips of the finger lie between two words.</summary>
public static class EditDistance
{
    /// <summary>
    /// Fewest single letters added, dropped, changed or swapped with their neighbor that turn one word into the other
    /// (optimal string alignment).
    /// </summary>
    public static int Between(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        int[] before = new int[b.Length + 1], above = new int[b.Length + 1], row = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
        {
            above[j] = j;
        }

        for (int i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1] + 1, above[j] + 1), above[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }
            }

            (before, above, row) = (above, row, before);
        }

        return above[b.Length];
    }

    /// <summary>Slips forgiven in a word of this length: none up to 3 letters, one up to 6, then two.</summary>
    public static int Forgiven(int length) => length <= 3 ? 0 : length <= 6 ? 1 : 2;
}
