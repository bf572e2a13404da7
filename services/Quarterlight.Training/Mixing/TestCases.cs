using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;

namespace Quarterlight.Training.Mixing;

/// <summary>A group of test clips and the recordings that are held out for them.</summary>
/// <param name="Name">Recording the fold is about.</param>
/// <param name="Block">Block of folds it belongs to, for tests in few blocks.</param>
/// <param name="HeldOut">Recordings no training clip may hold.</param>
/// <param name="Cases">Test clips; all their recordings are held out.</param>
public sealed record TestFold(string Name, int Block, IReadOnlySet<string> HeldOut, IReadOnlyList<SoundCase> Cases);

/// <summary>Test clips from real recordings only, without augmentation: each alone, and mixed at known ratios.</summary>
public static class TestCases
{
    /// <summary>Blocks of folds.</summary>
    public const int Blocks = 10;

    /// <summary>Ratios of speech over noise, dB.</summary>
    public static IReadOnlyList<double> RatiosDb { get; } = [-5, 0, 5, 10, 15, 20, 25, 30];

    private const int MostMixedFiles = 2;

    /// <summary>Makes one fold a recording. For a noise its speaker and a second noise of another tag are held out with it.</summary>
    public static IReadOnlyList<TestFold> Make(IEnumerable<SourceSound> sounds)
    {
        SourceSound[] real = [.. sounds.Where(s => !s.IsMade)];
        List<SourceSound>[] Recordings(SoundKind kind) => [.. real.Where(s => s.Kind == kind).GroupBy(s => s.Recording).Select(g => g.ToList())];
        List<SourceSound>[] noises = [.. Recordings(SoundKind.Noise).OrderBy(n => n[0].Group, StringComparer.Ordinal)];
        List<SourceSound>[] speakers = Recordings(SoundKind.Speech);
        var plans = new List<Func<TestFold>>();
        for (int i = 0; i < noises.Length; i++)
        {
            int block = i % Blocks;
            List<SourceSound> noise = noises[i], speaker = speakers[block % speakers.Length];
            List<SourceSound>[] partners = [.. noises.Where((n, j) => j % Blocks == block && n[0].Group != noise[0].Group)];
            List<SourceSound>? partner = partners.Length == 0 ? null : partners[i / Blocks % partners.Length];
            plans.Add(() => Noise(noise, partner, speaker, block));
        }

        foreach ((List<SourceSound> recording, int i) in speakers.Concat(Recordings(SoundKind.Quiet)).Select((r, i) => (r, i)))
        {
            plans.Add(() => new(recording[0].Recording, i % Blocks, new HashSet<string> { recording[0].Recording }, [.. recording.Select(Alone).OfType<SoundCase>()]));
        }

        return [.. plans.AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(p => p())];
    }

    private static TestFold Noise(List<SourceSound> noise, List<SourceSound>? partner, List<SourceSound> speaker, int block)
    {
        var cases = new List<SoundCase?>(noise.Select(Alone));
        float[] speech = [.. speaker.SelectMany(s => s.Samples.Concat(new float[4000])).Take(6 * 16000)];
        foreach (SourceSound file in noise.Take(MostMixedFiles))
        {
            foreach (double ratioDb in RatiosDb)
            {
                cases.Add(Hear(
                    $"{speaker[0].Recording} / {file.Name} at {ratioDb:0} dB", file.Group, CaseKind.SpeechOverNoise, ratioDb, Mixer.Truth(file.Truth, ratioDb),
                    [file, speaker[0]], Mixer.SpeechOverNoise(speech, file.Samples, ratioDb)));
            }
        }

        if (partner is not null && Mixer.TwoNoises(noise[0].Samples, partner[0].Samples, 0) is { } both)
        {
            Truth truth = noise[0].Truth.And(partner[0].Truth).With(ClipTag.Clean, false);
            cases.Add(Hear($"{noise[0].Name} + {partner[0].Name}", noise[0].Group, CaseKind.TwoNoises, null, truth, [noise[0], partner[0]], both));
            foreach (double ratioDb in RatiosDb.Where(r => r is 0 or 10 or 20))
            {
                cases.Add(Hear(
                    $"{speaker[0].Recording} / {noise[0].Name} + {partner[0].Name} at {ratioDb:0} dB", noise[0].Group, CaseKind.SpeechOverTwoNoises, ratioDb, truth,
                    [noise[0], partner[0], speaker[0]], Mixer.SpeechOverNoise(speech, both, ratioDb)));
            }
        }

        var held = new HashSet<string> { noise[0].Recording, speaker[0].Recording };
        if (partner is not null)
        {
            held.Add(partner[0].Recording);
        }

        return new(noise[0].Recording, block, held, [.. cases.OfType<SoundCase>()]);
    }

    private static SoundCase? Alone(SourceSound sound) => Hear(sound.Name, sound.Group, CaseKind.Alone, null, sound.Truth, [sound], sound.Samples);

    private static SoundCase? Hear(string name, string group, CaseKind kind, double? ratioDb, Truth truth, SourceSound[] sounds, float[]? samples)
    {
        if (samples is null)
        {
            return null;
        }

        (IReadOnlyList<float[]> rows, IReadOnlyList<double> seconds) = SoundCase.Hear(samples, 16000);
        return rows.Count == 0 ? null : new(name, group, kind, ratioDb, truth, [.. sounds.Select(s => s.Recording)], sounds.All(s => s.MayTrain), false, rows, seconds);
    }
}
