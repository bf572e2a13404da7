using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Topics;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Keeping;

/// <summary>What the team settled on: units, country and limits of clips, shown and set.</summary>
internal sealed class SettingsKeeper(PlannerClients planner)
{
    private readonly TeamSettingsClient team = new(planner);

    /// <summary>All settings on one screen.</summary>
    public async Task<CrewAnswer> ShowAsync(CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        TeamSettings settings = await team.ReadAsync(cancellation).ConfigureAwait(false);
        CrewAnswer limits = await ClipLimitTopic.ShowAsync(Asked(new CrewRequest { Intent = CrewIntent.ClipLimits }, memory, units, cancellation)).ConfigureAwait(false);
        string country = settings.CountryCode is { } code ? CountryReader.Say(code) : "not set, so say it with a question about radio";
        return Done("settings of the team", $"Units: {Units(settings.Units)}. Country: {country}.", [new(CrewLineKind.Plain, limits.Headline), .. limits.Lines], memory) with { Data = limits.Data };
    }

    /// <summary>Metric or imperial for the team, and for this conversation at once.</summary>
    public async Task<CrewAnswer> UnitsAsync(CrewCommandCall call, CrewMemory memory, CancellationToken cancellation)
    {
        string said = CrewText.Clean(call.Values.GetValueOrDefault("units") ?? "", CrewText.LongestName);
        UnitPreference? wanted = (Tokenizer.Split(said) is [var first, ..] ? first.Word : "") switch
        {
            "metric" or "centimetres" or "metres" or "kmh" or "km" => UnitPreference.Metric,
            "imperial" or "inches" or "feet" or "mph" or "us" => UnitPreference.Imperial,
            _ => null,
        };
        if (wanted is not { } chosen)
        {
            return Refused("units of the team", $"\"{said}\" is no kind of units: choose metric or imperial.", memory);
        }

        await team.WriteAsync(s => s with { Units = chosen }, cancellation).ConfigureAwait(false);
        return Done("units of the team", $"{Wordings.Capital(Units(chosen))} from now on, for the whole team.", [], memory with { Units = chosen });
    }

    /// <summary>Country whose rules hold for the team, or none.</summary>
    public async Task<CrewAnswer> CountryAsync(CrewCommandCall call, CrewMemory memory, CancellationToken cancellation)
    {
        string said = CrewText.Clean(call.Values.GetValueOrDefault("country") ?? "", CountryReader.LongestName);
        if (said.Length == 0)
        {
            return Refused("country of the team", "Which country? Write its name, such as France, or its two-letter code.", memory);
        }

        bool none = said.Equals("none", StringComparison.OrdinalIgnoreCase) || said.Equals("no country", StringComparison.OrdinalIgnoreCase) || said.Equals("forget it", StringComparison.OrdinalIgnoreCase);
        string? code = none ? null : Code(said);
        if (!none && code is null)
        {
            return Refused("country of the team", $"\"{said}\" is no country that is known here by name. Write its two-letter code, such as FR.", memory);
        }

        await team.WriteAsync(s => s with { CountryCode = code }, cancellation).ConfigureAwait(false);
        return Done("country of the team", none ? "No country is set for the team any more." : $"Radio rules of {CountryReader.Say(code!)} hold from now on, for the whole team.", [], memory);
    }

    /// <summary>Limits of clips: shown, set or back to the defaults.</summary>
    public async Task<CrewAnswer> ClipLimitsAsync(CrewCommandCall call, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        string said = CrewText.Clean(call.Values.GetValueOrDefault("limit") ?? "");
        if (said.Length == 0)
        {
            return await ClipLimitTopic.ShowAsync(Asked(new CrewRequest { Intent = CrewIntent.ClipLimits }, memory, units, cancellation)).ConfigureAwait(false);
        }

        IReadOnlyList<Token> tokens = Phrases.Join(Tokenizer.Split(said));
        bool resets = tokens.Any(t => t.IsAny(ClipWords.Defaults));
        if (resets || ClipLimitReader.Read(tokens) is not null)
        {
            var request = new CrewRequest { Intent = CrewIntent.SetClipLimits, Clip = new ClipSaid { Limits = resets ? null : ClipLimitReader.Read(tokens), ResetsLimits = resets } };
            return await ClipLimitTopic.SetAsync(Asked(request, memory, units, cancellation)).ConfigureAwait(false);
        }

        return Refused("limits for clips", $"\"{said}\" is no limit that is known here.", memory) with
        {
            Lines = [new(CrewLineKind.Plain, "Write for example \"speech over noise 18 dB\", \"peak -3 dBTP\", \"clipping 2 a minute\", \"hum 12 dB\", \"engine needs care on\" or \"defaults\".")],
        };
    }

    private static string? Code(string said)
    {
        IReadOnlyList<Token> tokens = Tokenizer.Split(said);
        string? byName = CountryReader.Read("", tokens, _ => true, law: false);
        return byName ?? (said.Length == 2 && said.All(char.IsAsciiLetter) ? said.ToUpperInvariant() : null);
    }

    private static string Units(UnitPreference? units) => units switch
    {
        UnitPreference.Imperial => "inches, feet and mph",
        UnitPreference.Metric => "centimetres, metres and km/h",
        _ => "centimetres, metres and km/h unless a conversation says otherwise",
    };

    private Asked Asked(CrewRequest request, CrewMemory memory, UnitPreference units, CancellationToken cancellation) => new(planner, request, new CrewVocabulary([], [], []), memory, units, IncludePicture: false, cancellation);

    private static CrewAnswer Done(string understood, string headline, IReadOnlyList<CrewLine> lines, CrewMemory memory) => KeptAnswers.Done(understood, headline, lines, memory, "what are the limits?", "where do the mics go?") with { Intent = CrewIntent.Settings };

    private static CrewAnswer Refused(string understood, string headline, CrewMemory memory) => KeptAnswers.Refused(understood, headline, memory, "what are the limits?") with { Intent = CrewIntent.Settings };
}
