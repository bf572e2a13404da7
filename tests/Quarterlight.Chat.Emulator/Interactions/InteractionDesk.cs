using System.Text.Json;
using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Interactions;

/// <summary>
/// Takes first answers, changes and follow-ups, and refuses what the platform refuses (Interactions: Receiving and Responding; Opcodes and Status Codes).
/// Everything here runs under the platform's lock.
/// </summary>
internal sealed class InteractionDesk(EmulatedPlatform platform)
{
    private const long DeferralFlags = MessageFlags.Ephemeral;
    private readonly Dictionary<string, SentInteraction> byToken = [];
    private readonly Dictionary<ulong, StoredMessage> messages = [];
    private readonly MessageWriter writer = new(platform);

    /// <summary>All interactions sent so far.</summary>
    public IReadOnlyCollection<SentInteraction> All => byToken.Values;

    /// <summary>Makes an interaction known, so that it can be answered.</summary>
    public void Add(SentInteraction interaction) => byToken.Add(interaction.Token, interaction);

    /// <summary>Keeps a message somebody wrote.</summary>
    public void Add(StoredMessage message) => messages[message.Id] = message;

    /// <summary>A message by its id; null when there is none.</summary>
    public StoredMessage? Message(ulong id) => messages.GetValueOrDefault(id);

    /// <summary>The first answer over REST: the callback.</summary>
    public ApiAnswer Callback(string idText, string token, RequestBody body, bool withResponse)
    {
        if (!byToken.TryGetValue(token, out SentInteraction? asked) || WorldJson.Text(asked.Id) != idText)
        {
            return ApiAnswer.Error(404, 10062, "Unknown interaction");
        }

        ApiAnswer answer = First(asked, body);
        if (answer.Status != 204 || !withResponse)
        {
            return answer;
        }

        JsonObject json = CallbackResult(asked);
        platform.Recording.Sent("in:callbackResponse", json);
        return ApiAnswer.Ok(json);
    }

    /// <summary>A first answer, whichever way it came: 204 when taken.</summary>
    public ApiAnswer First(SentInteraction asked, RequestBody body)
    {
        if (asked.FirstAnswer is not null)
        {
            return ApiAnswer.Error(400, 40060, "Interaction has already been acknowledged.");
        }

        if (platform.Clock.GetElapsedTime(asked.SentTimestamp) > platform.Options.FirstAnswer)
        {
            return ApiAnswer.Error(404, 10062, "Unknown interaction");
        }

        if (body.TooLargeFile(platform.Options.AttachmentLimitBytes) is { } tooLarge)
        {
            return tooLarge;
        }

        var errors = new FormErrors();
        CallbackChecks.Check(asked, body, writer, errors);
        if (errors.Any)
        {
            return ApiAnswer.Form(errors);
        }

        var type = (FirstAnswerKind)body.Json!.Value.Whole("type")!.Value;
        JsonElement data = body.Json.Value.Field("data") ?? default;
        if (type is FirstAnswerKind.Message && MessageWriter.IsEmpty(data, body.Files))
        {
            return ApiAnswer.Error(400, 50006, "Cannot send an empty message");
        }

        Take(asked, type, data, body);
        return ApiAnswer.NoContent;
    }

    /// <summary>One more message.</summary>
    public ApiAnswer FollowUp(string app, string token, RequestBody body)
    {
        if (Refusal(app, token, out SentInteraction asked) is { } refusal)
        {
            return refusal;
        }

        if (Faults(body, null, MessageFlags.OfAnswer) is { } faults)
        {
            return faults;
        }

        if (MessageWriter.IsEmpty(body.Json!.Value, body.Files))
        {
            return ApiAnswer.Error(400, 50006, "Cannot send an empty message");
        }

        if (asked.Original is { Loading: true, Deleted: false } waiting)
        {
            // Deprecated, yet so: right after a deferral the first follow-up fills the waiting message, and its privacy stays as it was.
            asked.UsedFollowUpAsEdit = true;
            writer.Change(waiting, body.Json.Value, body.Files);
            return Shown(waiting);
        }

        StoredMessage message = writer.Write(asked, body.Json.Value, body.Files);
        messages[message.Id] = message;
        asked.FollowUps.Add(message);
        return Shown(message);
    }

    /// <summary>Reads a message of the bot.</summary>
    public ApiAnswer Read(string app, string token, string id)
    {
        ApiAnswer? refusal = Refusal(app, token, out SentInteraction asked);
        return refusal ?? (Find(asked, id) is { } message ? Shown(message) : UnknownMessage());
    }

