namespace Quarterlight.Discord;

/// <summary>Where the gateway is and how often a session may still be started (Gateway, Get Gateway Bot).</summary>
/// <param name="Url">Address to connect to, without query.</param>
/// <param name="Shards">Number of shards the platform recommends.</param>
/// <param name="SessionStartsTotal">Session starts allowed in a day.</param>
/// <param name="SessionStartsRemaining">Session starts left now.</param>
/// <param name="ResetAfter">Time until the number left is the total again.</param>
/// <param name="MaxConcurrency">Session starts allowed in 5 s.</param>
public sealed record GatewayInfo(
    Uri Url, int Shards, int SessionStartsTotal, int SessionStartsRemaining, TimeSpan ResetAfter, int MaxConcurrency);
