using System.Globalization;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Crew.Commands;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>What tests of the whole bot do again and again: send a command written as on the terminal, and wait for its answer.</summary>
internal static class WholeTalk
{
    /// <summary>Longest wait for an answer; a busy machine is slow.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    /// <summary>Options that lift the limits on asking: one test asks as much as a crew does in a week.</summary>
    public static readonly string[] NoLimits = ["--user-rate", "100000", "--team-rate", "100000"];

    /// <summary>Sends a command written as on the terminal, with a file where it takes one.</summary>
    public static SentInteraction Send(UserInChannel who, string line, EmulatedFile? file = null)
    {
        TypedCommand typed = CommandLine.Read(line);
        Assert.Null(typed.Wrong);
        CrewCommand command = CrewCommands.Find(typed.Call!.Name)!;
        List<(string Name, object Value)> options = [.. typed.Call.Values.Select(v => (v.Key, ValueOf(command.Options.Single(o => o.Name == v.Key), v.Value)))];
        if (file is not null)
        {
            options.Add((command.Options.Single(o => o.Kind == CrewOptionKind.File).Name, file));
        }

        return who.Slash(command.Name, [.. options]);
    }

    /// <summary>Waits for the answer: not the word on progress that a busy machine may show first.</summary>
    public static async Task<VisibleMessage> AnswerAsync(SentInteraction asked)
    {
        await asked.UntilAsync(a => Answers(a).Count > 0, TestContext.Current.CancellationToken, Patience);
        return Answers(asked)[0];
    }

    /// <summary>The answers there are now.</summary>
    public static IReadOnlyList<VisibleMessage> Answers(SentInteraction asked) =>
        [.. asked.Readable.Where(m => !m.IsLoading && !IsProgress(m.Content))];

    /// <summary>True for the word on progress that a busy machine may show before an answer.</summary>
    public static bool IsProgress(string content) => content == "Working on it…" || content.StartsWith("Reading the file…", StringComparison.Ordinal);

    // Where the app offers choices it sends one of them, whatever a terminal would take.
    private static object ValueOf(CrewOption option, string value) => option.Kind switch
    {
        CrewOptionKind.Flag => bool.Parse(value),
        CrewOptionKind.WholeNumber => long.Parse(value, CultureInfo.InvariantCulture),
        CrewOptionKind.Number => double.Parse(value, CultureInfo.InvariantCulture),
        _ when option.Choices.Count == 0 => value,
        _ => (option.Choices.FirstOrDefault(c => c.Value == value) ?? option.Choices.FirstOrDefault(c => c.Value.Contains(value, StringComparison.OrdinalIgnoreCase)) ?? option.Choices[0]).Value,
    };
}
