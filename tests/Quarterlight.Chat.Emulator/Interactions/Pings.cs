using System.Text.Json;
using System.Text.RegularExpressions;
using Quarterlight.Chat.Emulator.Checks;

namespace Quarterlight.Chat.Emulator.Interactions;

/// <summary>Whom a text pings (Message resource, Allowed Mentions). Answers to interactions ping users when nothing else is said.</summary>
internal static partial class Pings
{
    /// <summary>The mentions of the text that are let through, as written.</summary>
    public static IReadOnlyList<string> Of(string content, JsonElement body)
    {
        JsonElement? allowed = body.Field("allowed_mentions");
        string[] parse = allowed is { } a ? [.. a.List("parse").Select(p => p.ToString())] : ["users"];
        return
        [
            .. User().Matches(content).Where(m => parse.Contains("users") || Lists(allowed, "users", m)).Select(m => m.Value),
            .. Role().Matches(content).Where(m => parse.Contains("roles") || Lists(allowed, "roles", m)).Select(m => m.Value),
            .. Everyone().Matches(content).Where(_ => parse.Contains("everyone")).Select(m => m.Value),
        ];
    }

    private static bool Lists(JsonElement? allowed, string kind, Match mention) =>
        allowed is { } a && a.List(kind).Any(id => id.ToString() == mention.Groups[1].Value);

    [GeneratedRegex(@"<@!?(\d+)>")]
    private static partial Regex User();

    [GeneratedRegex(@"<@&(\d+)>")]
    private static partial Regex Role();

    [GeneratedRegex("@(everyone|here)")]
    private static partial Regex Everyone();
}
