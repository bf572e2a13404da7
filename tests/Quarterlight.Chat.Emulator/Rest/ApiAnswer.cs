using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Checks;

namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>An answer of the API.</summary>
/// <param name="Status">HTTP status.</param>
/// <param name="Body">JSON; null for none.</param>
internal sealed record ApiAnswer(int Status, JsonNode? Body)
{
    /// <summary>Done, nothing to tell.</summary>
    public static ApiAnswer NoContent { get; } = new(204, null);

    /// <summary>Error code in the body; null for none.</summary>
    public int? ErrorCode => Status >= 400 && Body is JsonObject o && o["code"] is JsonValue v ? v.GetValue<int>() : null;

    /// <summary>Done, with a result.</summary>
    public static ApiAnswer Ok(JsonNode body) => new(200, body);

    /// <summary>Refused.</summary>
    public static ApiAnswer Error(int status, int code, string message) => new(status, new JsonObject { ["message"] = message, ["code"] = code });

    /// <summary>Refused for what stands in the body (error 50035).</summary>
    public static ApiAnswer Form(FormErrors errors) =>
        new(400, new JsonObject { ["message"] = "Invalid Form Body", ["code"] = 50035, ["errors"] = errors.ToJson() });

    /// <summary>Refused for one field of the body.</summary>
    public static ApiAnswer Form(string path, string code, string message)
    {
        var errors = new FormErrors();
        errors.Add(path, code, message);
        return Form(errors);
    }
}
