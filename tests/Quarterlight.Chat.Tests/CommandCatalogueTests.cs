using System.Text.RegularExpressions;
using Quarterlight.Crew.Commands;

namespace Quarterlight.Chat.Tests;

/// <summary>The catalogue keeps within what the chat platform takes, and within what a newcomer can follow.</summary>
public sealed partial class CommandCatalogueTests
{
    private const int MostOptions = 25, MostSubcommands = 25, MostChoices = 25, LongestDescription = 100, LongestChoice = 100, MostCharacters = 8000, MostCommands = 100, MostMenus = 15, LongestMenu = 32;

    public static TheoryData<string> Names => [.. CrewCommands.All.Select(c => c.Name)];

    [Fact]
    public void All_Names_AreUniqueAndFew()
    {
        string[] names = [.. CrewCommands.All.Select(c => c.Name)];
        IGrouping<string, CrewCommand>[] tops = [.. CrewCommands.All.GroupBy(c => c.Name.Split(' ')[0])];

        Assert.Equal(names.Length, names.Distinct().Count());
        Assert.InRange(tops.Length, 15, MostCommands);
        Assert.All(tops, t => Assert.InRange(t.Count(), 1, MostSubcommands));

        // One that has subcommands cannot also be given alone.
        Assert.All(tops, t => Assert.True(t.Count() == 1 || t.All(c => c.Name.Contains(' ', StringComparison.Ordinal)), t.Key));
        Assert.All(new[] { "plan", "why", "what-if", "sites", "link", "law", "channels", "heat", "levels", "run-time", "noise", "route", "clip", "ask", "scene", "car", "kit", "settings", "demo", "help" }, n => Assert.Contains(tops, t => t.Key == n));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Command_EveryPart_KeepsTheLimits(string name)
    {
        CrewCommand command = CrewCommands.Find(name)!;

        Assert.InRange(name.Split(' ').Length, 1, 2);
        Assert.All(name.Split(' '), w => Assert.Matches(NamePattern(), w));
        Assert.InRange(command.Description.Length, 5, LongestDescription);
        Assert.InRange(command.Options.Count, 0, MostOptions);
        Assert.Equal(command.Options.Count, command.Options.Select(o => o.Name).Distinct().Count());
        Assert.Equal(command.Options.OrderByDescending(o => o.Required).Select(o => o.Name), command.Options.Select(o => o.Name));
        foreach (CrewOption option in command.Options)
        {
            Assert.Matches(NamePattern(), option.Name);
            Assert.InRange(option.Description.Length, 3, LongestDescription);
            Assert.InRange(option.Choices.Count, 0, MostChoices);
            Assert.All(option.Choices, c => Assert.InRange(c.Name.Length, 1, LongestChoice));
            Assert.All(option.Choices, c => Assert.InRange(c.Value.Length, 1, LongestChoice));
            Assert.Equal(option.Choices.Count, option.Choices.Select(c => c.Name).Distinct().Count());
            Assert.False(option.Completes && option.Choices.Count > 0);
            Assert.True(option.Least is null || option.Least < option.Most);
        }
    }

    // A command with its subcommands is registered as one.
    [Fact]
    public void All_TextOfACommand_FitsTheWhole()
    {
        foreach (IGrouping<string, CrewCommand> top in CrewCommands.All.GroupBy(c => c.Name.Split(' ')[0]))
        {
            int characters = top.Sum(c => c.Name.Length + c.Description.Length + c.Options.Sum(o => o.Name.Length + o.Description.Length + o.Choices.Sum(h => h.Name.Length + h.Value.Length)));
            Assert.InRange(characters, 10, MostCharacters - 1);
        }
    }

    [Fact]
    public void All_SameOption_TakesTheSameEverywhere()
    {
        foreach (IGrouping<string, CrewOption> same in CrewCommands.All.SelectMany(c => c.Options).Where(o => o.Name != "show").GroupBy(o => o.Name))
        {
            Assert.Single(same.Select(o => (o.Kind, string.Join('|', o.Choices.Select(c => c.Value)), o.Least, o.Most)).Distinct());
        }
    }

    [Fact]
    public void All_MessageMenus_AreFewAndTakeAFile()
    {
        CrewCommand[] menus = [.. CrewCommands.All.Where(c => c.MessageMenuName is not null)];

        Assert.InRange(menus.Length, 1, MostMenus);
        Assert.All(menus, c => Assert.InRange(c.MessageMenuName!.Length, 1, LongestMenu));
        Assert.All(menus, c => Assert.Contains(c.Options, o => o is { Kind: CrewOptionKind.File, Required: true }));
    }

    // ASCII, and with it within the platform's own ^[-_'\p{L}\p{N}]{1,32}$, lower case.
    [GeneratedRegex("^[a-z][a-z0-9-]{0,31}$", RegexOptions.CultureInvariant)]
    private static partial Regex NamePattern();
}
