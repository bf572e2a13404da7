using Quarterlight.Crew.Commands;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Commands and forms as the platform takes them.</summary>
public sealed class MappingTests
{
    [Fact]
    public void Definitions_WholeCatalogue_IsWhatThePlatformTakes()
    {
        IReadOnlyList<CommandDefinition> definitions = CommandMapping.Definitions(CrewCommands.All);

        // Application Commands: 100 chat commands; names 1 to 32, descriptions 1 to 100, 25 options, 8000 characters each.
        Assert.InRange(definitions.Count(d => d.Kind == CommandKind.Slash), 10, 100);
        Assert.Equal(definitions.Count, definitions.Select(d => (d.Kind, d.Name)).Distinct().Count());
        Assert.All(definitions.Where(d => d.Kind == CommandKind.Slash), d =>
        {
            Assert.Matches("^[-_a-z0-9]{1,32}$", d.Name);
            Assert.InRange(d.Description.Length, 1, 100);
            Assert.True(Characters(d.Options) + d.Name.Length + d.Description.Length <= 8000);
            Check(d.Options);
        });
        Assert.All(definitions.Where(d => d.Kind == CommandKind.Message), d => Assert.Equal("", d.Description));
    }

    [Fact]
    public void Definitions_EveryCommand_IsFoundAgain()
    {
        foreach (CrewCommand command in CrewCommands.All)
        {
            string[] words = command.Name.Split(' ');
            var data = new CommandData { Name = words[0], Subcommand = words.Length > 1 ? words[1] : null, Kind = CommandKind.Slash };

            Assert.Same(command, CommandMapping.Find(data, CrewCommands.All));
        }
    }

    [Fact]
    public void Definitions_TwoWords_AreSubcommandsAndSettingsAskForPermission()
    {
        IReadOnlyList<CommandDefinition> definitions = CommandMapping.Definitions(TransportBench.Commands);

        Assert.Equal(["plan", "clip", "scene", "settings", "Judge this clip"], definitions.Select(d => d.Name));
        Assert.Equal(["new", "list"], definitions[2].Options.Select(o => o.Name));
        Assert.All(definitions[2].Options, o => Assert.Equal(CommandOptionKind.Subcommand, o.Kind));
        Assert.Equal([null, null, null, 32UL, null], definitions.Select(d => d.DefaultMemberPermissions));
        Assert.True(definitions[0].Options[0].Autocomplete);
        Assert.Equal((CommandOptionKind.File, true), (definitions[1].Options[0].Kind, definitions[1].Options[0].Required));
        Assert.Equal(CommandKind.Message, definitions[4].Kind);
    }

    [Fact]
    public void Form_ThereAndBack_KeepsIdAndFields()
    {
        var form = new CrewForm("scene:new:12", "A new scene", [new CrewFormField("talkers", "Who talks") { Hint = "driver, passenger", Value = "driver", Required = true, SeveralLines = true, MostCharacters = 500 }]);

        OutgoingForm outgoing = FormMapping.ToPlatform(form)!;
        CrewFormEntry entry = FormMapping.FromPlatform(new FormData(outgoing.CustomId, new Dictionary<string, string> { ["talkers"] = "x" }, new Dictionary<string, IReadOnlyList<DiscordAttachment>>()))!;

        Assert.Equal("scene:new:12", entry.FormId);
        Assert.Equal(new OutgoingField("talkers", "Who talks") { Description = "driver, passenger", Value = "driver", Required = true, SeveralLines = true, MostCharacters = 500 }, Assert.Single(outgoing.Fields));
    }

    [Fact]
    public void Form_LongTexts_AreCutToWhatThePlatformTakes()
    {
        string words = string.Join(' ', Enumerable.Repeat("word", 2000));
        var form = new CrewForm("f", words, [new CrewFormField("a", words) { Hint = words, Value = words, MostCharacters = 9999 }, new CrewFormField("b", "B") { Value = "abc😀", MostCharacters = 4 }]);

        OutgoingForm outgoing = FormMapping.ToPlatform(form)!;

        Assert.InRange(outgoing.Title.Length, 1, DiscordLimits.FormTitleCharacters);
        Assert.InRange(outgoing.Fields[0].Label.Length, 1, DiscordLimits.FieldLabelCharacters);
        Assert.InRange(outgoing.Fields[0].Description!.Length, 1, DiscordLimits.FieldDescriptionCharacters);
        Assert.Equal((DiscordLimits.FieldCharacters, DiscordLimits.FieldCharacters), (outgoing.Fields[0].MostCharacters, outgoing.Fields[0].Value!.Length));
        Assert.Equal("abc", outgoing.Fields[1].Value);
    }

    [Theory]
    [InlineData(97, 1)]
    [InlineData(5, 6)]
    [InlineData(5, 0)]
    public void Form_ThatCannotBeShown_IsNone(int idLength, int fields) =>
        Assert.Null(FormMapping.ToPlatform(new CrewForm(new string('i', idLength), "T", [.. Enumerable.Range(0, fields).Select(i => new CrewFormField($"f{i}", "L"))])));

    private static int Characters(IReadOnlyList<CommandOptionDefinition> options) =>
        options.Sum(o => o.Name.Length + o.Description.Length + o.Choices.Sum(c => c.Name.Length + c.Value.Length) + Characters(o.Options));

    private static void Check(IReadOnlyList<CommandOptionDefinition> options)
    {
        Assert.True(options.Count <= 25);
        Assert.Equal(options.Count, options.Select(o => o.Name).Distinct().Count());
        Assert.Equal(options.OrderByDescending(o => o.Required).Select(o => o.Name), options.Select(o => o.Name));
        Assert.All(options, o =>
        {
            Assert.Matches("^[-_a-z0-9]{1,32}$", o.Name);
            Assert.InRange(o.Description.Length, 1, 100);
            Assert.True(o.Choices.Count <= DiscordLimits.Choices);
            Assert.False(o.Autocomplete && o.Choices.Count > 0);
            Assert.All(o.Choices, c => Assert.True(c.Name.Length is >= 1 and <= 100 && c.Value.Length <= 100));
            Check(o.Options);
        });
    }
}
