using System.Text;
using CsCheck;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests;

/// <summary>JSON as the platform writes it (Receiving and Responding, Application Commands, Component Reference) to an interaction.</summary>
public sealed class InteractionReaderTests
{
    private const string File = """{"id":"600","filename":"take 4.wav","size":1234,"url":"https://cdn.example.test/600?ex=1","content_type":"audio/wav","ephemeral":true}""";

    private const string Command = $$$"""
        {"id":"8","name":"scene","type":1,"guild_id":"30","resolved":{"attachments":{"600":{{{File}}}},"users":{}},
         "options":[{"name":"import","type":1,"options":[
           {"name":"file","type":11,"value":"600"},{"name":"speed","type":10,"value":48.5},{"name":"count","type":4,"value":9007199254740991},
           {"name":"rain","type":5,"value":true},{"name":"fan","type":5,"value":false},{"name":"scene","type":3,"value":"ferry é","focused":true}]}]}
        """;

    private const string Form = $$$"""
        {"custom_id":"form:scene","resolved":{"attachments":{"600":{{{File}}}}},"components":[
          {"type":18,"id":1,"component":{"type":4,"id":2,"custom_id":"name","value":"Lay-by"}},
          {"type":18,"component":{"type":19,"custom_id":"file","values":["600"]}},
          {"type":18,"component":{"type":3,"custom_id":"country","values":["de"]}},
          {"type":10,"id":5},
          {"type":1,"components":[{"type":4,"custom_id":"old","value":"row"},{"type":4,"custom_id":"empty"}]}]}
        """;

    [Fact]
    public void Ping_NeedsNoUser()
    {
        Interaction ping = Read("""{"id":"1","application_id":"5","type":1,"token":"t","version":1}""");
        Assert.Equal((InteractionKind.Ping, 0UL), (ping.Kind, ping.UserId));
    }

    [Fact]
    public void Command_InAServer_IsReadWhole()
    {
        Interaction read = Read(InteractionJson.Wrap(2, Command));
        Assert.Equal(new InteractionTicket(5, 77, "secret-interaction-token") { ReceivedTimestamp = 99 }, read.Ticket);
        Assert.Equal((InteractionKind.Command, 30UL, 31UL, 40UL), (read.Kind, read.GuildId!.Value, read.ChannelId!.Value, read.UserId));
        Assert.Equal((2147483648UL, 274877959168UL, "en-GB", 524288L), (read.MemberPermissions, read.AppPermissions!.Value, read.Locale, read.AttachmentSizeLimitBytes));
        Assert.Equal(99, read.ReceivedTimestamp);
        CommandData command = read.Command!;
        Assert.Equal(("scene", CommandKind.Slash, "import"), (command.Name, command.Kind, command.Subcommand));
        Assert.Equal(
            [
                new("file", "600"), new("speed", "48.5"), new("count", "9007199254740991"), new("rain", "true"), new("fan", "false"), new("scene", "ferry é", true),
            ],
            command.Options);
        Assert.Equal(new DiscordAttachment(600, "take 4.wav", 1234, "https://cdn.example.test/600?ex=1"), Assert.Single(command.Attachments).Value);
        Assert.Empty(command.TargetAttachments);
        Assert.Null(read.Component);
        Assert.Null(read.Form);
    }

    [Fact]
    public void Command_InAPrivateConversation_HasItsUserAndChannel()
    {
        Interaction read = Read("""
            {"id":"1","application_id":"5","type":2,"token":"t","channel":{"id":"31"},"user":{"id":"41"},"context":1,"data":{"name":"help","type":1}}
            """);
        Assert.Equal((null, 31UL, 41UL), (read.GuildId, read.ChannelId!.Value, read.UserId));
        Assert.Equal((0UL, null, null, DiscordLimits.DefaultAttachmentBytes), (read.MemberPermissions, read.AppPermissions, read.Locale, read.AttachmentSizeLimitBytes));
        Assert.Equal(("help", null), (read.Command!.Name, read.Command.Subcommand));
        Assert.Empty(read.Command.Options);
    }

