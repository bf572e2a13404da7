using System.Text.RegularExpressions;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Training.Data;

/// <summary>The labelled clips of a folder with a MANIFEST.csv (file, tag, source, original_path, licence, seconds, notes).</summary>
public static partial class Manifest
{
    /// <summary>Name of the list in the folder.</summary>
    public const string FileName = "MANIFEST.csv";

    /// <summary>Reads all clips. Read only; nothing is copied.</summary>
    /// <param name="folder">Folder with the list.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="FileNotFoundException">There is no list in the folder.</exception>
    /// <exception cref="FormatException">A line names no recording or an unknown tag.</exception>
    public static async Task<IReadOnlyList<SourceSound>> ReadAsync(string folder, CancellationToken cancellation)
    {
        IReadOnlyDictionary<string, string> unknown = UnknownLabels();
        var sounds = new List<SourceSound>();
        foreach (string line in (await File.ReadAllLinesAsync(Path.Combine(folder, FileName), cancellation).ConfigureAwait(false)).Skip(1).Where(l => l.Length > 0))
        {
            IReadOnlyList<string> field = CsvLines.Split(line);
            string recording = RecordingPattern().Match(field[^1]) is { Success: true } found
                ? found.Groups[1].Value
                : throw new FormatException($"{field[0]}: the notes name no recording (rec=...).");
            string path = Path.Combine(folder, field[0]);
            sounds.Add(new(
                field[0], recording, field[1], KindOf(field[1]), TruthOf(field[1], unknown.GetValueOrDefault(recording, "")), field[4],
                Licences.IsConfirmed(field[4]), false, await SoundFile.ReadAsync(path, cancellation).ConfigureAwait(false))
            {
                FileSha256 = await SoundFile.DigestAsync(path, cancellation).ConfigureAwait(false),
            });
        }

        return sounds;
    }

    /// <summary>What the tags of a group are, less those nobody can say.</summary>
    /// <exception cref="FormatException">There is no such group.</exception>
    public static Truth TruthOf(string group, string unknownTags)
    {
        ArgumentNullException.ThrowIfNull(unknownTags);
        Truth truth = group switch
        {
            "engine" => Truth.Only(ClipTag.Engine),
            "wind" => Truth.Only(ClipTag.Wind),
            "ac" => Truth.Only(ClipTag.AirConditioning),
            "clean-speech" or "quiet" => Truth.JustClean,
            "other" => Truth.None,
            _ => throw new FormatException($"{group} is no group of clips; known are ac, clean-speech, engine, other, quiet, wind."),
        };
        foreach (string tag in unknownTags.Split('+', StringSplitOptions.RemoveEmptyEntries))
        {
            truth = truth.With(tag switch { "engine" => ClipTag.Engine, "wind" => ClipTag.Wind, "ac" => ClipTag.AirConditioning, _ => ClipTag.Clean }, null);
        }

        return truth;
    }

    /// <summary>Recordings of which a tag cannot be said, by name, as "engine+wind".</summary>
    public static IReadOnlyDictionary<string, string> UnknownLabels()
    {
        using Stream stream = typeof(Manifest).Assembly.GetManifestResourceStream("unknown-labels.csv")
            ?? throw new InvalidOperationException("unknown-labels.csv is missing from the assembly.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Skip(1).Select(CsvLines.Split).ToDictionary(f => f[0], f => f[1]);
    }

    private static SoundKind KindOf(string group) => group switch
    {
        "clean-speech" => SoundKind.Speech,
        "quiet" => SoundKind.Quiet,
        _ => SoundKind.Noise,
    };

    [GeneratedRegex(@"rec=([^;\s]+)")]
    private static partial Regex RecordingPattern();
}
