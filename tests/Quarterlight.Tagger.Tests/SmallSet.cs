using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;

namespace Quarterlight.Tagger.Tests;

/// <summary>The few clips that come with the tests (clips/CREDITS.md). They also train the shipped model.</summary>
internal static class SmallSet
{
    public static string Folder { get; } = Path.Combine(AppContext.BaseDirectory, "clips");

    public static async Task<IReadOnlyList<SourceSound>> ReadAsync()
    {
        var sounds = new List<SourceSound>();
        foreach (string[] field in File.ReadAllLines(Path.Combine(Folder, "labels.csv")).Skip(1).Select(l => l.Split(',')))
        {
            float[] samples = await SoundFile.ReadAsync(Path.Combine(Folder, field[0]), TestContext.Current.CancellationToken);
            SoundKind kind = field[1] == "clean-speech" ? SoundKind.Speech : SoundKind.Noise;
            sounds.Add(new(field[0], field[2], field[1], kind, Manifest.TruthOf(field[1], ""), "see CREDITS.md", true, false, samples));
        }

        return sounds;
    }

    public static TagReport Tag(ISoundTagger tagger, float[] samples)
    {
        var frontEnd = new FeatureFrontEnd(16000);
        frontEnd.Add(samples);
        return ClipTagger.Tag(frontEnd.Finish(), tagger)!;
    }
}
