using Quarterlight.Crew.Language;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.ForecastWordings;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Wording;

/// <summary>A forecast of noise and what it was asked for.</summary>
/// <param name="Report">The report.</param>
/// <param name="Drive">How the car is driven.</param>
/// <param name="Said">What was said.</param>
/// <param name="Units">Units to say it in.</param>
internal sealed record NoiseShown(NoiseReport Report, DriveConditions Drive, NoiseSaid Said, UnitPreference Units)
{
    public string Speed(double kmPerHour) => UnitText.Speed(kmPerHour, Units);

    /// <summary>A limit, which rounding must not stretch.</summary>
    public string SpeedLimit(double kmPerHour) => UnitText.Speed(Units == UnitPreference.Metric ? Math.Floor(kmPerHour + 1e-9) : Math.Floor((kmPerHour / QuantityReader.KilometresPerMile) + 1e-9) * QuantityReader.KilometresPerMile, Units);
}

/// <summary>Noise in words: the decision first, then how loud, what is loudest and how fast.</summary>
internal static class NoiseText
{
    private const int MostTalkers = 5, MostRows = 6, MostCautions = 2;

    private static readonly double[] Octaves = [125, 250, 500, 1000, 2000, 4000, 8000];

    /// <summary>What was asked, in one line.</summary>
    public static string Headline(NoiseShown shown) => shown.Said.Aspect switch
    {
        NoiseAspect.Fastest or NoiseAspect.Table => Fastest(shown),
        NoiseAspect.Loudest => Loudest(shown),
        _ => $"{Level(shown)}: {Works(shown)}.",
    };

    /// <summary>The standard answer, about nine lines.</summary>
    public static List<CrewLine> Lines(NoiseShown shown, bool detailed)
    {
        NoiseReport report = shown.Report;
        NoiseAspect aspect = shown.Said.Aspect;
        List<CrewLine> lines = [];
        if (aspect == NoiseAspect.Table || detailed)
        {
            lines.AddRange(report.Table.Take(detailed ? int.MaxValue : MostRows).Select(r => new CrewLine(CrewLineKind.Figures, Row(shown, r))).Where(l => l.Text.Length > 0));
        }

        if (aspect != NoiseAspect.Any)
        {
            lines.Add(new(CrewLineKind.Figures, $"{Level(shown)}: {Works(shown)}."));
        }

        if (aspect != NoiseAspect.Table && report.Talkers.Count > 0)
        {
            lines.Add(new(CrewLineKind.Figures, $"Speech over noise at the planned microphones: {Join([.. report.Talkers.Take(MostTalkers).Select(t => Say($"{Name(t.DisplayName, t.TalkerId)} {t.SnrDba:0} dB ({Verdict(t.Verdict)})"))])}."));
        }

        if (aspect != NoiseAspect.Loudest && Loudest(shown) is { Length: > 0 } loudest)
        {
            lines.Add(new(CrewLineKind.Figures, loudest));
        }

        if (aspect is not NoiseAspect.Table && Bands(report) is { Length: > 0 } bands)
        {
            lines.Add(new(CrewLineKind.Figures, bands));
        }

        if (aspect is not (NoiseAspect.Fastest or NoiseAspect.Table) && report.Talkers.Count > 0)
        {
            lines.Add(new(CrewLineKind.Plain, Fastest(shown)));
        }

        lines.AddRange(RadioWordings.Cautions(report.Advisories, shown.Units, detailed ? int.MaxValue : MostCautions));
        return lines;
    }

    private static string Level(NoiseShown shown)
    {
        Estimate level = shown.Report.Noise?.LevelDba ?? new Estimate();
        string speed = shown.Drive.SpeedKmPerHour > 0 ? $"at {shown.Speed(shown.Drive.SpeedKmPerHour)}" : "standing";
        return Say($"About {level.Value:0} dB(A) ±{level.PlusMinus:0} at the driver's ear {speed}");
    }

    private static string Works(NoiseShown shown) => shown.Report.Verdict switch
    {
        SceneVerdict.Works => "the scene works",
        SceneVerdict.WithCare => "the scene works with care",
        SceneVerdict.Unusable => "the scene is not usable",
        _ => "nobody talks, so there is nothing to judge",
    };

