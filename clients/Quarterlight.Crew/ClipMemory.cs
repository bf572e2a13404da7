using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew;

/// <summary>A judged clip, remembered without its picture and without its bytes.</summary>
public sealed record ClipMemory
{
    /// <summary>Largest report that is kept, bytes of its wire form.</summary>
    public const int LargestBytes = 64 * 1024;

    private const int MostChannels = 32;
    private const int MostStretches = 20;
    private const int MostReasons = 40;
    private const int MostRemarks = 10;

    private ClipMemory()
    {
    }

    /// <summary>The report, bounded: see <see cref="LargestBytes"/>.</summary>
    public required ClipReport Report { get; init; }

    /// <summary>Where the clip came from, to read it once more; null when it cannot be.</summary>
    public CrewAttachment? File { get; init; }

    /// <summary>Scene whose plan it was held against, scenes/{scene}; null when it was compared with nothing.</summary>
    public string? ComparedScene { get; init; }

    /// <summary>True while the conversation is about the clip, so that a bare "why?" means it.</summary>
    public bool Current { get; init; }

    /// <summary>Remembers a clip just judged.</summary>
    /// <param name="report">Report as the planner sent it; not changed.</param>
    /// <param name="file">Where it came from.</param>
    /// <param name="comparedScene">Scene it was held against, or null.</param>
    public static ClipMemory Of(ClipReport report, CrewAttachment? file, string? comparedScene)
    {
        ArgumentNullException.ThrowIfNull(report);
        return new ClipMemory { Report = Bounded(report), File = file, ComparedScene = comparedScene, Current = true };
    }

    /// <summary>Remembers again what was kept of a clip; its file is no longer to be had.</summary>
    internal static ClipMemory Kept(ClipReport report, string? comparedScene, bool current) => new() { Report = report, ComparedScene = comparedScene, Current = current };

    // What no later question asks for goes first; only a report that is still too large loses channels.
    private static ClipReport Bounded(ClipReport whole)
    {
        ClipReport kept = whole.Clone();
        kept.FileName = CrewText.Clean(kept.FileName, CrewText.LongestName);
        Cut(kept.Channels, MostChannels);
        Cut(kept.Remarks, MostRemarks);
        Cut(kept.Pairs, MostChannels);
        Cut(kept.Comparisons, MostChannels);
        if (kept.Verdict is { } verdict)
        {
            Cut(verdict.Reasons, MostReasons);
        }

        foreach (ClipChannel channel in kept.Channels)
        {
            Cut(channel.Clipping?.First, MostStretches);
            Cut(channel.Dropouts?.First, MostStretches);
            Cut(channel.DigitalSilence?.First, MostStretches);
            channel.SpeechAndNoise?.Speech.Clear();
            channel.Tags?.Seconds.Clear();
            channel.ThirdOctaves.Clear();
        }

        while (kept.CalculateSize() > LargestBytes && kept.Channels.Count > 1)
        {
            Cut(kept.Channels, kept.Channels.Count / 2);
            Cut(kept.Comparisons, kept.Channels.Count);
            Cut(kept.Pairs, kept.Channels.Count);
        }

        return kept.CalculateSize() <= LargestBytes ? kept : new ClipReport { FileName = kept.FileName, Format = kept.Format, Verdict = new ClipVerdict { Outcome = whole.Verdict?.Outcome ?? ClipOutcome.Unspecified, Headline = CrewText.Clean(whole.Verdict?.Headline ?? "", CrewText.LongestSentence) } };
    }

    private static void Cut<T>(Google.Protobuf.Collections.RepeatedField<T>? items, int most)
    {
        while (items is not null && items.Count > most)
        {
            items.RemoveAt(items.Count - 1);
        }
    }
}
