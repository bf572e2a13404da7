using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Planner.Mapping;

/// <summary>
/// Lines such as <c>sSCENE=12A</c> and <c>sTRK1=Boom</c> that recorders write into the description of bext. Common practice, no source; the letter in
/// front differs from recorder to recorder.
/// </summary>
internal sealed partial class BextLines
{
    private static readonly char[] s_breaks = ['\r', '\n', '\0'];

    private readonly Dictionary<string, string> _values = [];
    private readonly SortedDictionary<int, string> _tracks = [];

    /// <summary>Names of the tracks, by their number; the first is that of the first channel.</summary>
    public IReadOnlyList<string> Tracks => [.. _tracks.Values];

    /// <summary>The value of a key in capitals; null when it is not written.</summary>
    public string? this[string key] => _values.GetValueOrDefault(key);

    /// <summary>Reads a description; what is no such line is passed over.</summary>
    public static BextLines Read(string? description)
    {
        var lines = new BextLines();
        foreach (string line in (description ?? "").Split(s_breaks, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (LinePattern().Match(line) is not { Success: true } match)
            {
                continue;
            }

            string value = match.Groups["value"].Value.Trim();
            if (match.Groups["track"] is { Success: true } track)
            {
                lines._tracks.TryAdd(int.Parse(track.Value, CultureInfo.InvariantCulture), value);
            }
            else
            {
                lines._values.TryAdd(match.Groups["key"].Value, value);
            }
        }

        return lines;
    }

    [GeneratedRegex(@"^[a-z]?(?:TRK(?<track>[0-9]{1,3})|(?<key>PROJECT|SCENE|TAKE|TAPE|NOTE))=(?<value>.*)$")]
    private static partial Regex LinePattern();
}
