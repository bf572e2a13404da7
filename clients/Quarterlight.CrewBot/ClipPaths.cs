using System.Text;

namespace Quarterlight.CrewBot;

/// <summary>A typed line with the paths of sound files cut out.</summary>
/// <param name="Text">The line with each path replaced by "this clip"; empty when it was nothing but a path.</param>
/// <param name="Paths">Paths as meant: unquoted, unescaped, in order.</param>
public sealed record ClipLine(string Text, IReadOnlyList<string> Paths);

/// <summary>Finds paths of sound files in what is typed or dropped on a terminal: bare, in quotes, with escaped or plain spaces, as a file address.</summary>
public static class ClipPaths
{
    private const string Instead = "this clip";
    private const int MostWords = 12;
    private const string Stops = "?!,.;:)";

    private static readonly HashSet<string> Extensions = new(
        [".wav", ".wave", ".bwf", ".rf64", ".w64", ".flac", ".mp3", ".ogg", ".oga", ".opus", ".m4a", ".aac", ".aif", ".aiff", ".aifc", ".caf", ".wma", ".mp4", ".mov", ".mkv", ".webm", ".mxf"],
        StringComparer.OrdinalIgnoreCase);

    /// <summary>Finds every path.</summary>
    /// <param name="line">What was typed.</param>
    /// <param name="exists">Whether a file or folder of that path is there.</param>
    public static ClipLine Find(string line, Func<string, bool> exists)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(exists);
        List<Word> words = Split(line);
        var paths = new List<string>();
        var text = new StringBuilder();
        int written = 0;
        for (int i = 0; i < words.Count; i++)
        {
            if (At(line, words, i, written, exists) is not { } found)
            {
                continue;
            }

            paths.Add(found.Path);
            text.Append(line, written, Math.Max(0, found.Start - written)).Append(Instead);
            written = found.End;
            i = found.LastWord;
        }

        text.Append(line, written, line.Length - written);
        string rest = text.ToString().Trim();
        return new ClipLine(rest.Trim('"', '\'', ' ', '.', '?', '!') == Instead ? "" : rest, paths);
    }

    private static Found? At(string line, List<Word> words, int at, int from, Func<string, bool> exists)
    {
        Word word = words[at];
        if (word.Quoted)
        {
            return Begins(word.Value) || IsSound(word.Value) ? new Found(Plain(word.Value), word.Start, word.End, at) : null;
        }

        (string value, int end) = WithoutStop(word.Value, word.End, exists);
        if (IsSound(value))
        {
            return exists(Plain(value)) || Begins(value) ? new Found(Plain(value), word.Start, end, at) : Longer(line, words, at, from, value, end, exists);
        }

        if (!Begins(value))
        {
            return value.AsSpan().IndexOfAny('/', '\\') > 0 && exists(value) ? new Found(value, word.Start, end, at) : null;
        }

        // A path dropped with plain spaces goes on up to the ending of a sound file.
        for (int last = at + 1; last < Math.Min(words.Count, at + MostWords) && !words[last].Quoted && !exists(Plain(value)); last++)
        {
            (string lastValue, int lastEnd) = WithoutStop(words[last].Value, words[last].End, exists);
            if (Begins(lastValue))
            {
                break;
            }

            if (IsSound(lastValue))
            {
                string whole = line[word.Start..lastEnd];
                return exists(Plain(whole)) || !exists(lastValue) ? new Found(Plain(whole), word.Start, lastEnd, last) : null;
            }
        }

        bool path = exists(Plain(value)) || value[0] != '/' || value.LastIndexOf('/') > 0;
        return path ? new Found(Plain(value), word.Start, end, at) : null;
    }

    // "take 3.wav": words before belong to the name when a file is called so.
    private static Found Longer(string line, List<Word> words, int at, int from, string value, int end, Func<string, bool> exists)
    {
        for (int first = at - 1; first >= Math.Max(0, at - MostWords) && words[first].Start >= from && !words[first].Quoted; first--)
        {
            string whole = line[words[first].Start..end];
            if (exists(whole))
            {
                return new Found(whole, words[first].Start, end, at);
            }
        }

        return new Found(value, words[at].Start, end, at);
    }

    private static (string Value, int End) WithoutStop(string value, int end, Func<string, bool> exists)
    {
        int stops = 0;
        while (stops < value.Length - 1 && Stops.Contains(value[^(stops + 1)], StringComparison.Ordinal))
        {
            stops++;
        }

        return stops == 0 || exists(value) || value is "." or ".." ? (value, end) : (value[..^stops], end - stops);
    }

    private static bool IsSound(string value)
    {
        int dot = value.LastIndexOf('.');
        return dot > 0 && value[dot - 1] is not ('/' or '\\') && Extensions.Contains(value[dot..]);
    }

    private static bool Begins(string value) =>
        value.Length > 1 && value.Any(char.IsLetterOrDigit) && (value.StartsWith("./", StringComparison.Ordinal) || value.StartsWith("../", StringComparison.Ordinal) || value.StartsWith("~/", StringComparison.Ordinal)
            || value.StartsWith(".\\", StringComparison.Ordinal) || value.StartsWith("..\\", StringComparison.Ordinal) || value.StartsWith("\\\\", StringComparison.Ordinal)
            || value.StartsWith("file://", StringComparison.OrdinalIgnoreCase) || (value[0] == '/' && (char.IsLetterOrDigit(value[1]) || value[1] is '.' or '_'))
            || (value.Length > 3 && char.IsAsciiLetter(value[0]) && value[1] == ':' && value[2] is '\\' or '/'));

    private static string Plain(string value) => value.StartsWith("file://", StringComparison.OrdinalIgnoreCase) && Uri.TryCreate(value, UriKind.Absolute, out Uri? address) ? address.LocalPath : value;

    private static List<Word> Split(string line)
    {
        var words = new List<Word>();
        int i = 0;
        while (i < line.Length)
        {
            if (char.IsWhiteSpace(line[i]))
            {
                i++;
                continue;
            }

            int start = i, close = line[i] is '"' or '\'' or '“' ? Closing(line, i) : -1;
            if (close > 0)
            {
                words.Add(new Word(line[(i + 1)..close], start, close + 1, Quoted: true));
                i = close + 1;
                continue;
            }

            var value = new StringBuilder();
            while (i < line.Length && !char.IsWhiteSpace(line[i]))
            {
                // A backslash before a space or a sign is a shell's; before a letter it parts folders.
                if (line[i] == '\\' && i + 1 < line.Length && !char.IsLetterOrDigit(line[i + 1]) && line[i + 1] is not ('\\' or '.' or '_'))
                {
                    i++;
                }

                value.Append(line[i++]);
            }

            words.Add(new Word(value.ToString(), start, i, Quoted: false));
        }

        return words;
    }

    // A quotation ends before a space, a stop or the end of the line, so that an apostrophe inside does not end it.
    private static int Closing(string line, int open)
    {
        char wanted = line[open] == '“' ? '”' : line[open];
        for (int i = open + 1; i < line.Length; i++)
        {
            if (line[i] == wanted && (i + 1 == line.Length || char.IsWhiteSpace(line[i + 1]) || Stops.Contains(line[i + 1], StringComparison.Ordinal)))
            {
                return i;
            }
        }

        return -1;
    }

    private readonly record struct Word(string Value, int Start, int End, bool Quoted);

    private readonly record struct Found(string Path, int Start, int End, int LastWord);
}
