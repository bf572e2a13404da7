namespace Quarterlight.Discord.Rest;

/// <summary>Answers interactions over REST. Answers of an interaction that came over the gateway always go this way (Receiving and Responding).</summary>
/// <param name="client">The process's client.</param>
/// <param name="files">Fetches files of interactions.</param>
public sealed class RestResponder(RestClient client, AttachmentFetcher files) : IInteractionResponder
{
    private const long MostRequestBytes = 25L * 1024 * 1024;

    /// <inheritdoc/>
    public Task DeferAsync(InteractionTicket ticket, bool isPrivate, CancellationToken cancellation) =>
        AnswerAsync(ticket, RestBody.OfJson(json => MessageJson.Defer(json, isPrivate)), cancellation);

    /// <inheritdoc/>
    public Task ReplyAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation) =>
        AnswerAsync(ticket, RestBody.Of(json => MessageJson.Reply(json, message), message.Files), cancellation);

    /// <inheritdoc/>
    public Task OfferAsync(InteractionTicket ticket, IReadOnlyList<OutgoingChoice> choices, CancellationToken cancellation) =>
        AnswerAsync(ticket, RestBody.OfJson(json => MessageJson.Choices(json, choices)), cancellation);

    /// <inheritdoc/>
    public Task OpenFormAsync(InteractionTicket ticket, OutgoingForm form, CancellationToken cancellation) =>
        AnswerAsync(ticket, RestBody.OfJson(json => MessageJson.Form(json, form)), cancellation);

    /// <inheritdoc/>
    public Task EditFirstAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation) =>
        SendAsync(new RestCall(RestRoute.EditFirst(ticket), RestBody.Of(json => MessageJson.Edit(json, message), message.Files)), cancellation);

    /// <inheritdoc/>
    public async Task DeleteFirstAsync(InteractionTicket ticket, CancellationToken cancellation)
    {
        try
        {
            await SendAsync(new RestCall(RestRoute.DeleteFirst(ticket)), cancellation).ConfigureAwait(false);
        }
        catch (DiscordException e) when (e.Code == RestClient.UnknownMessage)
        {
            // It is gone, by this try, one before it or a user: that is what was asked for.
        }
    }

    /// <inheritdoc/>
    public Task FollowUpAsync(InteractionTicket ticket, OutgoingMessage message, CancellationToken cancellation) =>
        SendAsync(new RestCall(RestRoute.FollowUp(ticket), RestBody.Of(json => MessageJson.Create(json, message), message.Files)), cancellation);

    /// <inheritdoc/>
    public Task<Stream> OpenAttachmentAsync(DiscordAttachment attachment, long mostBytes, CancellationToken cancellation) =>
        files.OpenAsync(attachment, mostBytes, cancellation);

    private Task<RestAnswer> AnswerAsync(InteractionTicket ticket, RestBody body, CancellationToken cancellation)
    {
        long received = ticket.ReceivedTimestamp ?? client.Time.GetTimestamp();
        long last = received + (long)(RestClient.LastFirstAnswer.TotalSeconds * client.Time.TimestampFrequency);
        return SendAsync(new RestCall(RestRoute.Callback(ticket), body) { LastStart = last }, cancellation);
    }

    private Task<RestAnswer> SendAsync(RestCall call, CancellationToken cancellation) => call.Body?.Length > MostRequestBytes
        ? throw new DiscordException(DiscordFault.TooLarge, $"{call.Route}: not sent, larger than the platform takes")
        : client.SendAsync(call, cancellation);
}
