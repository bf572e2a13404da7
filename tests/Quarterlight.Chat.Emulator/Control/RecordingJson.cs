using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Recording;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Control;

/// <summary>Recorded things and visible messages as JSON.</summary>
internal static class RecordingJson
{
    /// <summary>An interaction and what came of it.</summary>
    public static JsonObject Of(SentInteraction sent) => new()
    {
        ["interaction"] = WorldJson.Text(sent.Id),
        ["firstAnswer"] = (int?)sent.FirstAnswer,
        ["acknowledgedAfterMs"] = sent.AcknowledgedAfter?.TotalMilliseconds,
        ["failed"] = sent.Failed,
        ["first"] = sent.First is { } first ? Of(first) : null,
        ["later"] = new JsonArray([.. sent.Later.Select(m => (JsonNode)Of(m))]),
        ["choices"] = sent.Choices is { } choices ? new JsonArray([.. choices.Select(c => (JsonNode)new JsonObject { ["name"] = c.Name, ["value"] = c.Value })]) : null,
        ["form"] = sent.Form is { } form ? new JsonObject { ["title"] = form.Title, ["fields"] = new JsonArray([.. form.Fields.Select(f => (JsonNode)f.CustomId)]) } : null,
    };

    /// <summary>A message.</summary>
    public static JsonObject Of(VisibleMessage message) => new()
    {
        ["id"] = WorldJson.Text(message.Id),
        ["content"] = message.Content,
        ["private"] = message.IsPrivate,
        ["loading"] = message.IsLoading,
        ["deleted"] = message.IsDeleted,
        ["edits"] = message.Edits,
        ["pings"] = new JsonArray([.. message.Pings.Select(p => (JsonNode)p)]),
        ["buttons"] = new JsonArray([.. message.Buttons.Select(b => (JsonNode)new JsonObject { ["label"] = b.Label, ["customId"] = b.CustomId })]),
        ["files"] = new JsonArray([.. message.Files.Select(f => (JsonNode)new JsonObject { ["name"] = f.Name, ["altText"] = f.AltText, ["url"] = f.Url, ["base64"] = Convert.ToBase64String(f.Bytes.Span) })]),
    };

    /// <summary>A request.</summary>
    public static JsonObject Of(RecordedRequest request) => new()
    {
        ["method"] = request.Method,
        ["path"] = request.Path,
        ["query"] = request.Query,
        ["route"] = request.Route,
        ["status"] = request.Status,
        ["code"] = request.ErrorCode,
        ["fault"] = request.Fault,
        ["headers"] = new JsonObject(request.Headers.Select(h => KeyValuePair.Create(h.Key.ToLowerInvariant(), (JsonNode?)h.Value))),
        ["parts"] = new JsonArray([.. request.Parts.Select(p => (JsonNode)new JsonObject { ["name"] = p.Name, ["fileName"] = p.FileName, ["contentType"] = p.ContentType, ["byteCount"] = p.ByteCount })]),
        ["json"] = request.Json is null ? null : JsonNode.Parse(request.Json),
    };

    /// <summary>A gateway event.</summary>
    public static JsonObject Of(RecordedFrame frame) => new()
    {
        ["connection"] = frame.Connection,
        ["kind"] = frame.Kind.ToString(),
        ["op"] = frame.Op,
        ["event"] = frame.Event,
        ["sequence"] = frame.Sequence,
        ["text"] = frame.Text,
        ["closeCode"] = frame.CloseCode,
        ["byPlatform"] = frame.ByPlatform,
    };
}
