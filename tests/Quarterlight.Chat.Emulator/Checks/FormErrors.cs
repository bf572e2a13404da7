using System.Text.Json.Nodes;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>What is wrong with a body, by the path of the field, in the shape of error 50035 (API reference, Error Messages).</summary>
internal sealed class FormErrors
{
    private readonly JsonObject root = [];

    /// <summary>True once anything was added.</summary>
    public bool Any => root.Count > 0;

    /// <summary>Adds a fault.</summary>
    /// <param name="path">Names and places with dots between, such as data.embeds.0.title; empty for the body itself.</param>
    /// <param name="code">Code of the fault.</param>
    /// <param name="message">The fault in words.</param>
    public void Add(string path, string code, string message)
    {
        JsonObject here = root;
        foreach (string step in path.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if (here[step] is not JsonObject next)
            {
                here[step] = next = [];
            }

            here = next;
        }

        if (here["_errors"] is not JsonArray list)
        {
            here["_errors"] = list = [];
        }

        list.Add(new JsonObject { ["code"] = code, ["message"] = message });
    }

    /// <summary>The value of "errors".</summary>
    public JsonObject ToJson() => (JsonObject)root.DeepClone();
}
