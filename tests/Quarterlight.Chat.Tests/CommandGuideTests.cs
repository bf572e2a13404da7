using System.Text;
using Quarterlight.Crew.Commands;

namespace Quarterlight.Chat.Tests;

/// <summary>The page of all commands says what the catalogue does.</summary>
public sealed class CommandGuideTests
{
    private const string Begin = "<!-- The tables are written from the catalogue; CommandGuideTests compares them. -->";

    [Fact]
    public void Page_Tables_AreThoseOfTheCatalogue()
    {
        string page = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "commands.md")).ReplaceLineEndings("\n");
        int begin = page.IndexOf(Begin, StringComparison.Ordinal);
        Assert.True(begin >= 0, "The page has lost its mark.");
        string written = page[(begin + Begin.Length)..].Trim('\n'), expected = Tables();

        Assert.True(written == expected, "Put this behind the mark in docs/guides/commands.md:\n" + expected);
    }

    private static string Tables()
    {
        var text = new StringBuilder();
        foreach (CrewCommand command in CrewCommands.All)
        {
            text.Append("## ").Append(command.Name).Append("\n\n").Append(command.Description).Append('.');
            text.Append(command.OpensForm ? " Opens a form." : "").Append(command.MessageMenuName is { } menu ? $" Also in the menu of a message with a file: \"{menu}\"." : "").Append("\n\n");
            if (command.Options.Count == 0)
            {
                continue;
            }

            text.Append("| Option | What |\n|---|---|\n");
            foreach (CrewOption option in command.Options)
            {
                text.Append("| `").Append(option.Name).Append('`').Append(option.Required ? ", needed" : "").Append(" | ").Append(option.Description)
                    .Append(option.Choices.Count > 0 ? ": " + string.Join(", ", option.Choices.Select(c => $"`{c.Value}`")) : "")
                    .Append(option.Kind switch { CrewOptionKind.Flag => ". Yes or no", CrewOptionKind.Number or CrewOptionKind.WholeNumber => FormattableString.Invariant($". {option.Least} to {option.Most}"), _ => "" }).Append(" |\n");
            }

            text.Append('\n');
        }

        return text.ToString().Trim('\n');
    }
}