    [Fact]
    public void Command_InAGroup_NamesBothSteps()
    {
        CommandData read = Read(InteractionJson.Wrap(2, """
            {"name":"a","type":1,"options":[{"name":"group","type":2,"options":[{"name":"sub","type":1,"options":[{"name":"x","type":3,"value":"y"}]}]}]}
            """)).Command!;
        Assert.Equal("group sub", read.Subcommand);
        Assert.Equal([new CommandOptionValue("x", "y")], read.Options);
    }

    [Fact]
    public void Command_SubcommandWithoutOptions_IsRead()
    {
        CommandData read = Read(InteractionJson.Wrap(2, """{"name":"scene","type":1,"options":[{"name":"list","type":1,"options":[]}]}""")).Command!;
        Assert.Equal(("list", 0), (read.Subcommand, read.Options.Count));
    }

    [Fact]
    public void Autocomplete_HasThePartAndWhatIsTyped()
    {
        Interaction read = Read(InteractionJson.Wrap(4, """{"name":"plan","type":1,"options":[{"name":"scene","type":3,"value":"fer","focused":true},{"name":"speed","type":10,"value":""}]}"""));
        Assert.Equal(InteractionKind.Autocomplete, read.Kind);
        Assert.Equal([new("scene", "fer", true), new CommandOptionValue("speed", "")], read.Command!.Options);
    }

    [Fact]
    public void MessageMenu_HasTheFilesOfItsMessage()
    {
        CommandData read = Read(InteractionJson.Wrap(2, $$$"""
            {"name":"Judge this clip","type":3,"target_id":"700","resolved":{"messages":{"700":{"id":"700","attachments":[{{{File}}}]},"701":{"attachments":[]} } } }
            """)).Command!;
        Assert.Equal(CommandKind.Message, read.Kind);
        Assert.Equal(600UL, Assert.Single(read.TargetAttachments).Id);
    }

    [Fact]
    public void MessageMenu_MessageNotShown_HasNoFiles() =>
        Assert.Empty(Read(InteractionJson.Wrap(2, """{"name":"Judge this clip","type":3,"target_id":"700"}""")).Command!.TargetAttachments);

    [Fact]
    public void Button_HasItsIdAndMessage()
    {
        ComponentData read = Read(InteractionJson.Button()).Component!;
        Assert.Equal(("q1:abcdefgh:0", 900UL), (read.CustomId, read.MessageId));
        Assert.Empty(read.Values);
    }

    [Fact]
    public void Select_HasItsValues() => Assert.Equal(
        ["a", "b"], Read(InteractionJson.Wrap(3, """{"component_type":3,"custom_id":"c","values":["a","b"]}""", more: ""","message":{"id":"900"}""")).Component!.Values);

    [Fact]
    public void Form_FieldsInLabelsAndRows_AreRead()
    {
        FormData read = Read(InteractionJson.Wrap(5, Form)).Form!;
        Assert.Equal("form:scene", read.CustomId);
        Assert.Equal([("country", "de"), ("empty", ""), ("name", "Lay-by"), ("old", "row")], read.Fields.Select(f => (f.Key, f.Value)).Order());
        Assert.Equal(600UL, Assert.Single(read.Files["file"]).Id);
    }

    [Theory]
    [InlineData("", InteractionFlaw.NotJson)]
    [InlineData("[]", InteractionFlaw.NoTicket)]
    [InlineData("""{"id":7,"application_id":"5","type":1,"token":"t"}""", InteractionFlaw.NoTicket)]
    [InlineData("""{"id":"-7","application_id":"5","type":1,"token":"t"}""", InteractionFlaw.NoTicket)]
    [InlineData("""{"id":"99999999999999999999","application_id":"5","type":1,"token":"t"}""", InteractionFlaw.NoTicket)]
    [InlineData("""{"id":"7","application_id":"5","type":1,"token":""}""", InteractionFlaw.NoTicket)]
    [InlineData("""{"id":"7","application_id":"5","type":6,"token":"t"}""", InteractionFlaw.UnknownKind)]
    [InlineData("""{"id":"7","application_id":"5","type":"2","token":"t"}""", InteractionFlaw.UnknownKind)]
    [InlineData("""{"id":"7","application_id":"5","type":2,"token":"t","data":{}}""", InteractionFlaw.NoUser)]
    [InlineData("""{"id":"7","application_id":"5","type":2,"token":"t","user":{"id":"1"}}""", InteractionFlaw.NoData)]
    [InlineData("{\"id\":\"7\",\"application_id\":\"5\",\"type\":2,\"token\":\"\\ud800\",\"user\":{\"id\":\"1\"}}", InteractionFlaw.NotJson)]
    public void Read_WhatIsNeededIsMissing_SaysWhich(string json, InteractionFlaw flaw) => Refused(json, flaw);

