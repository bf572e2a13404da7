using System.Text.Json;
using Quarterlight.Discord.Gateway;

namespace Quarterlight.Discord.Rest;

/// <summary>Asks where the gateway is and how often a session may still be started (Gateway, Get Gateway Bot). The answer is not to be kept for long.</summary>
/// <param name="client">The process's client; needs the bot's token.</param>
public sealed class GatewayInfoReader(RestClient client)
{
    /// <summary>Asks.</summary>
    /// <exception cref="DiscordException">See <see cref="DiscordFault"/>; <see cref="DiscordFault.Unavailable"/> also when the answer cannot be read.</exception>
    public async Task<GatewayInfo> ReadAsync(CancellationToken cancellation)
    {
        const string What = "the gateway";
        RestAnswer answer = await client.SendAsync(new RestCall(RestRoute.GatewayBot()), cancellation).ConfigureAwait(false);
        using JsonDocument document = RestJson.Parse(answer, What);
        JsonElement root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object
            || !root.TryGetProperty("url", out JsonElement url) || url.ValueKind != JsonValueKind.String || !Uri.TryCreate(url.GetString(), UriKind.Absolute, out Uri? address)
            || !root.TryGetProperty("session_start_limit", out JsonElement limit)
            || RestJson.Whole(limit, "total") is not { } total || RestJson.Whole(limit, "remaining") is not { } remaining
            || RestJson.Whole(limit, "reset_after") is not { } reset)
        {
            throw RestJson.Unreadable(What);
        }

        return new GatewayInfo(
            address,
            (int)(RestJson.Whole(root, "shards") ?? 1),
            (int)total,
            (int)remaining,
            TimeSpan.FromMilliseconds(reset),
            (int)(RestJson.Whole(limit, "max_concurrency") ?? 1));
    }
}
