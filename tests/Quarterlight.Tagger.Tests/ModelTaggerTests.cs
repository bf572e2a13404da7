using System.IO.Compression;
using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Tagger.Tests;

public sealed class ModelTaggerTests : IClassFixture<ShippedModel>
{
    private readonly ModelTagger _tagger;

    public ModelTaggerTests(ShippedModel shipped) => _tagger = shipped.Tagger;

    [Fact]
    public void LoadShipped_Model_SaysWhatItIs()
    {
        Assert.Equal("quarterlight-tagger", _tagger.Identity.Name);
        Assert.Equal(64, _tagger.Identity.TrainingDataDigest.Length);
        foreach (ClipTag tag in Enum.GetValues<ClipTag>())
        {
            UnsureBand band = _tagger.Thresholds[tag];
            Assert.InRange(band.AbsentBelow, 0.2, 0.5);
            Assert.InRange(band.PresentFrom, 0.5, 0.8);
        }
    }

    [Fact]
    public void LoadShipped_ModelFile_IsSmall()
    {
        using Stream model = typeof(ModelTagger).Assembly.GetManifestResourceStream("tagger.zip")!;
        Assert.InRange(model.Length, 10_000, 2_000_000);
    }

    // These clips also train the model: this proves that the shipped file, the front end and the labels fit together, not that it generalises. How well it
    // does on recordings it has not heard is in docs/models/tagger-card.md.
    [Fact]
    public async Task Tag_ClipsOfTheTests_MostAreRight()
    {
        IReadOnlyList<SourceSound> sounds = await SmallSet.ReadAsync();
        int right = 0, all = 0;
        foreach (SourceSound sound in sounds)
        {
            TagReport report = SmallSet.Tag(_tagger, sound.Samples);
            foreach (ClipTag tag in Truth.Tags)
            {
                all++;
                right += sound.Truth[tag] == report.Overall[tag] >= 0.5 ? 1 : 0;
            }
        }

        // 13 clips, 4 tags each: at most 5 of 52 wrong.
        Assert.True(right >= all - 5, $"{right} of {all} are right.");
    }

    [Fact]
    public async Task Tag_SpeechOverWind_BothAreHeard()
    {
        IReadOnlyList<SourceSound> sounds = await SmallSet.ReadAsync();
        float[] speech = sounds.First(s => s.Name == "en_allison_agent-user.wav").Samples;
        int found = 0, dirty = 0;
        SourceSound[] winds = [.. sounds.Where(s => s.Group == "wind")];
        foreach (SourceSound wind in winds)
        {
            TagReport report = SmallSet.Tag(_tagger, Mixer.SpeechOverNoise(speech, wind.Samples, 5)!);
            found += report.Overall.Wind >= 0.5 ? 1 : 0;
            dirty += report.Overall.Clean < 0.5 ? 1 : 0;
        }

        Assert.True(found >= winds.Length - 2, $"Wind found in {found} of {winds.Length}.");
        Assert.Equal(winds.Length, dirty);
    }

    [Fact]
    public async Task Score_EightThreads_SameAsOne()
    {
        float[][] rows = [.. (await SmallSet.ReadAsync()).SelectMany(s => SoundCase.Hear(s.Samples, 16000).Rows)];
        TagProbabilities[] alone = [.. rows.Select(r => _tagger.Score(r))];
        Assert.True(alone.Distinct().Count() > rows.Length / 2);
        int different = 0;
        Thread[] threads = [.. Enumerable.Range(0, 8).Select(t => new Thread(() =>
        {
            for (int i = 0; i < 2000; i++)
            {
                int row = ((i * 7) + t) % rows.Length;
                if (_tagger.Score(rows[row]) != alone[row])
                {
                    Interlocked.Increment(ref different);
                }
            }
        }))];
        Array.ForEach(threads, t => t.Start());
        Array.ForEach(threads, t => t.Join());
        Assert.Equal(0, different);
    }

    [Fact]
    public void Score_RowOfAnotherLength_Throws() => Assert.Throws<ArgumentException>(() => _tagger.Score(new float[FeatureFrontEnd.Count - 1]));

    [Fact]
    public void Load_NoModel_SaysSo()
    {
        Assert.Throws<InvalidDataException>(() => ModelTagger.Load(new MemoryStream([1, 2, 3, 4])));
        using var empty = new MemoryStream();
        using (var archive = new ZipArchive(empty, ZipArchiveMode.Create, leaveOpen: true))
        {
            archive.CreateEntry("something.txt");
        }

        empty.Position = 0;
        Assert.Throws<InvalidDataException>(() => ModelTagger.Load(empty));
    }

    // A model of another front end must not be used with this one.
    [Fact]
    public void Load_ModelOfOtherFeatures_SaysSo()
    {
        using var file = new MemoryStream();
        using (var archive = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        using (Stream json = archive.CreateEntry(TaggerDescription.EntryName).Open())
        {
            (_tagger.Description with { Features = [.. FeatureFrontEnd.Names.Reverse()] }).Write(json);
        }

        file.Position = 0;
        Assert.Contains("other features", Assert.Throws<InvalidDataException>(() => ModelTagger.Load(file)).Message, StringComparison.Ordinal);
    }
}

/// <summary>The shipped model, loaded once.</summary>
public sealed class ShippedModel : IDisposable
{
    public ModelTagger Tagger { get; } = ModelTagger.LoadShipped();

    public void Dispose() => Tagger.Dispose();
}