    /// <summary>Changes a message of the bot.</summary>
    public ApiAnswer Edit(string app, string token, string id, RequestBody body)
    {
        if (Refusal(app, token, out SentInteraction asked) is { } refusal)
        {
            return refusal;
        }

        if (Find(asked, id) is not { } message)
        {
            return UnknownMessage();
        }

        if (Faults(body, message, MessageFlags.OfEdit) is { } faults)
        {
            return faults;
        }

        if (MessageWriter.WouldBeEmpty(message, body.Json!.Value, body.Files))
        {
            return ApiAnswer.Error(400, 50006, "Cannot send an empty message");
        }

        writer.Change(message, body.Json.Value, body.Files);
        return Shown(message);
    }

    /// <summary>Takes a message of the bot away.</summary>
    public ApiAnswer Delete(string app, string token, string id)
    {
        if (Refusal(app, token, out SentInteraction asked) is { } refusal)
        {
            return refusal;
        }

        if (Find(asked, id) is not { } message)
        {
            return UnknownMessage();
        }

        message.Deleted = true;
        platform.Changes.Raise();
        return ApiAnswer.NoContent;
    }

    private void Take(SentInteraction asked, FirstAnswerKind type, JsonElement data, RequestBody body)
    {
        switch (type)
        {
            case FirstAnswerKind.Message:
                asked.Original = writer.Write(asked, data, body.Files);
                messages[asked.Original.Id] = asked.Original;
                break;
            case FirstAnswerKind.DeferredMessage:
                asked.Original = writer.Wait(asked, (data.Whole("flags") ?? 0) & DeferralFlags);
                messages[asked.Original.Id] = asked.Original;
                break;
            case FirstAnswerKind.DeferredUpdate:
                asked.Original = asked.On;
                break;
            case FirstAnswerKind.Update:
                asked.Original = asked.On;
                writer.Change(asked.On!, data, body.Files);
                break;
            case FirstAnswerKind.Choices:
                asked.TakeChoices(data);
                break;
            case FirstAnswerKind.Form:
                asked.TakeForm(data);
                break;
        }

        asked.Acknowledge(type);
        platform.Changes.Raise();
    }

    private JsonObject CallbackResult(SentInteraction asked)
    {
        var interaction = new JsonObject { ["id"] = WorldJson.Text(asked.Id), ["type"] = (int)asked.Kind };
        var json = new JsonObject { ["interaction"] = interaction };
        if (asked is { Original: { } message, FirstAnswer: { } first })
        {
            interaction["response_message_id"] = WorldJson.Text(message.Id);
            interaction["response_message_loading"] = message.Loading;
            interaction["response_message_ephemeral"] = message.Ephemeral;
            json["resource"] = new JsonObject { ["type"] = (int)first, ["message"] = message.ToJson(platform) };
        }

        return json;
    }

    private ApiAnswer? Refusal(string app, string token, out SentInteraction asked)
    {
        if (app != WorldJson.Text(platform.ApplicationId) || !byToken.TryGetValue(token, out asked!))
        {
            asked = null!;
            return ApiAnswer.Error(404, 10015, "Unknown Webhook");
        }

        if (platform.Clock.GetElapsedTime(asked.SentTimestamp) > platform.Options.TokenLife || asked.TokenKilled)
        {
            return ApiAnswer.Error(401, 50027, "Invalid Webhook Token");
        }

        return asked.FirstAnswer is null ? ApiAnswer.Error(404, 10015, "Unknown Webhook") : null;
    }

    private ApiAnswer? Faults(RequestBody body, StoredMessage? kept, long flags)
    {
        if (body.TooLargeFile(platform.Options.AttachmentLimitBytes) is { } tooLarge)
        {
            return tooLarge;
        }

        var errors = new FormErrors();
        writer.Checks.Check(body.Json ?? default, "", body.Files, kept?.Files, flags, errors);
        return errors.Any ? ApiAnswer.Form(errors) : null;
    }

    private static StoredMessage? Find(SentInteraction asked, string id)
    {
        StoredMessage? found = id == "@original"
            ? asked.Original
            : asked.FollowUps.Append(asked.Original).FirstOrDefault(m => m is not null && WorldJson.Text(m.Id) == id);
        return found is { Deleted: false } ? found : null;
    }

    private ApiAnswer Shown(StoredMessage message)
    {
        platform.Changes.Raise();
        JsonObject json = message.ToJson(platform);
        platform.Recording.Sent("in:message", json);
        return ApiAnswer.Ok(json);
    }

    private static ApiAnswer UnknownMessage() => ApiAnswer.Error(404, 10008, "Unknown Message");
}
