using Quarterlight.Audio;
using Quarterlight.Clips.Tagging;

namespace Quarterlight.Training.Data;

/// <summary>
/// The mixer's own labelled clips: one folder a combination of tags (<c>engine</c>, <c>engine+wind</c>, <c>ac</c>, <c>clean</c>, <c>quiet</c>,
/// <c>other</c>). Files whose names agree up to the first underscore are one recording, unless <c>recordings.csv</c> (file,recording) says otherwise.
/// </summary>
public static class OwnClips
{
    /// <summary>Name of the optional list of recordings.</summary>
    public const string ListName = "recordings.csv";

    private static readonly string[] s_endings = [".wav", ".flac", ".mp3", ".ogg", ".opus"];

    /// <summary>Reads all clips.</summary>
    /// <exception cref="DirectoryNotFoundException">There is no such folder.</exception>
    /// <exception cref="FormatException">A folder's name is no combination of tags.</exception>
    /// <exception cref="AudioFaultException">A file cannot be read.</exception>
    public static async Task<IReadOnlyList<SourceSound>> ReadAsync(string folder, CancellationToken cancellation)
    {
        string list = Path.Combine(folder, ListName);
        Dictionary<string, string> recordings = !File.Exists(list)
            ? []
            : (await File.ReadAllLinesAsync(list, cancellation).ConfigureAwait(false)).Skip(1).Where(l => l.Length > 0).Select(CsvLines.Split).ToDictionary(f => f[0].Replace('\\', '/'), f => f[1]);
        var sounds = new List<SourceSound>();
        foreach (string path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(p => s_endings.Contains(Path.GetExtension(p).ToLowerInvariant())).Order(StringComparer.Ordinal))
        {
            string name = Path.GetRelativePath(folder, path).Replace('\\', '/');
            string group = name.Split('/')[0];
            (Truth truth, SoundKind kind) = TruthOf(group);
            string recording = recordings.GetValueOrDefault(name) ?? Path.GetFileNameWithoutExtension(name).Split('_')[0];
            sounds.Add(new(name, "own-" + recording, group, kind, truth, "own", true, false, await SoundFile.ReadAsync(path, cancellation).ConfigureAwait(false))
            {
                FileSha256 = await SoundFile.DigestAsync(path, cancellation).ConfigureAwait(false),
            });
        }

        return sounds;
    }

    /// <summary>What a folder's name says.</summary>
    /// <exception cref="FormatException">It is no combination of tags.</exception>
    public static (Truth Truth, SoundKind Kind) TruthOf(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        switch (folder)
        {
            case "clean":
                return (Truth.JustClean, SoundKind.Speech);
            case "quiet":
                return (Truth.JustClean, SoundKind.Quiet);
            case "other":
                return (Truth.None, SoundKind.Noise);
        }

        Truth truth = Truth.None;
        foreach (string tag in folder.Split('+'))
        {
            truth = truth.With(tag switch
            {
                "engine" => ClipTag.Engine,
                "wind" => ClipTag.Wind,
                "ac" => ClipTag.AirConditioning,
                _ => throw new FormatException($"The folder {folder} is no combination of tags. Name it engine, wind or ac, several joined by +, or clean, quiet or other."),
            }, true);
        }

        return (truth, SoundKind.Noise);
    }
}
