using Quarterlight.Crew.Demo;
using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>A labelled question.</summary>
/// <param name="Intent">What it asks.</param>
/// <param name="Read">The question as the rules read it.</param>
/// <param name="Fresh">True when the rules were not mended with it, so that what they make of it tells how far they can be trusted.</param>
internal sealed record IntentExample(CrewIntent Intent, QuestionRead Read, bool Fresh)
{
    /// <summary>Its features.</summary>
    /// <param name="withRules">True with what the rules make of it.</param>
    public IntentFeature[] Features(bool withRules)
    {
        var features = new IntentFeature[IntentFeatures.Most];
        return features[..IntentFeatures.Write(Read.Seen, withRules ? Read.Rules.Intent : null, features)];
    }
}

/// <summary>Reads the labelled questions: intent|what is talked about|words, in sections named by lines such as "; [fresh]".</summary>
internal static class IntentExamples
{
    private const string FreshSection = "; [fresh]";

    /// <summary>The examples of a file's lines, as the demo's team would ask them.</summary>
    /// <exception cref="FormatException">A line has another form.</exception>
    public static IReadOnlyList<IntentExample> Parse(IEnumerable<string> lines)
    {
        var vocabulary = new CrewVocabulary(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);
        var examples = new List<IntentExample>();
        bool fresh = false;
        foreach (string line in lines)
        {
            if (line.StartsWith(';'))
            {
                fresh = line.StartsWith("; [", StringComparison.Ordinal) ? line.StartsWith(FreshSection, StringComparison.Ordinal) : fresh;
                continue;
            }

            if (line.Length > 0)
            {
                string[] fields = line.Split('|', 3);
                if (fields.Length != 3 || !Enum.TryParse(fields[0], out CrewIntent intent))
                {
                    throw new FormatException($"Not an example: {line}");
                }

                examples.Add(new IntentExample(intent, Read(fields[2], fields[1], vocabulary), fresh));
            }
        }

        return examples;
    }

    private static QuestionRead Read(string words, string topic, CrewVocabulary vocabulary)
    {
        var memory = new CrewMemory
        {
            SceneName = DemoData.MainScene,
            LastClip = topic == "remembered" ? ClipMemory.Of(new ClipReport(), null, null) : null,
            LastForecast = topic switch
            {
                "heat" => new ForecastMemory(CrewIntent.HeatForecast, new ForecastSaid()),
                "runtime" => new ForecastMemory(CrewIntent.RunTime, new ForecastSaid()),
                "levels" => new ForecastMemory(CrewIntent.Levels, new ForecastSaid()),
                "noise" => new ForecastMemory(CrewIntent.NoiseForecast, new ForecastSaid()),
                _ => null,
            },
        };
        return RequestReader.ByRules(CrewText.Clean(words), vocabulary, memory, UnitPreference.Metric, topic == "attached");
    }
}
