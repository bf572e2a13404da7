namespace Quarterlight.Discord.Tests.Support;

/// <summary>Interactions as the platform writes them (Receiving and Responding).</summary>
internal static class InteractionJson
{
    /// <summary>A pressed button.</summary>
    public static string Button(ulong id = 77) => Wrap(3, """{"component_type":2,"custom_id":"q1:abcdefgh:0"}""", id, ""","message":{"id":"900"}""");

    /// <summary>An interaction of a kind with its data.</summary>
    public static string Wrap(int type, string data, ulong id = 77, string more = "") => $$$"""
        {"id":"{{{id}}}","application_id":"5","type":{{{type}}},"data":{{{data}}},"guild_id":"30","channel_id":"31",
         "member":{"user":{"id":"40","username":"nobody"},"permissions":"2147483648"},"token":"secret-interaction-token","version":1,
         "locale":"en-GB","app_permissions":"274877959168","entitlements":[],"authorizing_integration_owners":{},"attachment_size_limit":524288{{{more}}}}
        """;
}
