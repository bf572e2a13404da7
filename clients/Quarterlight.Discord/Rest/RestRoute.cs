using System.Globalization;

namespace Quarterlight.Discord.Rest;

/// <summary>When a request may be sent again.</summary>
internal enum RestRepeat
{
    /// <summary>After anything that may pass: doing it twice does no harm.</summary>
    Safe,

    /// <summary>Only when it is certain that it was not taken: 429, or no connection was made.</summary>
    Unsafe,

    /// <summary>Once, within 2.5 s of receipt: the platform refuses a second first answer, so a double is found out.</summary>
    FirstAnswer,
}

/// <summary>One kind of request to one address. Its text is the template, never the address: the address of an interaction is a password.</summary>
internal sealed class RestRoute
{
    private RestRoute(HttpMethod method, string template, string path, string top, RestRepeat repeat, bool isInteraction)
    {
        IsInteraction = isInteraction;
        Method = method;
        Template = template;
        Path = path;
        Top = top;
        Repeat = repeat;
    }

    /// <summary>Method.</summary>
    public HttpMethod Method { get; }

    /// <summary>Path with ids and tokens replaced, for logs and metrics.</summary>
    public string Template { get; }

    /// <summary>Path below the base address. Secret.</summary>
    public string Path { get; }

    /// <summary>Top-level resource: buckets are told apart by it (Rate Limits: channel, guild, webhook id with token). Secret.</summary>
    public string Top { get; }

    /// <summary>When it may be sent again.</summary>
    public RestRepeat Repeat { get; }

    /// <summary>True when it needs the bot's token and counts against the bot's global limit.</summary>
    public bool IsBot => !IsInteraction;

    /// <summary>True when the credential is the interaction's token.</summary>
    public bool IsInteraction { get; }

    /// <summary>First answer to an interaction.</summary>
    public static RestRoute Callback(InteractionTicket ticket) => new(
        HttpMethod.Post, "/interactions/{id}/{token}/callback", $"/interactions/{Text(ticket.InteractionId)}/{Escape(ticket)}/callback",
        WebhookTop(ticket), RestRepeat.FirstAnswer, isInteraction: true);

    /// <summary>Change of the first answer.</summary>
    public static RestRoute EditFirst(InteractionTicket ticket) => First(HttpMethod.Patch, ticket);

    /// <summary>Removal of the first answer.</summary>
    public static RestRoute DeleteFirst(InteractionTicket ticket) => First(HttpMethod.Delete, ticket);

    /// <summary>One more message. Waits for the platform's word, because without it a message that was not kept is no error (Webhook Resource, Execute Webhook).</summary>
    public static RestRoute FollowUp(InteractionTicket ticket) => new(
        HttpMethod.Post, "/webhooks/{id}/{token}", $"/webhooks/{Text(ticket.ApplicationId)}/{Escape(ticket)}?wait=true", WebhookTop(ticket), RestRepeat.Unsafe, isInteraction: true);

    /// <summary>Commands of the application, or those it has in one server.</summary>
    public static RestRoute Commands(HttpMethod method, ulong applicationId, ulong? guildId) => guildId is { } guild
        ? new(method, "/applications/{id}/guilds/{id}/commands", $"/applications/{Text(applicationId)}/guilds/{Text(guild)}/commands", $"g{Text(guild)}", RestRepeat.Safe, isInteraction: false)
        : new(method, "/applications/{id}/commands", $"/applications/{Text(applicationId)}/commands", "", RestRepeat.Safe, isInteraction: false);

    /// <summary>The application the token belongs to.</summary>
    public static RestRoute OwnApplication() => new(HttpMethod.Get, "/applications/@me", "/applications/@me", "", RestRepeat.Safe, isInteraction: false);

    /// <summary>Where the gateway is.</summary>
    public static RestRoute GatewayBot() => new(HttpMethod.Get, "/gateway/bot", "/gateway/bot", "", RestRepeat.Safe, isInteraction: false);

    /// <inheritdoc/>
    public override string ToString() => $"{Method} {Template}";

    private static RestRoute First(HttpMethod method, InteractionTicket ticket) => new(
        method, "/webhooks/{id}/{token}/messages/@original", $"/webhooks/{Text(ticket.ApplicationId)}/{Escape(ticket)}/messages/@original",
        WebhookTop(ticket), RestRepeat.Safe, isInteraction: true);

    private static string WebhookTop(InteractionTicket ticket) => $"w{Text(ticket.ApplicationId)}/{ticket.Token}";

    private static string Text(ulong id) => id.ToString(CultureInfo.InvariantCulture);

    // The token comes from outside in the end: it must not be able to change the path.
    private static string Escape(InteractionTicket ticket) => Uri.EscapeDataString(ticket.Token);
}
