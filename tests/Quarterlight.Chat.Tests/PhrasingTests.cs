using System.Globalization;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Does the desk understand how crews put things? Checked on questions kept apart from its own word tables.</summary>
public sealed class PhrasingTests(ITestOutputHelper output)
{
    private const double LeastHitRate = 0.95;
    private const double LeastUnseenRate = 0.928;
    private const double LeastUnseenEnduranceRate = 0.98;
    private const double LeastMendRate = 0.95;
    private const double LeastSecondRate = 0.98;
    private const double LeastFormsRate = 0.99;

    // The goal; 0.955 was reached when last scored, two questions above it.
    private const double LeastKeptRate = 0.95;

    private static readonly ClipMemory Clip = ClipMemory.Of(new ClipReport(), null, null);

    private static readonly CrewVocabulary Vocabulary = new(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);

    [Fact]
    public void Read_PhrasingsOfTheCrew_UnderstoodAtLeast95In100() => Check("phrasings.csv", 200, LeastHitRate);

    // Written before the reader of clips and never changed for it; what it scored then stands in phrasings.source.md.
    [Fact]
    public void Read_ClipPhrasingsWrittenFirst_UnderstoodAtLeastAsOftenAsRecorded() => Check("clip-phrasings-unseen.csv", 40, LeastUnseenRate);

    // Written before the readers of heat, run time, levels and noise and never changed for them; what it scored then stands in its source.md.
    [Fact]
    public void Read_EndurancePhrasingsWrittenFirst_UnderstoodAtLeastAsOftenAsRecorded() => Check("endurance-phrasings-unseen.csv", 50, LeastUnseenEnduranceRate);

    // Written by a hand that had not seen the readers; this half served to mend them.
    [Fact]
    public void Read_PhrasingsOfAnotherHand_UnderstoodAtLeast95In100() => Check("crew-phrasings-mend.csv", 350, LeastMendRate);

    // Written by a second hand; what it scored before it served to mend the readers stands in its source.md.
    [Fact]
    public void Read_PhrasingsOfASecondHand_UnderstoodAtLeast98In100() => Check("crew-phrasings-second.csv", 500, LeastSecondRate);

    // Written to find misread forms of slots, and all mended with: holds what was mended.
    [Fact]
    public void Read_FormsOfSlots_UnderstoodAtLeast99In100() => Check("crew-phrasings-forms.csv", 1_500, LeastFormsRate);

    // The other half: only ever scored. Which rows were missed is not told, so that nobody mends for them.
    [Fact]
    public void Read_PhrasingsKeptApart_UnderstoodAtLeast95In100() => Check("crew-phrasings-kept.csv", 320, LeastKeptRate, told: false);

    [Fact]
    public void Read_PhrasingsAfterAClipWasTalkedAbout_MeanWhatTheyMeantBefore()
    {
        var memory = new CrewMemory { SceneName = DemoData.MainScene, LastClip = Clip with { Current = false } };
        string[] changed = [.. CsvFile.Read("phrasings.csv").Where(r => !r["slots"].Contains("given=", StringComparison.Ordinal) && !r["intent"].Contains("Clip", StringComparison.Ordinal))
            .Where(r => RequestReader.Read(CrewText.Clean(r["phrasing"]), Vocabulary, memory, UnitPreference.Metric).Intent != Read(r["phrasing"], "none").Intent).Select(r => r["phrasing"])];

        Assert.Empty(changed);
    }

    private void Check(string file, int least, double leastRate, bool told = true)
    {
        IReadOnlyList<IReadOnlyDictionary<string, string>> rows = CsvFile.Read(file);
        var missed = new List<string>();
        foreach (IReadOnlyDictionary<string, string> row in rows)
        {
            CrewRequest request = Read(row["phrasing"], row["slots"].Split(';').FirstOrDefault(s => s.StartsWith("given=", StringComparison.Ordinal))?["given=".Length..] ?? row.GetValueOrDefault("given", "none"));
            string[] wrong = [.. Wrong(request, row)];
            if (wrong.Length > 0)
            {
                missed.Add($"\"{row["phrasing"]}\": {string.Join("; ", wrong)}");
            }
        }

        double rate = 1 - ((double)missed.Count / rows.Count);
        string report = string.Create(CultureInfo.InvariantCulture, $"Understood {rows.Count - missed.Count} of {rows.Count} phrasings ({rate:0.0%}){(told ? $".\n{string.Join('\n', missed)}" : ".")}");
        output.WriteLine(report);
        Assert.True(rows.Count >= least, "The written set is too short.");
        Assert.True(rate >= leastRate, report);
    }

    private static CrewRequest Read(string phrasing, string given) => RequestReader.Read(
        CrewText.Clean(phrasing), Vocabulary, new CrewMemory { SceneName = DemoData.MainScene, LastClip = given == "remembered" ? Clip : null, LastForecast = Forecast(given) }, UnitPreference.Metric, given == "attached");

    // "heat", "runtime", "levels" and "noise": asked while that is talked about.
    private static ForecastMemory? Forecast(string given) => given switch
    {
        "heat" => new ForecastMemory(CrewIntent.HeatForecast, new ForecastSaid()),
        "runtime" => new ForecastMemory(CrewIntent.RunTime, new ForecastSaid()),
        "levels" => new ForecastMemory(CrewIntent.Levels, new ForecastSaid()),
        "noise" => new ForecastMemory(CrewIntent.NoiseForecast, new ForecastSaid()),
        _ => null,
    };

