using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Microphones as lines of a count, a name and, behind a colon, figures; both ways.</summary>
internal static partial class MicrophoneLines
{
    private const string Right = "Write for example \"2 x short supercardioid\", with figures behind a colon if you have them.";

    /// <summary>One microphone: what is not typical of its kind is written out.</summary>
    public static string Say(Microphone m, UnitPreference units)
    {
        Microphone? typical = MicrophoneKinds.Typical(Wordings.Name(m.DisplayName, m.Id), null, out _);
        var parts = new List<string>();
        Add(typical?.Pattern != m.Pattern && m.Pattern != PolarPattern.Unspecified, Wordings.Pattern(m.Pattern));
        Add(m.HasTubeLengthM && typical?.TubeLengthM != m.TubeLengthM, $"tube {Small(m.TubeLengthM, units)}");
        Add(typical?.SensitivityMvPerPa != m.SensitivityMvPerPa, Wordings.Say($"{m.SensitivityMvPerPa:0.###} mV/Pa"));
        Add(typical?.SelfNoiseDba != m.SelfNoiseDba, Wordings.Say($"self-noise {m.SelfNoiseDba:0.##} dB"));
        Add(typical?.MaxLevelDb != m.MaxLevelDb, Wordings.Say($"up to {m.MaxLevelDb:0.##} dB"));
        Add(typical?.BodyLengthM != m.BodyLengthM, $"{Small(m.BodyLengthM, units)} long");
        Add(typical?.BodyDiameterM != m.BodyDiameterM, $"{Small(m.BodyDiameterM, units)} thick");
        Add(m.Fixings.Count > 0 && (typical is null || !typical.Fixings.SequenceEqual(m.Fixings)), $"held by {string.Join(" and ", m.Fixings.Select(Wordings.Fixing))}");
        string name = Wordings.Name(m.DisplayName, m.Id).Replace(':', ' ').Replace(';', ' ');
        return Wordings.Say($"{m.Count} x {name}{(parts.Count > 0 ? ": " : "")}{string.Join(", ", parts)}");

        void Add(bool differs, string words)
        {
            if (differs)
            {
                parts.Add(words);
            }
        }
    }

    /// <summary>Reads a field of microphones; a line that stands as it was shown, and a name that is kept, keep what the form cannot show.</summary>
    public static List<Microphone> Read(EntryReading reading, string field, IReadOnlyList<Microphone> kept)
    {
        var read = new List<Microphone>();
        var used = new HashSet<string>();
        foreach (string line in reading.Lines(field).SelectMany(l => NextMicrophone().Split(l)).Select(l => l.Trim(' ', ',', ';')).Where(l => l.Length > 0))
        {
            Microphone? same = kept.FirstOrDefault(m => !used.Contains(m.Id) && Enum.GetValues<UnitPreference>().Any(u => FormText.Same(line, Say(m, u))));
            if (same is not null)
            {
                used.Add(same.Id);
                read.Add(same.Clone());
                continue;
            }

            Match match = Counted().Match(line);
            string name = match.Groups[2].Value.Trim();
            if (!match.Success || name.Length is 0 or > 80)
            {
                reading.Problem(field, $"\"{line}\" is not understood.", Right);
                continue;
            }

            Microphone? before = kept.FirstOrDefault(m => !used.Contains(m.Id) && Wordings.Name(m.DisplayName, m.Id).Equals(name, StringComparison.OrdinalIgnoreCase));
            MicrophoneFigures figures = MicrophoneFigures.Read(reading, field, match.Groups[3].Value);
            Microphone? microphone = before?.Clone() ?? MicrophoneKinds.Typical(name, figures.Pattern, out string usual).Said(reading, figures.Complete ? "" : usual);
            if (microphone is null)
            {
                reading.Problem(field, $"how does \"{name}\" hear?", "Add omni, cardioid, wide cardioid, supercardioid, hypercardioid, figure-eight or tube to its name.");
                continue;
            }

            figures.ApplyTo(microphone, before);
            microphone.Count = int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
            microphone.Id = before?.Id ?? "";
            if (before is not null)
            {
                used.Add(before.Id);
            }

            read.Add(microphone);
        }

        foreach (Microphone added in read.Where(m => m.Id.Length == 0))
        {
            added.Id = NewIds.Free(NewIds.From(added.DisplayName, "microphone"), id => read.Any(m => m.Id == id));
        }

        return read;
    }

    /// <summary>A small length, to a tenth of a millimetre or a hundredth of an inch.</summary>
    public static string Small(double metres, UnitPreference units) =>
        units == UnitPreference.Metric ? Wordings.Say($"{metres * 1000:0.#} mm") : Wordings.Say($"{metres / UnitText.MetresPerInch:0.##} in");

    private static Microphone? Said(this Microphone? made, EntryReading reading, string usual)
    {
        if (made is not null && usual.Length > 0)
        {
            reading.TakeAsUsual(usual);
        }

        return made;
    }

    [GeneratedRegex(@"^(\d{1,3})\s*(?:x\s*)?(\D[^:]*)(?::\s*(.*))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Counted();

    // "2 x lavalier, 1 x short cardioid" is two of them; figures behind a colon are not counts.
    [GeneratedRegex(@";|,(?=\s*\d{1,3}\s*x\s)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex NextMicrophone();
}
