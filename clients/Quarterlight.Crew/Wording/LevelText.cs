using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A gain sheet and what it was asked for.</summary>
/// <param name="Report">The report.</param>
/// <param name="Scene">Scene it is for.</param>
/// <param name="Kit">Kit it is for.</param>
/// <param name="Said">What was said.</param>
/// <param name="Units">Units to say it in.</param>
internal sealed record LevelShown(LevelReport Report, Scene Scene, Kit Kit, LevelSaid Said, UnitPreference Units)
{
    /// <summary>Inputs of the talker named, or all.</summary>
    public IReadOnlyList<InputLevels> Inputs { get; } = Said.TalkerId is { } id && Report.Inputs.Any(i => i.TalkerIds.Contains(id)) ? [.. Report.Inputs.Where(i => i.TalkerIds.Contains(id))] : [.. Report.Inputs];

    /// <summary>Who an input serves.</summary>
    public string Who(InputLevels input) => input.TalkerIds.Count == 0 ? Say($"Input {input.RecorderInput}") : Join([.. input.TalkerIds.Select(t => Talker(Scene, t))]);
}

/// <summary>Gain in words: what to set first, then each input, then what to be careful about.</summary>
internal static class LevelText
{
    private const int MostCautions = 2;

    /// <summary>What was asked, in one line.</summary>
    public static string Headline(LevelShown shown)
    {
        IReadOnlyList<InputLevels> inputs = shown.Inputs;
        if (inputs.Count == 0)
        {
            return "The plan has no microphone, so there is no gain to set.";
        }

        InputLevels[] broken = [.. inputs.Where(i => i.Verdict is ChainVerdict.CapsuleOverload or ChainVerdict.InputOverload)];
        return shown.Said switch
        {
            { Aspect: LevelAspect.Pad } => Pad(shown),
            { Aspect: LevelAspect.Safety } => Safety(shown),
            { Aspect: LevelAspect.Transmitter } when Transmitter(shown) is { } words => words,
            { Aspect: LevelAspect.Clips } => broken.Length > 0 ? $"Yes, it clips: {RadioWordings.Lower(RadioWordings.Sentence(broken[0].Words, shown.Units))}." : Clips(shown),
            { Effort: { } effort } when Quieter(shown, effort) is { } quiet => quiet,
            _ => broken.Length > 0 ? $"{shown.Who(broken[0])}: {RadioWordings.Lower(RadioWordings.Sentence(broken[0].Words, shown.Units))}." : $"Gain: {Join([.. inputs.Select(i => $"{shown.Who(i)} {Gain(i)}")])}.",
        };
    }

