using Quarterlight.Audio;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Upload;

/// <summary>What to be careful about in a report, told from the file itself. Length and sample rate are the verdict's own remarks.</summary>
internal static class ClipAdvisories
{
    /// <summary>Adds them.</summary>
    public static void Add(AudioFormat format, bool withTagger, List<Advisory> advisories)
    {
        if (format.Coding is SampleCoding.Vorbis or SampleCoding.Mp3 or SampleCoding.Opus or SampleCoding.Aac)
        {
            advisories.Add(new Advisory(
                "lossy-coding", "The file is coded with loss: weak noise may have been left out, and levels may differ from the recorder's.", AdvisorySeverity.Note));
        }

        if (!withTagger)
        {
            advisories.Add(new Advisory("no-tags", "The planner could not load its tagger, so engine, wind and fan are not told by ear.", AdvisorySeverity.Caution));
        }
    }
}
