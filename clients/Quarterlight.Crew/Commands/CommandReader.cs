using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Commands;

/// <summary>What a command came to: a request, or the answer that says what is wrong with it; exactly one is set.</summary>
internal sealed record CommandReading(CrewRequest? Request, CrewAnswer? Refusal);

/// <summary>Reads commands into the requests that questions are read into. An option that is not understood to its end is refused, never guessed at.</summary>
internal static class CommandReader
{
    /// <summary>What is wrong with the names of a known command's options, with a file it does not take, and what is missing; empty when nothing is.</summary>
    public static IReadOnlyList<string> WrongNames(CrewCommand command, CrewCommandCall call)
    {
        List<string> wrong = [.. call.Values.Keys.Where(k => command.Options.All(o => o.Name != k)).Select(k => CommandRefusals.NoSuchOption(command, k))];
        if (call.File is not null && command.Options.All(o => o.Kind != CrewOptionKind.File))
        {
            wrong.Add($"{command.Name} takes no file.");
        }

        wrong.AddRange(command.Options.Where(o => o.Required && !IsGiven(call, o)).Select(CommandRefusals.Missing));
        return wrong;
    }

    /// <summary>Reads a command of <see cref="CommandTable"/>.</summary>
    /// <param name="call">The command as given.</param>
    /// <param name="vocabulary">The team's own words.</param>
    /// <param name="memory">What the conversation remembers.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="sites">Sites of the car in question, so that one chosen from a list is known; may be empty.</param>
    public static CommandReading Read(CrewCommandCall call, CrewVocabulary vocabulary, CrewMemory memory, UnitPreference units, IReadOnlyList<MountSite> sites)
    {
        ReadableCommand command = CommandTable.All.First(c => c.Name == call.Name);
        List<string> wrong = [.. WrongNames(command.Offered, call)];
        (ReadableOption Option, OptionText Text)[] given = [.. command.Options.Where(o => o.Option.Kind != CrewOptionKind.File && call.Values.ContainsKey(o.Option.Name) && (IsGiven(call, o.Option) || !o.Option.Required))
            .OrderBy(o => o.Order).Select(o => (o, new OptionText(call.Values[o.Option.Name], vocabulary)))];
        UnitPreference? unitsNamed = given.Where(g => g.Option.Option is { Kind: CrewOptionKind.Text, Choices.Count: 0 }).Select(g => UnitReader.Of(g.Text.Tokens)).FirstOrDefault(u => u is not null);
        var said = new CommandSaid(vocabulary, memory, unitsNamed ?? units) { Sites = sites, UnitsNamed = unitsNamed };
        foreach ((ReadableOption option, OptionText text) in given)
        {
            OptionReading reading = option.Read(text, said);
            if (reading.Said is { } understood)
            {
                said = understood;
            }
            else
            {
                wrong.Add(CommandRefusals.Option(option, text, reading.Wrong, said));
            }
        }

        if (wrong.Count == 0 && command.NeedsOne.Length > 0 && given.All(g => g.Option.Option.Name == "scene"))
        {
            wrong.Add(command.NeedsOne);
        }

        return wrong.Count > 0 ? new CommandReading(null, CommandRefusals.Of(wrong, command.Intent, memory)) : new CommandReading(command.Build(said), null);
    }

    private static bool IsGiven(CrewCommandCall call, CrewOption option) =>
        option.Kind == CrewOptionKind.File ? call.File is not null : call.Values.TryGetValue(option.Name, out string? value) && !string.IsNullOrWhiteSpace(value);
}