    private static string Fastest(NoiseShown shown)
    {
        NoiseReport report = shown.Report;
        if (report.Talkers.Count == 0 && !report.HasFastestWithCareKmPerHour && !report.HasFastestWorksKmPerHour)
        {
            return "Nobody talks, so no speed can be judged.";
        }

        string care = report.HasFastestWithCareKmPerHour && (!report.HasFastestWorksKmPerHour || report.FastestWithCareKmPerHour > report.FastestWorksKmPerHour) ? $"with care up to {shown.SpeedLimit(report.FastestWithCareKmPerHour)}" : "";
        return report.HasFastestWorksKmPerHour ? report.FastestWorksKmPerHour <= 0 ? $"It works standing still only{(care.Length > 0 ? ", " + care : "")}."
                : $"It works up to {shown.SpeedLimit(report.FastestWorksKmPerHour)}{(care.Length > 0 ? ", " + care : "")}."
            : care.Length > 0 ? $"No speed is clean; {care}." : "It works at no speed, not even with care.";
    }

    private static string Loudest(NoiseShown shown)
    {
        CabinNoise noise = shown.Report.Noise ?? new CabinNoise();
        if (shown.Said.BandHz is { } hz && noise.DominantWords.Count > 0)
        {
            int band = Enumerable.Range(0, Math.Min(Octaves.Length, noise.DominantWords.Count)).MinBy(i => Math.Abs(Math.Log2(hz / Octaves[i])));
            string level = noise.Levels is { } levels && levels.LevelsDb.Count > band ? Say($"; all noise there {levels.LevelsDb[band]:0} dB") : "";
            return $"Loudest in the {Hertz(Octaves[band])} octave: {Words(noise.DominantWords[band])}{level}.";
        }

        NoiseShare[] shares = [.. noise.Shares.Where(s => s.ShareFraction >= 0.005).Take(4)];
        return shares.Length == 0 ? "" : $"Loudest: {string.Join(", ", shares.Select(s => Say($"{Words(s.Words)} {s.LevelDba?.Value ?? 0:0} dB(A) ({s.ShareFraction * 100:0} %)")))}.";
    }

    // "By band: tyres 125 to 500 Hz, wind 1 to 8 kHz."
    private static string Bands(NoiseReport report)
    {
        string[] words = [.. report.Noise?.DominantWords ?? []];
        var parts = new List<string>();
        for (int i = 0; i < Math.Min(words.Length, Octaves.Length);)
        {
            int last = i;
            while (last + 1 < words.Length && last + 1 < Octaves.Length && words[last + 1] == words[i])
            {
                last++;
            }

            parts.Add($"{Words(words[i])} {(last > i ? $"{Hertz(Octaves[i])} to {Hertz(Octaves[last])}" : $"at {Hertz(Octaves[i])}")}");
            i = last + 1;
        }

        return parts.Count == 0 ? "" : parts.Count == 1 ? $"Loudest in every octave: {Words(words[0])}." : $"Loudest by octave: {string.Join(", ", parts)}.";
    }

    // "Windows shut, dry: works to 60, with care to 80, not at 100 km/h and over."
    private static string Row(NoiseShown shown, NoiseRow row)
    {
        var parts = new List<string>();
        for (int i = 0; i < row.Cells.Count;)
        {
            int last = i;
            while (last + 1 < row.Cells.Count && row.Cells[last + 1].Verdict == row.Cells[i].Verdict)
            {
                last++;
            }

            string speeds = last > i ? $"{Number(shown, row.Cells[i])} to {Number(shown, row.Cells[last])}" : Number(shown, row.Cells[i]);
            parts.Add($"{row.Cells[i].Verdict switch { SceneVerdict.Works => "yes", SceneVerdict.WithCare => "care", SceneVerdict.Unusable => "no", _ => Say($"{row.Cells[i].NoiseDba:0} dB(A)") }} {speeds}");
            i = last + 1;
        }

        string unit = shown.Units == UnitPreference.Metric ? "km/h" : "mph";
        return parts.Count == 0 ? "" : $"{Capital(RadioWordings.Sentence(row.Words, shown.Units))}: {string.Join(", ", parts)} {unit}.";
    }

    private static string Number(NoiseShown shown, SpeedNoise cell) => shown.Speed(cell.SpeedKmPerHour).Split(' ')[0];

    private static string Hertz(double hz) => hz >= 1000 ? Say($"{hz / 1000:0.#} kHz") : Say($"{hz:0} Hz");

    private static string Words(string words) => Name(words);
}
