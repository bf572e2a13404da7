using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Commands;

/// <summary>Says what is wrong with a command and what would be right.</summary>
internal static class CommandRefusals
{
    private const int MostOptionsListed = 8;
    private const int LongestRepeated = 40;

    /// <summary>One private answer for everything that is wrong.</summary>
    /// <param name="wrong">Sentences, at least one.</param>
    /// <param name="intent">What the command is about.</param>
    /// <param name="memory">What the conversation remembers, handed on unchanged.</param>
    public static CrewAnswer Of(IReadOnlyList<string> wrong, CrewIntent intent, CrewMemory memory) => new()
    {
        Outcome = CrewOutcome.Refused,
        Intent = intent,
        Private = true,
        Headline = wrong[0],
        Lines = [.. wrong.Skip(1).Select(w => new CrewLine(CrewLineKind.Plain, w))],
        Memory = memory,
    };

    public static CrewAnswer NoSuchCommand(string name, CrewMemory memory)
    {
        string[] all = [.. CrewCommands.All.Select(c => c.Name)];
        string? near = CrewCommands.Nearest(name, all);
        string first = CrewText.Clean(name, LongestRepeated).Split(' ')[0];
        string[] same = [.. all.Where(n => n.StartsWith(first + " ", StringComparison.Ordinal))];
        string offered = near is not null ? $"did you mean {near}?" : same.Length > 0 ? $"there is {Wordings.Join(same)}." : "say help for what there is, or ask in plain words.";
        return Of([$"There is no command {Repeated(name)}: {offered}"], CrewIntent.Unknown, memory) with { Outcome = CrewOutcome.NotUnderstood, FollowUps = ["help"] };
    }

    public static string NoSuchOption(CrewCommand command, string name)
    {
        string[] all = [.. command.Options.Select(o => o.Name)];
        string listed = all.Length == 0 ? "it takes none" : $"it takes {string.Join(", ", all.Take(MostOptionsListed))}{(all.Length > MostOptionsListed ? " and more" : "")}";
        return $"{command.Name} has no option {Repeated(name)}: {(CrewCommands.Nearest(name, all) is { } near ? $"did you mean {near}?" : listed + ".")}";
    }

    public static string Missing(CrewOption option) => $"{option.Name} is needed: {Lower(option.Description)}.";

    public static string Option(ReadableOption option, OptionText text, string wrong, CommandSaid said)
    {
        string what = text.IsTooLong ? $"is longer than {OptionText.Longest} characters" : text.Text.Length == 0 ? "is empty" : wrong.Length > 0 ? wrong : "was not understood";
        string value = text.Text.Length == 0 ? "" : Repeated(text.Text) + " ";
        string right = option.RightFor?.Invoke(said) ?? option.Right;
        string start = $"{option.Option.Name}: {value}{what}";

        // The bounds are what is right; a name offered stands on its own.
        return what.StartsWith("is out of range", StringComparison.Ordinal) ? start + "." : what.EndsWith('?') ? start : $"{start}: {right}.";
    }

    private static string Repeated(string text)
    {
        string clean = CrewText.Clean(text, LongestRepeated);
        return clean.Length == 0 ? "of that name" : $"\"{clean.Replace('"', '\'')}\"";
    }

    private static string Lower(string sentence) => sentence.Length > 1 && char.IsLower(sentence[1]) ? char.ToLowerInvariant(sentence[0]) + sentence[1..] : sentence;
}
