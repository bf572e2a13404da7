using System.Globalization;
using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;

namespace Quarterlight.Chat.Tests;

/// <summary>Does the desk understand how crews put things? Checked on questions kept apart from its own word tables.</summary>
public sealed class PhrasingTests(ITestOutputHelper output)
{
    private const double LeastHitRate = 0.95;

    private static readonly CrewVocabulary Vocabulary = new(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);

    [Fact]
    public void Read_PhrasingsOfTheCrew_UnderstoodAtLeast95In100()
    {
        IReadOnlyList<IReadOnlyDictionary<string, string>> rows = CsvFile.Read("phrasings.csv");
        var missed = new List<string>();
        foreach (IReadOnlyDictionary<string, string> row in rows)
        {
            CrewRequest request = Read(row["phrasing"]);
            string[] wrong = [.. Wrong(request, row)];
            if (wrong.Length > 0)
            {
                missed.Add($"\"{row["phrasing"]}\": {string.Join("; ", wrong)}");
            }
        }

        double rate = 1 - ((double)missed.Count / rows.Count);
        string report = string.Create(CultureInfo.InvariantCulture, $"Understood {rows.Count - missed.Count} of {rows.Count} phrasings ({rate:0.0%}).\n{string.Join('\n', missed)}");
        output.WriteLine(report);
        Assert.True(rows.Count >= 80, "The written set has at least 80 phrasings.");
        Assert.True(rate >= LeastHitRate, report);
    }

    private static CrewRequest Read(string phrasing) =>
        RequestReader.Read(CrewText.Clean(phrasing), Vocabulary, new CrewMemory { SceneName = DemoData.MainScene }, UnitPreference.Metric);

    private static IEnumerable<string> Wrong(CrewRequest request, IReadOnlyDictionary<string, string> row)
    {
        if (request.Intent.ToString() != row["intent"])
        {
            yield return $"intent {request.Intent}, not {row["intent"]}";
        }

        foreach (string slot in row["slots"].Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            string[] parts = slot.Split('=');
            string got = Slot(request, parts[0]);
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
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Unknown slot in the vector."),
    };

    private static string Id(string? name) => name is null ? "" : name[(name.IndexOf('/', StringComparison.Ordinal) + 1)..];
}
