using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>Keeps the features of training and test clips in a file, so that commands one after another need not make them again.</summary>
internal static class StudyFile
{
    public static void Write(string path, IReadOnlyList<SoundCase> training, IReadOnlyList<TestFold> folds)
    {
        using var writer = new BinaryWriter(File.Create(path));
        writer.Write(FeatureFrontEnd.Count);
        WriteCases(writer, training);
        writer.Write(folds.Count);
        foreach (TestFold fold in folds)
        {
            writer.Write(fold.Name);
            writer.Write(fold.Block);
            WriteNames(writer, [.. fold.HeldOut]);
            WriteCases(writer, fold.Cases);
        }
    }

    /// <exception cref="FormatException">The file was written with other features.</exception>
    public static (IReadOnlyList<SoundCase> Training, IReadOnlyList<TestFold> Folds) Read(string path)
    {
        using var reader = new BinaryReader(File.OpenRead(path));
        if (reader.ReadInt32() != FeatureFrontEnd.Count)
        {
            throw new FormatException($"{path} was written with other features; delete it.");
        }

        SoundCase[] training = ReadCases(reader);
        var folds = new TestFold[reader.ReadInt32()];
        for (int f = 0; f < folds.Length; f++)
        {
            folds[f] = new(reader.ReadString(), reader.ReadInt32(), ReadNames(reader).ToHashSet(), ReadCases(reader));
        }

        return (training, folds);
    }

    public static void WriteScores(string path, IReadOnlyList<ScoredCase> scored)
    {
        using var writer = new BinaryWriter(File.Create(path));
        foreach (double score in scored.SelectMany(s => s.Scores).SelectMany(s => s))
        {
            writer.Write(score);
        }
    }

    public static IReadOnlyList<ScoredCase> ReadScores(string path, IReadOnlyList<TestFold> folds)
    {
        using var reader = new BinaryReader(File.OpenRead(path));
        return [.. folds.GroupBy(f => f.Block).OrderBy(g => g.Key).SelectMany(g => g.SelectMany(f => f.Cases).Select(c =>
            new ScoredCase(c, g.Key, [.. Truth.Tags.Select(_ => c.Rows.Select(_ => reader.ReadDouble()).ToArray())])))];
    }

    private static void WriteCases(BinaryWriter writer, IReadOnlyList<SoundCase> cases)
    {
        writer.Write(cases.Count);
        foreach (SoundCase c in cases)
        {
            writer.Write(c.Name);
            writer.Write(c.Group);
            writer.Write((int)c.Kind);
            writer.Write(c.RatioDb ?? double.NaN);
            foreach (ClipTag tag in Truth.Tags)
            {
                writer.Write((byte)(c.Truth[tag] is bool holds ? holds ? 1 : 0 : 2));
            }

            WriteNames(writer, c.Recordings);
            writer.Write(c.MayTrain);
            writer.Write(c.IsMade);
            writer.Write(c.Rows.Count);
            for (int r = 0; r < c.Rows.Count; r++)
            {
                writer.Write(c.Seconds[r]);
                writer.Write(System.Runtime.InteropServices.MemoryMarshal.AsBytes<float>(c.Rows[r]));
            }
        }
    }

    private static SoundCase[] ReadCases(BinaryReader reader)
    {
        var cases = new SoundCase[reader.ReadInt32()];
        for (int i = 0; i < cases.Length; i++)
        {
            string name = reader.ReadString(), group = reader.ReadString();
            var kind = (CaseKind)reader.ReadInt32();
            double ratioDb = reader.ReadDouble();
            var truth = new Truth(Holds(reader), Holds(reader), Holds(reader), Holds(reader));
            string[] recordings = ReadNames(reader);
            (bool mayTrain, bool isMade) = (reader.ReadBoolean(), reader.ReadBoolean());
            var rows = new float[reader.ReadInt32()][];
            var seconds = new double[rows.Length];
            for (int r = 0; r < rows.Length; r++)
            {
                (seconds[r], rows[r]) = (reader.ReadDouble(), new float[FeatureFrontEnd.Count]);
                reader.BaseStream.ReadExactly(System.Runtime.InteropServices.MemoryMarshal.AsBytes(rows[r].AsSpan()));
            }

            cases[i] = new(name, group, kind, double.IsNaN(ratioDb) ? null : ratioDb, truth, recordings, mayTrain, isMade, rows, seconds);
        }

        return cases;
    }

    private static bool? Holds(BinaryReader reader) => reader.ReadByte() switch { 0 => false, 1 => true, _ => null };

    private static void WriteNames(BinaryWriter writer, IReadOnlyCollection<string> names)
    {
        writer.Write(names.Count);
        foreach (string name in names)
        {
            writer.Write(name);
        }
    }

    private static string[] ReadNames(BinaryReader reader)
    {
        var names = new string[reader.ReadInt32()];
        for (int i = 0; i < names.Length; i++)
        {
            names[i] = reader.ReadString();
        }

        return names;
    }
}
