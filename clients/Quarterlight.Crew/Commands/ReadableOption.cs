namespace Quarterlight.Crew.Commands;

/// <summary>What reading an option came to: what is said from now on, or what is wrong; exactly one is set.</summary>
internal readonly record struct OptionReading(CommandSaid? Said, string Wrong)
{
    /// <summary>The text was not understood to its end.</summary>
    public static OptionReading NotUnderstood { get; } = new(null, "");

    public static OptionReading Refused(string wrong) => new(null, wrong);

    public static implicit operator OptionReading(CommandSaid? said) => new(said, "");
}

/// <summary>An option with its reader.</summary>
/// <param name="Option">The option as offered.</param>
/// <param name="Right">What to type, for the sentence that refuses it: "say it like ...".</param>
/// <param name="Read">Reads its text.</param>
internal sealed record ReadableOption(CrewOption Option, string Right, Func<OptionText, CommandSaid, OptionReading> Read)
{
    /// <summary>What would be right where it hangs on what the team keeps; null takes <see cref="Right"/>.</summary>
    public Func<CommandSaid, string>? RightFor { get; init; }

    /// <summary>Options are read in this order, so that a talker is looked for in the scene named.</summary>
    public int Order { get; init; } = 1;

    public ReadableOption Required() => this with { Option = Option with { Required = true } };

    public ReadableOption Described(string description) => this with { Option = Option with { Description = description } };

    /// <summary>Free text.</summary>
    public static ReadableOption Text(string name, string description, string right, Func<OptionText, CommandSaid, OptionReading> read) =>
        new(new CrewOption(name, description, CrewOptionKind.Text), right, read);

    /// <summary>Yes or no.</summary>
    public static ReadableOption Flag(string name, string description, Func<CommandSaid, bool, CommandSaid> set) =>
        new(new CrewOption(name, description, CrewOptionKind.Flag), "say \"yes\" or \"no\"", (text, said) => text.Text.ToLowerInvariant() switch
        {
            "true" or "yes" or "on" or "y" => set(said, true),
            "false" or "no" or "off" or "n" => set(said, false),
            _ => OptionReading.NotUnderstood,
        });

    /// <summary>A number within its bounds; the unit may be typed with it.</summary>
    public static ReadableOption Number(string name, string description, double least, double most, bool whole, string[] units, Func<CommandSaid, double, CommandSaid> set)
    {
        string range = OptionRange.Words(least, most, units.Length > 0 ? units[0] : "");
        return new ReadableOption(new CrewOption(name, description, whole ? CrewOptionKind.WholeNumber : CrewOptionKind.Number) { Least = least, Most = most }, $"say a {(whole ? "whole " : "")}number, {range}", (text, said) =>
            text.Minus && text.Numbers.Count == 1 ? OptionReading.Refused($"is out of range, {range}")
            : text.OnlyNumber(units) is not { } number || (whole && number != Math.Floor(number)) ? OptionReading.NotUnderstood
            : number < least || number > most ? OptionReading.Refused($"is out of range, {range}")
            : set(said, number));
    }

    /// <summary>One of a few values, each with the words that the readers of questions know it by.</summary>
    public static ReadableOption Choice(string name, string description, (string Name, string Value, string Words)[] choices, Func<OptionText, CommandSaid, OptionReading> read) =>
        new(new CrewOption(name, description, CrewOptionKind.Text) { Choices = [.. choices.Select(c => new CrewChoice(c.Name, c.Value))] },
            "choose " + string.Join(", ", choices.Select(c => $"\"{c.Value}\"")),
            (text, said) =>
            {
                string typed = text.Text.Trim('.', '?', '!', ' ');
                string? words = choices.FirstOrDefault(c => Same(c.Value, typed) || Same(c.Name, typed)).Words;
                return words is null ? OptionReading.NotUnderstood : read(new OptionText(words, said.Vocabulary), said);
            });

    private static bool Same(string a, string b) => string.Equals(a.Replace('-', ' '), b.Replace('-', ' '), StringComparison.OrdinalIgnoreCase);
}
