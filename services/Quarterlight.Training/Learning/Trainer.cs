using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using Microsoft.ML;
using Quarterlight.Clips.Tagging;
using Quarterlight.Tagger;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>Trains the model that ships and writes its file.</summary>
public static class Trainer
{
    /// <summary>Name of the model.</summary>
    public const string Name = "quarterlight-tagger";

    /// <summary>Version: raise it when features, training or data change.</summary>
    public const string Version = "1.1";

    // A fixed date, so that the same models give the same file.
    private static readonly DateTimeOffset s_date = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Trains on everything that may train; calibration and unsure bands come from the held-out scores.</summary>
    /// <param name="learners">The learners that are blended.</param>
    /// <param name="training">Training clips.</param>
    /// <param name="sounds">The sounds they were made from, for the digest.</param>
    /// <param name="members">Held-out scores of each learner.</param>
    /// <param name="to">Where the model goes.</param>
    public static void Write(IReadOnlyList<Learner> learners, IReadOnlyList<SoundCase> training, IEnumerable<SourceSound> sounds, IReadOnlyList<IReadOnlyList<ScoredCase>> members, Stream to)
    {
        (double[][] weights, IReadOnlyList<ScoredCase> scored) = Blend.Of(members);
        Stacking[] stacks = JudgedCase.Stacks(scored);
        IReadOnlyList<JudgedCase> judged = JudgedCase.CrossCalibrated(scored);
        var tags = Truth.Tags.ToDictionary(t => t.ToString(), t =>
        {
            UnsureBand band = Calibration.Band(t, judged);
            return new TagModel(weights[(int)t], stacks[(int)t].Slopes, stacks[(int)t].Offset, band.AbsentBelow, band.PresentFrom);
        });
        using var archive = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true);
        using (Stream json = Entry(archive, TaggerDescription.EntryName))
        {
            new TaggerDescription(Name, Version, Digest(sounds), FeatureFrontEnd.Names, tags).Write(json);
        }

        SoundCase[] permitted = [.. training.Where(c => c.MayTrain)];
        foreach (ClipTag tag in Truth.Tags)
        {
            IReadOnlyList<FeatureRow> rows = RowTable.For(tag, permitted);
            for (int i = 0; i < learners.Count; i++)
            {
                var context = new MLContext(seed: 1);
                ITransformer model = learners[i].Train(rows);
                using Stream entry = Entry(archive, TaggerDescription.ModelEntry(tag, i));
                using var whole = new MemoryStream();
                context.Model.Save(model, context.Data.LoadFromEnumerable(rows.Take(1), FeatureRow.Schema()).Schema, whole);
                whole.Position = 0;
                whole.CopyTo(entry);
            }
        }
    }

    /// <summary>SHA-256 over name and file digest of everything real that trains, by name, in hexadecimal.</summary>
    public static string Digest(IEnumerable<SourceSound> sounds)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (SourceSound sound in sounds.Where(s => s.MayTrain && !s.IsMade).OrderBy(s => s.Name, StringComparer.Ordinal))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(sound.Name));
            hash.AppendData(Encoding.UTF8.GetBytes(sound.FileSha256));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    private static Stream Entry(ZipArchive archive, string name)
    {
        ZipArchiveEntry entry = archive.CreateEntry(name, CompressionLevel.SmallestSize);
        entry.LastWriteTime = s_date;
        return entry.Open();
    }
}
