using System.Globalization;
using System.Text.Json.Nodes;

namespace Quarterlight.Chat.Emulator.World;

/// <summary>Users, members, channels and servers as the platform writes them (User, Guild and Channel resources).</summary>
internal static class WorldJson
{
    private const string JoinedAt = "2025-01-01T00:00:00.000000+00:00";
    private const int GuildText = 0;
    private const int DirectMessage = 1;

    /// <summary>An id on the wire.</summary>
    public static string Text(ulong id) => id.ToString(CultureInfo.InvariantCulture);

    /// <summary>A person.</summary>
    public static JsonObject User(EmulatedUser user) => new()
    {
        ["id"] = Text(user.Id),
        ["username"] = user.Name,
        ["discriminator"] = "0",
        ["global_name"] = user.Name,
        ["avatar"] = null,
        ["public_flags"] = 0,
    };

    /// <summary>The bot's own account.</summary>
    public static JsonObject Bot(ulong id, string name) => new()
    {
        ["id"] = Text(id),
        ["username"] = name,
        ["discriminator"] = "0",
        ["global_name"] = null,
        ["avatar"] = null,
        ["bot"] = true,
        ["flags"] = 0,
    };

    /// <summary>A person on a server, with the bits that hold in the channel.</summary>
    public static JsonObject Member(JsonObject user, ulong? permissions)
    {
        var member = new JsonObject
        {
            ["user"] = user,
            ["nick"] = null,
            ["avatar"] = null,
            ["banner"] = null,
            ["roles"] = new JsonArray(),
            ["joined_at"] = JoinedAt,
            ["premium_since"] = null,
            ["deaf"] = false,
            ["mute"] = false,
            ["flags"] = 0,
            ["pending"] = false,
            ["communication_disabled_until"] = null,
        };
        if (permissions is { } bits)
        {
            member["permissions"] = Text(bits);
        }

        return member;
    }

    /// <summary>A channel as it stands in an interaction.</summary>
    public static JsonObject Channel(EmulatedChannel channel, EmulatedUser? other) => channel.Guild is { } guild
        ? new()
        {
            ["id"] = Text(channel.Id),
            ["type"] = GuildText,
            ["guild_id"] = Text(guild.Id),
            ["name"] = channel.Name,
            ["position"] = 0,
            ["permission_overwrites"] = new JsonArray(),
            ["parent_id"] = null,
            ["topic"] = null,
            ["nsfw"] = false,
            ["last_message_id"] = null,
            ["rate_limit_per_user"] = 0,
            ["flags"] = 0,
        }
        : new()
        {
            ["id"] = Text(channel.Id),
            ["type"] = DirectMessage,
            ["last_message_id"] = null,
            ["flags"] = 0,
            ["name"] = null,
            ["recipients"] = other is null ? new JsonArray() : new JsonArray(User(other)),
        };

    /// <summary>A server as GUILD_CREATE tells it.</summary>
    public static JsonObject Guild(EmulatedGuild guild, JsonObject bot) => new()
    {
        ["id"] = Text(guild.Id),
        ["name"] = guild.Name,
        ["icon"] = null,
        ["description"] = null,
        ["splash"] = null,
        ["discovery_splash"] = null,
        ["banner"] = null,
        ["features"] = new JsonArray(),
        ["emojis"] = new JsonArray(),
        ["stickers"] = new JsonArray(),
        ["owner_id"] = Text(guild.Id),
        ["application_id"] = null,
        ["region"] = "deprecated",
        ["afk_channel_id"] = null,
        ["afk_timeout"] = 300,
        ["system_channel_id"] = null,
        ["system_channel_flags"] = 0,
        ["widget_enabled"] = false,
        ["widget_channel_id"] = null,
        ["verification_level"] = 0,
        ["default_message_notifications"] = 0,
        ["mfa_level"] = 0,
        ["explicit_content_filter"] = 0,
        ["max_members"] = 500_000,
        ["max_presences"] = null,
        ["rules_channel_id"] = null,
        ["public_updates_channel_id"] = null,
        ["safety_alerts_channel_id"] = null,
        ["vanity_url_code"] = null,
        ["premium_tier"] = 0,
        ["premium_subscription_count"] = 0,
        ["premium_progress_bar_enabled"] = false,
        ["preferred_locale"] = guild.Locale,
        ["nsfw_level"] = 0,
        ["incidents_data"] = null,
        ["hub_type"] = null,
        ["roles"] = new JsonArray(Everyone(guild)),
        ["joined_at"] = JoinedAt,
        ["large"] = false,
        ["unavailable"] = false,
        ["member_count"] = 2,
        ["voice_states"] = new JsonArray(),
        ["members"] = new JsonArray(Member(bot, null)),
        ["channels"] = new JsonArray([.. guild.Channels.Select(c => Channel(c, null))]),
        ["threads"] = new JsonArray(),
        ["presences"] = new JsonArray(),
        ["stage_instances"] = new JsonArray(),
        ["guild_scheduled_events"] = new JsonArray(),
        ["soundboard_sounds"] = new JsonArray(),
    };

    private static JsonObject Everyone(EmulatedGuild guild) => new()
    {
        ["id"] = Text(guild.Id),
        ["name"] = "@everyone",
        ["color"] = 0,
        ["colors"] = new JsonObject { ["primary_color"] = 0, ["secondary_color"] = null, ["tertiary_color"] = null },
        ["hoist"] = false,
        ["icon"] = null,
        ["unicode_emoji"] = null,
        ["position"] = 0,
        ["permissions"] = Text(Permissions.ViewChannel | Permissions.SendMessages | Permissions.UseApplicationCommands),
        ["managed"] = false,
        ["mentionable"] = false,
        ["flags"] = 0,
    };
}
