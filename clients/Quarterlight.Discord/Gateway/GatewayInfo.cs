namespace Quarterlight.Discord.Gateway;

/// <summary>Where the gateway is and how often it may be identified with (Get Gateway Bot, Session Start Limit Object).</summary>
/// <param name="Address">Address of the gateway, without query.</param>
/// <param name="ShardCount">Connections the platform recommends.</param>
/// <param name="TotalIdentifies">Identifies allowed in a day.</param>
/// <param name="RemainingIdentifies">Identifies left.</param>
/// <param name="ResetAfter">Time until all are given back.</param>
/// <param name="MaxConcurrency">Identifies allowed in five seconds.</param>
public sealed record GatewayInfo(Uri Address, int ShardCount, int TotalIdentifies, int RemainingIdentifies, TimeSpan ResetAfter, int MaxConcurrency);
