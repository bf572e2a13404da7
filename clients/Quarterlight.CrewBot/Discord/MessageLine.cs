using System.Text;

namespace Quarterlight.CrewBot.Discord;

/// <summary>One line of a message before it is made safe.</summary>
/// <param name="Before">Our own markup before the text.</param>
/// <param name="Text">Any text.</param>
/// <param name="After">Our own markup after it.</param>
internal sealed record MessageLine(string Before, string Text, string After)
{
    // Below this much room a line is better left out than shown in part.
    private const int LeastRoom = 200;

    /// <summary>How much it is needed: 0 the decision, 1 what keeps people safe, then ever less.</summary>
    public int Need { get; init; }

    /// <summary>The line as sent.</summary>
    public string Write() => Before + Markdown.Escape(Text, startsLine: Before is "" or "-# ") + After;

    /// <summary>Lines under one another, as many whole ones as fit; if not even the first fits, the start of it.</summary>
    /// <param name="lines">The lines.</param>
    /// <param name="most">Most characters.</param>
    /// <param name="whole">True when nothing was left out.</param>
    public static string Join(IReadOnlyList<MessageLine> lines, int most, out bool whole)
    {
        var text = new StringBuilder();
        foreach (MessageLine line in lines)
        {
            string written = line.Write();
            int gap = text.Length == 0 ? 0 : 1;
            if (text.Length + gap + written.Length > most)
            {
                whole = false;
                int room = most - text.Length - gap;
                if (text.Length == 0 || room >= LeastRoom)
                {
                    text.Append('\n', gap).Append(line.Cut(room));
                }

                return text.ToString();
            }

            text.Append('\n', gap).Append(written);
        }

        whole = true;
        return text.ToString();
    }

    /// <summary>As many of the lines as fit, the most needed first, still in their order; all of them when even the first does not fit.</summary>
    public static IReadOnlyList<MessageLine> MostNeeded(IReadOnlyList<MessageLine> lines, int most)
    {
        var chosen = new HashSet<int>();
        int used = -1;
        foreach (int i in Enumerable.Range(0, lines.Count).OrderBy(i => lines[i].Need))
        {
            int length = lines[i].Write().Length + 1;
            if (used + length <= most)
            {
                used += length;
                chosen.Add(i);
            }
        }

        return chosen.Contains(0) ? [.. lines.Where((_, i) => chosen.Contains(i))] : lines;
    }

    // Cut before it is made safe, or a cut could fall between a backslash and what it protects.
    private string Cut(int room)
    {
        string plain = Markdown.Plain(Text);
        int length = room;
        string written;
        do
        {
            written = (this with { Text = CutText.AtWord(plain, length) }).Write();
            length -= Math.Max(1, (written.Length - room) / 2);
        }
        while (written.Length > room && length > 1);
        return written;
    }
}