    [Theory]
    [InlineData(2, "{}", InteractionFlaw.BadCommand)]
    [InlineData(2, """{"name":"x","type":2}""", InteractionFlaw.BadCommand)]
    [InlineData(2, """{"name":"x","type":1,"options":[{"type":3,"value":"y"}]}""", InteractionFlaw.BadOption)]
    [InlineData(2, """{"name":"x","type":1,"options":[{"name":"a","type":3,"value":{}}]}""", InteractionFlaw.BadOption)]
    [InlineData(2, """{"name":"x","type":1,"options":[{"name":"a","type":3}]}""", InteractionFlaw.BadOption)]
    [InlineData(2, """{"name":"x","type":1,"options":[{"name":"file","type":11,"value":"600"}]}""", InteractionFlaw.BadAttachment)]
    [InlineData(2, """{"name":"x","type":1,"resolved":{"attachments":{"600":{"id":"600"}}}}""", InteractionFlaw.BadAttachment)]
    [InlineData(2, """{"name":"x","type":1,"resolved":{"attachments":{"600":{"id":"600","filename":"a","size":-1,"url":"u"}}}}""", InteractionFlaw.BadAttachment)]
    [InlineData(3, """{"custom_id":"x"}""", InteractionFlaw.BadComponent)]
    [InlineData(5, "{}", InteractionFlaw.BadForm)]
    [InlineData(5, """{"custom_id":"x","components":[{"type":18,"component":{"type":4,"value":"v"}}]}""", InteractionFlaw.BadForm)]
    [InlineData(5, """{"custom_id":"x","components":[{"type":18,"component":{"type":19,"custom_id":"f","values":["600"]}}]}""", InteractionFlaw.BadAttachment)]
    public void Read_DataIsIncomplete_SaysWhich(int type, string data, InteractionFlaw flaw) => Refused(InteractionJson.Wrap(type, data), flaw);

    [Fact]
    public void Read_AnyDamage_NeverThrows()
    {
        byte[][] good = [.. new[] { InteractionJson.Wrap(2, Command), InteractionJson.Wrap(5, Form), InteractionJson.Button() }.Select(Encoding.UTF8.GetBytes)];
        byte[] tokens = "{}[]\",:0123456789ntf\\u "u8.ToArray();
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Int[0, 10_000].Array[1, 4], Gen.Int[0, tokens.Length - 1]).Sample(
            (which, places, value) =>
            {
                byte[] bytes = [.. good[which]];
                foreach (int place in places)
                {
                    bytes[place % bytes.Length] = tokens[value];
                }

                bool read = InteractionReader.TryRead(bytes, 0, out Interaction? interaction, out InteractionFlaw flaw);
                Assert.Equal(read, flaw == InteractionFlaw.None);
                Assert.Equal(read, interaction is not null);
            },
            seed: "0000KzGxbuhA", iter: 20_000);
    }

    [Fact]
    public void Read_AsText_ShowsNoToken() => Assert.DoesNotContain("secret", Read(InteractionJson.Button()).ToString(), StringComparison.Ordinal);

    private static Interaction Read(string json)
    {
        Assert.True(InteractionReader.TryRead(Encoding.UTF8.GetBytes(json), 99, out Interaction? interaction, out InteractionFlaw flaw), flaw.ToString());
        return interaction!;
    }

    private static void Refused(string json, InteractionFlaw expected)
    {
        Assert.False(InteractionReader.TryRead(Encoding.UTF8.GetBytes(json), 99, out Interaction? interaction, out InteractionFlaw flaw));
        Assert.Null(interaction);
        Assert.Equal(expected, flaw);
    }
}