    private static IEnumerable<string> Wrong(CrewRequest request, IReadOnlyDictionary<string, string> row)
    {
        if (request.Intent.ToString() != row["intent"])
        {
            yield return $"intent {request.Intent}, not {row["intent"]}";
        }

        foreach (string slot in row["slots"].Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = slot.Split('=');
            string got = parts[0] == "given" ? parts[1] : Slot(request, parts[0]);
            if (got != parts[1])
            {
                yield return $"{parts[0]} {got}, not {parts[1]}";
            }
        }
    }

    private static string Slot(CrewRequest r, string name) => name switch
    {
        "scene" => Id(r.SceneName),
        "talker" => r.TalkerId ?? "",
        "family" => r.Site?.Families[0].ToString() ?? "",
        "units" => r.Units?.ToString() ?? "",
        "speed" => r.Conditions.SpeedKmPerHour?.ToString("0.#", CultureInfo.InvariantCulture) ?? "",
        "windows" => r.Conditions.Windows.Count == 0 ? "" : r.Conditions.Windows[0].OpenFraction.ToString(CultureInfo.InvariantCulture),
        "fan" => r.Conditions.FanStep?.ToString(CultureInfo.InvariantCulture) ?? "",
        "rain" => r.Conditions.Rain?.ToString() ?? "",
        "engine" => r.Conditions.Engine?.ToString() ?? "",
        "rpm" => r.Conditions.EngineSpeedRpm?.ToString(CultureInfo.InvariantCulture) ?? "",
        "road" => r.Conditions.Road?.ToString() ?? "",
        "removedMic" => string.Join('+', r.RemovedMicrophoneIds),
        "onlyMic" => string.Join('+', r.OnlyMicrophoneIds),
        "insteadMic" => string.Join('+', r.InsteadMicrophoneIds),
        "removedShot" => string.Join('+', r.RemovedShotIds),
        "siteRemoved" => r.SiteRemoved ? "true" : "false",
        "kit" => Id(r.KitName),
        "cabin" => Id(r.CabinName),
        "shown" => r.ShownName ?? "",
        "aspect" => r.Clip.Aspect.ToString(),
        "channel" => Number(r.Clip.Channel, "0"),
        "cylinders" => Number(r.Clip.Cylinders, "0"),
        "demo" => r.Clip.Demo ? "true" : "false",
        "again" => r.Clip.Again ? "true" : "false",
        "reset" => r.Clip.ResetsLimits ? "true" : "false",
        _ when name.StartsWith("lim", StringComparison.Ordinal) => Limit(r.Clip.Limits ?? new ClipThresholds(), name),
        _ => ForecastSlots.Of(r.Forecast, name) ?? Radio(r.Radio, name),
    };

    private static string Limit(ClipThresholds t, string name) => name switch
    {
        "limUse" => Number(t.HasSpeechToNoiseUseDb ? t.SpeechToNoiseUseDb : null, "0.##"),
        "limCare" => Number(t.HasSpeechToNoiseCareDb ? t.SpeechToNoiseCareDb : null, "0.##"),
        "limPeak" => Number(t.HasTruePeakCareDbtp ? t.TruePeakCareDbtp : null, "0.##"),
        "limEngine" => Switch(t.HasEngineNeedsCare, t.EngineNeedsCare),
        "limWind" => Switch(t.HasWindNeedsCare, t.WindNeedsCare),
        "limFan" => Switch(t.HasAirConditioningNeedsCare, t.AirConditioningNeedsCare),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Unknown limit in the vector."),
    };

    private static string Switch(bool said, bool on) => !said ? "" : on ? "true" : "false";

    private static string Radio(RadioSaid r, string name) => name switch
    {
        "gap" => Number(r.GapM, "0.#"),
        "lengths" => Number(r.CarLengths, "0.#"),
        "radioSpeed" => Number(r.SpeedKmPerHour, "0.#"),
        "surroundings" => r.Surroundings?.ToString() ?? "",
        "sight" => r.Sight?.ToString() ?? "",
        "country" => r.Country ?? "",
        "freq" => Number(r.FrequencyMHz, "0.###"),
        "power" => Number(r.Power?.Value, "0.###"),
        "basis" => r.Power?.Basis?.ToString() ?? "",
        "txPlace" => r.TransmitAntenna.Place?.ToString() ?? "",
        "txHeight" => Number(r.TransmitAntenna.HeightM, "0.##"),
        "rxPlace" => r.ReceiveAntenna.Place?.ToString() ?? "",
        "rxHeight" => Number(r.ReceiveAntenna.HeightM, "0.##"),
        "stereo" => r.Stereo switch { true => "true", false => "false", _ => "" },
        "avail" => Number(r.AvailabilityFraction, "0.####"),
        "stations" => string.Join('+', r.Stations.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.FrequencyMhz}:{(s.HasFieldDbuvPerM ? s.FieldDbuvPerM.ToString(CultureInfo.InvariantCulture) : s.Strength.ToString())}"))),
        "count" => Number(r.TransmitterCount, "0"),
        "range" => Bands(r.TuningRanges),
        "excluded" => Bands(r.Excluded),
        "avoid" => string.Join('+', r.AvoidedMHz.Select(f => Number(f, "0.###"))),
        "step" => Number(r.StepKHz, "0.#"),
        "spacing" => Number(r.SpacingKHz, "0.#"),
        "fifth" => r.FifthOrder ? "true" : "false",
        "carriers" => string.Join('+', r.CarriersMHz.Select(f => Number(f, "0.###"))),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Unknown slot in the vector."),
    };

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";

    private static string Bands(IEnumerable<BandSaid> bands) => string.Join('+', bands.Select(b => $"{Number(b.LowMHz, "0.###")}-{Number(b.HighMHz, "0.###")}"));

    private static string Id(string? name) => name is null ? "" : name[(name.IndexOf('/', StringComparison.Ordinal) + 1)..];
}
