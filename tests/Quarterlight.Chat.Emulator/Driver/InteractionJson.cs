using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>Writes interactions (Interactions: Interaction Structure).</summary>
internal static class InteractionJson
{
    private const int InGuild = 0;
    private const int InPrivate = 1;

    /// <summary>An interaction as sent to the bot.</summary>
    public static JsonObject Of(EmulatedPlatform platform, SentInteraction interaction, UserInChannel by, JsonObject data)
    {
        EmulatedChannel channel = by.Channel;
        JsonObject user = WorldJson.User(by.User);
        var json = new JsonObject
        {
            ["id"] = WorldJson.Text(interaction.Id),
            ["application_id"] = WorldJson.Text(platform.ApplicationId),
            ["type"] = (int)interaction.Kind,
            ["data"] = data,
            ["channel"] = WorldJson.Channel(channel, by.User),
            ["channel_id"] = WorldJson.Text(channel.Id),
            ["token"] = interaction.Token,
            ["version"] = 1,
            ["app_permissions"] = WorldJson.Text(channel.AppPermissions),
            ["locale"] = by.User.Locale,
            ["entitlements"] = new JsonArray(),
            ["authorizing_integration_owners"] = new JsonObject { ["0"] = channel.Guild is { } owner ? WorldJson.Text(owner.Id) : "0" },
            ["context"] = channel.Guild is null ? InPrivate : InGuild,
            ["attachment_size_limit"] = platform.Options.AttachmentLimitBytes,
        };
        if (channel.Guild is { } guild)
        {
            json["guild_id"] = WorldJson.Text(guild.Id);
            json["guild"] = new JsonObject { ["id"] = WorldJson.Text(guild.Id), ["features"] = new JsonArray(), ["locale"] = guild.Locale };
            json["guild_locale"] = guild.Locale;
            json["member"] = WorldJson.Member(user, channel.MemberPermissions);
        }
        else
        {
            json["user"] = user;
        }

        if (interaction.On is { } message)
        {
            json["message"] = message.ToJson(platform);
        }

        return json;
    }
}
