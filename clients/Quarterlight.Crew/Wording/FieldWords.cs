using System.Globalization;
using System.Text.RegularExpressions;

namespace Quarterlight.Crew.Wording;

/// <summary>Turns a field path of the contract into words a crew knows, such as "the second talker's head poses".</summary>
public static partial class FieldWords
{
    private static readonly string[] Ordinals = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];

    private static readonly HashSet<string> Wrappers = ["scene", "bundle", "changes", "source", "position", "measurements", "plan", "setup", "gear", "rules", "link_gear", "analogue_fm", "digital", "header", "thresholds", "sent_plan", "recording_media", "air"];

    /// <summary>The path in words; "the request" for an empty path.</summary>
    /// <param name="path">Path such as <c>scene.talkers[1].head_poses</c>.</param>
    public static string Of(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        string[] segments = path.Split('.', StringSplitOptions.RemoveEmptyEntries);
        var parts = new List<string>();
        for (int i = 0; i < segments.Length; i++)
        {
            Match match = Segment().Match(segments[i]);
            string name = match.Groups[1].Value;
            bool last = i == segments.Length - 1;
            if (match.Groups[2].Success)
            {
                int index = int.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture);
                parts.Add($"{Ordinal(index)} {FieldNames.Lists.GetValueOrDefault(name, Plain(name))}");
            }
            else if (last || !Wrappers.Contains(name))
            {
                parts.Add(FieldNames.Words.GetValueOrDefault(name, Plain(name)));
            }
        }

        return parts.Count == 0 ? "the request" : "the " + string.Join("'s ", parts).Replace("s's ", "s' ", StringComparison.Ordinal);
    }

    private static string Ordinal(int index) =>
        index < Ordinals.Length ? Ordinals[index] : string.Create(CultureInfo.InvariantCulture, $"{index + 1}th");

    // Without the unit, which the sentence names.
    private static string Plain(string name) => Unit().Replace(name, "").Replace('_', ' ');

    [GeneratedRegex(@"^([a-z0-9_]*)(?:\[(\d{1,4})\])?", RegexOptions.CultureInvariant)]
    private static partial Regex Segment();

    [GeneratedRegex(@"_(m|mm|cm|deg|db|dba|dbm|dbi|mhz|khz|mw|ms|fraction|ids?|count)$", RegexOptions.CultureInvariant)]
    private static partial Regex Unit();
}
