using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>Registers commands: reads what is there and writes only when it differs, because the platform counts registrations (200 new ones a day).</summary>
/// <param name="client">The process's client; needs the bot's token.</param>
/// <param name="applicationId">The application; null asks the platform whose the token is.</param>
public sealed class RestRegistry(RestClient client, ulong? applicationId = null) : ICommandRegistry
{
    /// <inheritdoc/>
    public async Task<bool> RegisterAsync(IReadOnlyList<CommandDefinition> commands, ulong? guildId, CancellationToken cancellation)
    {
        bool allServers = guildId is null;
        string scope = allServers ? "all servers" : "one server";
        RestBody body = RestBody.OfJson(json => CommandJson.Write(json, commands, allServers));
        ulong application = applicationId ?? await ReadApplicationAsync(cancellation).ConfigureAwait(false);
        RestAnswer now = await client.SendAsync(new RestCall(RestRoute.Commands(HttpMethod.Get, application, guildId)), cancellation).ConfigureAwait(false);
        using JsonDocument there = RestJson.Parse(now, "the list of commands");
        using var wanted = JsonDocument.Parse(body.Json);
        if (CommandComparison.Same(there.RootElement, wanted.RootElement, allServers))
        {
            client.Logger.RestRegisteredBefore(commands.Count, scope);
            return false;
        }

        await client.SendAsync(new RestCall(RestRoute.Commands(HttpMethod.Put, application, guildId), body), cancellation).ConfigureAwait(false);
        client.Logger.RestRegistered(commands.Count, scope);
        return true;
    }

    private async Task<ulong> ReadApplicationAsync(CancellationToken cancellation)
    {
        RestAnswer answer = await client.SendAsync(new RestCall(RestRoute.OwnApplication()), cancellation).ConfigureAwait(false);
        using JsonDocument application = RestJson.Parse(answer, "the application");
        return RestJson.Id(application.RootElement, "id") ?? throw RestJson.Unreadable("the application");
    }
}