    /// <summary>The standard answer, about eight lines.</summary>
    public static List<CrewLine> Lines(LevelShown shown, bool detailed)
    {
        List<CrewLine> lines = [.. shown.Inputs.Select(i => new CrewLine(CrewLineKind.Talker, Input(shown, i)))];
        string[] words = [.. shown.Inputs.Where(i => i.Verdict is ChainVerdict.Tight or ChainVerdict.Pad || detailed).Select(i => Say($"Input {i.RecorderInput}: {RadioWordings.Sentence(i.Words, shown.Units)}.")).Distinct()];
        lines.AddRange(words.Select(w => new CrewLine(CrewLineKind.Plain, w)));
        if (shown.Said.TalkerId is not null || detailed)
        {
            lines.AddRange(shown.Inputs.Select(i => new CrewLine(CrewLineKind.Figures, Efforts(i))).Where(l => l.Text.Length > 0));
        }

        if (shown.Inputs.Select(i => i.LimiterWords).FirstOrDefault(w => w.Length > 0) is { } limiter)
        {
            lines.Add(new(CrewLineKind.Plain, RadioWordings.Sentence(limiter, shown.Units) + "."));
        }

        bool sheet = shown.Said is { Aspect: LevelAspect.Any or LevelAspect.Transmitter, TalkerId: null } && shown.Said.Effort != VocalEffort.Whisper;
        lines.AddRange((sheet || detailed ? shown.Report.Sends : []).Concat(shown.Inputs.Select(i => i.Transmitter).Where(t => t is not null)).Select(t => RadioWordings.Sentence(t.Words, shown.Units) + ".").Distinct().Where(w => w != Headline(shown) && w.Length > 1).Select(w => new CrewLine(CrewLineKind.Plain, w)));
        IEnumerable<Advisory> advisories = shown.Report.Advisories.Where(a => a.Code != "quieter-than-scene" || shown.Said.Effort != VocalEffort.Whisper).Where(a => sheet || detailed || a.Code != "line-alignment");
        lines.AddRange(RadioWordings.Cautions(advisories, shown.Units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    private static string Gain(InputLevels input) => Say($"{input.GainDb:0.#} dB{(input.PadDb > 0 ? $" with the {Say($"{input.PadDb:0.#}")} dB pad" : "")}");

    private static string Input(LevelShown shown, InputLevels input)
    {
        string safety = input.HasSafetyGainDb ? Say($"; safety track {input.SafetyGainDb:0.#} dB") : "";
        return Say($"Input {input.RecorderInput}, {Microphone(shown.Kit, input.MicrophoneId)}, {shown.Who(input)}: {Gain(input)}; peaks {Whole(input.PeakDbfs):0} dBFS, speech {input.SpeechDbfs:0}, cabin noise {input.CabinNoiseDbfs:0}{safety}.");
    }

    private static string Efforts(InputLevels input) => input.Efforts.Count == 0 ? ""
        : Say($"Input {input.RecorderInput} peaks at that gain: {string.Join(", ", input.Efforts.Select(e => Say($"{Effort(e.Effort)} {Whole(e.PeakDbfs):0}{(e.Clips ? " (clips)" : "")}")))} dBFS.");

    // Without the sign of a zero.
    private static double Whole(double db) => Math.Round(db) + 0.0;

    // A quieter line changes no gain that has to stand the louder one: what it comes to is said instead.
    private static string? Quieter(LevelShown shown, VocalEffort effort)
    {
        if (effort != VocalEffort.Whisper)
        {
            return null;
        }

        (string Who, double OverDb)[] lines = [.. shown.Inputs.Where(i => i.Efforts.Any(e => e.Effort == effort)).Select(i => (shown.Who(i), i.Efforts.First(e => e.Effort == effort).SpeechDbfs - Noise(i)))];
        return lines.Length == 0 ? null
            : $"{(lines.Min(l => l.OverDb) < 0 ? "A whisper drowns in the noise" : "A whisper stays over the noise")}: {Join([.. lines.Select(l => Say($"{l.Who} {Math.Abs(l.OverDb):0} dB {(l.OverDb < 0 ? "under" : "over")} it"))])}. Gain stays as below.";
    }

    // The sum of three noises that know nothing of each other, in dB.
    private static double Noise(InputLevels input) =>
        10 * Math.Log10(Math.Pow(10, input.CabinNoiseDbfs / 10) + Math.Pow(10, input.SelfNoiseDbfs / 10) + Math.Pow(10, input.ChainNoiseDbfs / 10));

    private static string Pad(LevelShown shown)
    {
        InputLevels[] padded = [.. shown.Inputs.Where(i => i.PadDb > 0)];
        InputLevels? over = shown.Inputs.FirstOrDefault(i => i.Verdict is ChainVerdict.CapsuleOverload or ChainVerdict.InputOverload);
        return padded.Length > 0 ? $"Pad in for {Join([.. padded.Select(shown.Who)])}{(padded.Length < shown.Inputs.Count ? ", out for the rest" : "")}."
            : over is not null ? $"A pad does not help: {RadioWordings.Lower(RadioWordings.Sentence(over.Words, shown.Units))}."
            : $"No pad needed: the loudest peak stays at {Say($"{Whole(shown.Inputs.Max(i => i.PeakDbfs)):0}")} dBFS without.";
    }

    private static string Clips(LevelShown shown)
    {
        InputLevels nearest = shown.Inputs.MinBy(i => i.CapsuleMarginDb)!;
        return Say($"No: at {Gain(nearest)} the loudest peaks reach {Whole(shown.Inputs.Max(i => i.PeakDbfs)):0} dBFS, and the capsule has {nearest.CapsuleMarginDb:0} dB to spare.");
    }

    private static string Safety(LevelShown shown)
    {
        InputLevels[] with = [.. shown.Inputs.Where(i => i.HasSafetyGainDb)];
        return with.Length == 0 ? "No safety track: there is no free input or no need for one."
            : $"Safety track: {Join([.. with.Select(i => Say($"{shown.Who(i)} {i.SafetyGainDb:0.#} dB{(i.HasSafetyPeakDbfs ? Say($" (peaks {i.SafetyPeakDbfs:0} dBFS)") : "")}"))])}.";
    }

    private static string? Transmitter(LevelShown shown)
    {
        string[] words = [.. shown.Inputs.Select(i => i.Transmitter).Where(t => t is not null).Concat(shown.Report.Sends).Select(t => RadioWordings.Sentence(t.Words, shown.Units)).Where(w => w.Length > 0).Distinct()];
        return words.Length == 0 ? null : words[0] + ".";
    }
}
