using System.Globalization;
using Quarterlight.Audio;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Upload;

/// <summary>What to be careful about in a report, told from the file itself.</summary>
internal static class ClipAdvisories
{
    // Judgement: the octave of 8 kHz, the highest of speech, ends at 11.3 kHz.
    private const int LeastRateHz = 22_700;

    // Below this the low end cannot be told and speech hardly (the spectrum's own limit).
    private const double ShortSeconds = 2;

    /// <summary>Adds them.</summary>
    public static void Add(AudioFormat format, double durationSeconds, bool withTagger, List<Advisory> advisories)
    {
        if (format.SampleRateHz < LeastRateHz)
        {
            advisories.Add(new Advisory(
                "low-sample-rate",
                string.Create(CultureInfo.InvariantCulture, $"At {format.SampleRateHz} Hz nothing above {format.SampleRateHz / 2000.0:0.#} kHz is in the file, and consonants lie there: levels and tags say less."),
                AdvisorySeverity.Caution));
        }

        if (format.Coding is SampleCoding.Vorbis or SampleCoding.Mp3 or SampleCoding.Opus or SampleCoding.Aac)
        {
            advisories.Add(new Advisory(
                "lossy-coding", "The file is coded with loss: weak noise may have been left out, and levels may differ from the recorder's.", AdvisorySeverity.Note));
        }

        if (durationSeconds < ShortSeconds)
        {
            advisories.Add(new Advisory(
                "very-short",
                string.Create(CultureInfo.InvariantCulture, $"The clip lasts {durationSeconds:0.##} s: ten seconds or more with speech and a pause say much more."),
                AdvisorySeverity.Caution));
        }

        if (!withTagger)
        {
            advisories.Add(new Advisory("no-tags", "The planner could not load its tagger, so engine, wind and fan are not told by ear.", AdvisorySeverity.Caution));
        }
    }
}
