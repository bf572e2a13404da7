using System.Globalization;
using System.Text.RegularExpressions;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>The form of a kit: microphones, fixings and recorder inputs. Everything else of a kit stays as it is.</summary>
internal sealed partial class KitForm : IThingForm<Kit>
{
    /// <inheritdoc/>
    public Task<CrewForm> ShowAsync(string formId, Kit? kept, CrewCommandCall? call, UnitPreference units, CancellationToken cancellation) => Task.FromResult(Show(formId, kept, units));

    /// <inheritdoc/>
    public Task<FormResult<Kit>?> ReadAsync(EntryReading reading, Kit? kept, UnitPreference units, CancellationToken cancellation)
    {
        reading.CheckLengths();
        Kit kit = kept?.Clone() ?? new Kit();
        CrewForm metric = Show("", kept, UnitPreference.Metric), imperial = Show("", kept, UnitPreference.Imperial);
        bool Changed(string field) => kept is null || !reading.Same(field, metric.Value(field), imperial.Value(field));
        if (Changed("name"))
        {
            kit.DisplayName = reading.Line("name");
        }

        if (Changed("microphones"))
        {
            List<Microphone> microphones = MicrophoneLines.Read(reading, "microphones", [.. kit.Microphones]);
            kit.Microphones.Clear();
            kit.Microphones.Add(microphones);
        }

        if (Changed("fixings"))
        {
            List<FixingStock> fixings = FixingWords.Read(reading, "fixings");
            kit.Fixings.Clear();
            kit.Fixings.Add(fixings);
        }

        if (Changed("inputs"))
        {
            ReadInputs(reading, kit);
        }

        return Task.FromResult(reading.Good ? new FormResult<Kit>(kit, Rest(kit) is { Length: > 0 } rest && kept is not null ? [$"Kept as it was, as the form does not show it: {rest}."] : []) : null);
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> Describe(Kit kit, UnitPreference units) =>
    [
        Wordings.Say($"Microphones: {Wordings.Join([.. kit.Microphones.Select(m => Wordings.Say($"{m.Count} x {Wordings.Name(m.DisplayName, m.Id)}"))])}."),
        Wordings.Say($"Fixings: {FixingWords.Say(kit.Fixings)}. Recorder inputs: {kit.RecorderInputCount}."),
    ];

    /// <inheritdoc/>
    public IReadOnlyList<string> FollowUps(Kit kit) => ["list kits"];

    /// <summary>What of a kit the form cannot show, in words; empty when there is nothing.</summary>
    public static string Rest(Kit kit)
    {
        var parts = new List<string>();
        Add(kit.LinkGear is not null, "the link to the follow car");
        Add(kit.WirelessTransmitters.Count + kit.TransmitterAudio.Count > 0, "wireless transmitters");
        Add(kit.RecorderGain is not null, "the recorder's gain and noise");
        Add(kit.Batteries.Count + kit.PoweredDevices.Count > 0, "batteries and what runs from them");
        Add(kit.RecordingMedia is not null, "cards");
        return Wordings.Join(parts);

        void Add(bool there, string words)
        {
            if (there)
            {
                parts.Add(words);
            }
        }
    }

    private static CrewForm Show(string formId, Kit? kept, UnitPreference units) => new(formId, kept is null ? "New kit" : "Change a kit",
    [
        new("name", "What you call it") { Hint = "Van kit", Required = true, Value = kept?.DisplayName ?? "", MostCharacters = 80 },
        new("microphones", "Microphones, a line each") { Hint = "2 x omni lavalier; 1 x short supercardioid: self-noise 15 dB", Required = true, SeveralLines = true, Value = kept is null ? "" : string.Join('\n', kept.Microphones.Select(m => MicrophoneLines.Say(m, units))), MostCharacters = 4000 },
        new("fixings", "Fixings with their numbers") { Hint = "4 spring clips, 2 suction cups, 12 paper tape, 6 elastic ties, 3 body mounts; or none", Required = true, Value = kept is null ? "" : FixingWords.Say(kept.Fixings), SeveralLines = true, MostCharacters = 500 },
        new("inputs", "Recorder inputs in the car") { Hint = "6", Required = true, Value = kept is null ? "" : Wordings.Say($"{kept.RecorderInputCount}"), MostCharacters = 40 },
    ]);

    private static void ReadInputs(EntryReading reading, Kit kit)
    {
        Match match = Inputs().Match(reading.Line("inputs"));
        if (match.Success)
        {
            kit.RecorderInputCount = int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture);
        }
        else if (reading.Line("inputs").Length > 0)
        {
            reading.Problem("inputs", $"\"{reading.Line("inputs")}\" is no number of inputs. Write a whole number, such as 6.");
        }
    }

    [GeneratedRegex(@"^(\d{1,4})(?:\s*(?:recorder\s+)?(?:inputs?|channels?|tracks?))?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Inputs();
}
