using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;

namespace Quarterlight.Training.Mixing;

/// <summary>The augmented clips a model is trained with. Everything is drawn from the number of the clip, so that it can be made again.</summary>
public static class TrainingCases
{
    private const int LengthSamples = 5 * 16000;

    /// <summary>Makes all of them from what may train.</summary>
    /// <param name="sounds">Real and made sounds.</param>
    /// <param name="variants">Variants of each recording; its files share them.</param>
    public static IReadOnlyList<SoundCase> Make(IEnumerable<SourceSound> sounds, int variants)
    {
        var library = new SoundLibrary(sounds.Where(s => s.MayTrain));
        Dictionary<string, int> files = library.All.GroupBy(s => s.Recording).ToDictionary(g => g.Key, g => g.Count());
        var plans = new List<Func<SoundCase?>>();
        void Plan(Func<Random, SoundCase?> make)
        {
            int seed = 7 + (plans.Count * 31);
            plans.Add(() => make(new Random(seed)));
        }

        foreach (SourceSound noise in library.Noises)
        {
            int count = noise.IsMade ? 1 : Math.Max(1, (int)Math.Round((double)variants / files[noise.Recording]));
            for (int v = 0; v < count; v++)
            {
                Plan(r => Alone(noise, r));
                Plan(r => WithSpeech(noise, library, r));
                Plan(r => r.NextDouble() < 0.5 ? WithSpeech(noise, library, r) : Two(noise, library, r));
            }
        }

        foreach (SourceSound speech in library.Speech)
        {
            for (int v = 0; v < Math.Max(2, 4 * variants / files[speech.Recording]); v++)
            {
                bool overRoom = v % 2 == 1;
                Plan(r => overRoom ? OverRoom(speech, library, r) : Alone(speech, r));
            }
        }

        foreach (SourceSound quiet in library.Quiet)
        {
            for (int v = 0; v < (quiet.IsMade ? 1 : Math.Max(1, 3 * variants / files[quiet.Recording])); v++)
            {
                Plan(r => Alone(quiet, r));
            }
        }

        return [.. plans.AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(p => p()).OfType<SoundCase>()];
    }

    private static SoundCase? Alone(SourceSound sound, Random random)
    {
        double gainDb = sound.Kind == SoundKind.Quiet ? -8 + (16 * random.NextDouble()) : -10 + (22 * random.NextDouble());
        return Finish(sound.Name, sound, CaseKind.Alone, null, sound.Truth, [sound.Recording], Cut(sound.Samples, random), gainDb, random);
    }

    private static SoundCase? OverRoom(SourceSound speech, SoundLibrary library, Random random)
    {
        if (library.Quiet.Count == 0)
        {
            return null;
        }

        SourceSound room = Pick(library.Quiet, random);
        double ratioDb = 26 + (24 * random.NextDouble());
        return Mixer.SpeechOverNoise(Phrase(speech, library, random), room.Samples, ratioDb) is { } mixed
            ? Finish($"{speech.Name} / {room.Name}", speech, CaseKind.SpeechOverNoise, ratioDb, Truth.JustClean, [speech.Recording, room.Recording], mixed, Loudness(random), random)
            : null;
    }

    private static SoundCase? WithSpeech(SourceSound noise, SoundLibrary library, Random random)
    {
        if (library.Speech.Count == 0)
        {
            return null;
        }

        SourceSound speech = Pick(library.Speech, random);
        double ratioDb = -5 + (35 * random.NextDouble());
        return Mixer.SpeechOverNoise(Phrase(speech, library, random), Cut(noise.Samples, random), ratioDb) is { } mixed
            ? Finish($"{speech.Name} / {noise.Name}", noise, CaseKind.SpeechOverNoise, ratioDb, Mixer.Truth(noise.Truth, ratioDb), [speech.Recording, noise.Recording], mixed, Loudness(random), random)
            : null;
    }

    private static SoundCase? Two(SourceSound first, SoundLibrary library, Random random)
    {
        SourceSound second = Pick(library.Noises, random);
        if (second.Recording == first.Recording || Mixer.TwoNoises(Cut(first.Samples, random), Cut(second.Samples, random), -6 + (12 * random.NextDouble())) is not { } both)
        {
            return null;
        }

        Truth truth = first.Truth.And(second.Truth).With(ClipTag.Clean, false);
        string[] recordings = [first.Recording, second.Recording];
        string name = $"{first.Name} + {second.Name}";
        if (library.Speech.Count == 0 || random.NextDouble() < 0.5)
        {
            return Finish(name, first, CaseKind.TwoNoises, null, truth, recordings, both, -10 + (20 * random.NextDouble()), random);
        }

        SourceSound speech = Pick(library.Speech, random);
        double ratioDb = -5 + (25 * random.NextDouble());
        return Mixer.SpeechOverNoise(Phrase(speech, library, random), both, ratioDb) is { } mixed
            ? Finish(name, first, CaseKind.SpeechOverTwoNoises, ratioDb, truth, [.. recordings, speech.Recording], mixed, Loudness(random), random)
            : null;
    }

    private static SoundCase? Finish(
        string name, SourceSound first, CaseKind kind, double? ratioDb, Truth truth, IReadOnlyList<string> recordings, float[] samples, double gainDb, Random random)
    {
        if (random.NextDouble() < 0.75)
        {
            Microphones.Colour(samples, random);
        }

        Microphones.Gain(samples, gainDb);
        if (random.NextDouble() < 0.2)
        {
            Microphones.Coder(samples, random);
        }

        double rateHz = 16000;
        if (random.NextDouble() < 0.08)
        {
            (samples, rateHz) = (Microphones.Halved(samples), 8000);
        }

        (IReadOnlyList<float[]> rows, IReadOnlyList<double> seconds) = SoundCase.Hear(samples, rateHz);
        return rows.Count == 0 ? null : new(name, first.Group, kind, ratioDb, truth, recordings, true, first.IsMade, rows, seconds);
    }

    private static double Loudness(Random random) => -12 + (18 * random.NextDouble());

    private static SourceSound Pick(IReadOnlyList<SourceSound> sounds, Random random)
    {
        // A recording first, then one of its files, so that one with many files is not heard more often.
        string[] recordings = [.. sounds.Select(s => s.Recording).Distinct()];
        string recording = recordings[random.Next(recordings.Length)];
        SourceSound[] files = [.. sounds.Where(s => s.Recording == recording)];
        return files[random.Next(files.Length)];
    }

    // About 5 s of one speaker, with pauses between the sentences as long as they come.
    private static float[] Phrase(SourceSound speech, SoundLibrary library, Random random)
    {
        SourceSound[] more = [.. library.Speech.Where(s => s.Recording == speech.Recording)];
        var phrase = new List<float>(speech.Samples);
        while (phrase.Count < LengthSamples)
        {
            phrase.AddRange(new float[random.Next(800, 12000)]);
            phrase.AddRange(more[random.Next(more.Length)].Samples);
        }

        return [.. phrase.Take(LengthSamples)];
    }

    private static float[] Cut(float[] samples, Random random)
    {
        int length = Math.Min(samples.Length, random.Next(3 * 16000, LengthSamples));
        int start = random.Next(0, samples.Length - length + 1);
        return samples[start..(start + length)];
    }
}
