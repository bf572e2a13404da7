using Grpc.Core;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>Reads and writes what the team settled on.</summary>
internal sealed class TeamSettingsClient(PlannerClients planner)
{
    /// <summary>The settings.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public async Task<TeamSettings> ReadAsync(CancellationToken cancellation) => Of(await GetAsync(cancellation).ConfigureAwait(false));

    /// <summary>The settings, or none when the planner is away or too old for them: they are never worth failing an answer for.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<TeamSettings> TryReadAsync(CancellationToken cancellation)
    {
        try
        {
            return await ReadAsync(cancellation).ConfigureAwait(false);
        }
        catch (RpcException)
        {
            cancellation.ThrowIfCancellationRequested();
            return TeamSettings.None;
        }
    }

    /// <summary>Changes the settings; a colleague may change another at the same moment, so it is tried once more on top of theirs.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public async Task<TeamSettings> WriteAsync(Func<TeamSettings, TeamSettings> change, CancellationToken cancellation)
    {
        for (int attempt = 1; ; attempt++)
        {
            V1.TeamSettings kept = await GetAsync(cancellation).ConfigureAwait(false);
            TeamSettings wanted = change(Of(kept));
            V1.TeamSettings next = kept.Clone();
            next.Units = wanted.Units switch { UnitPreference.Metric => UnitSystem.Metric, UnitPreference.Imperial => UnitSystem.Imperial, _ => UnitSystem.Unspecified };
            next.CountryCode = wanted.CountryCode ?? "";
            try
            {
                UpdateTeamSettingsResponse response = await planner.Team.UpdateTeamSettingsAsync(new() { Settings = next }, planner.Options(cancellation)).ConfigureAwait(false);
                return Of(response.Settings ?? next);
            }
            catch (RpcException e) when (e.StatusCode == StatusCode.Aborted && attempt == 1)
            {
                // Once more, on top of what is there now.
            }
        }
    }

    private async Task<V1.TeamSettings> GetAsync(CancellationToken cancellation) =>
        (await planner.Team.GetTeamSettingsAsync(new GetTeamSettingsRequest(), planner.Options(cancellation)).ConfigureAwait(false)).Settings ?? new V1.TeamSettings();

    private static TeamSettings Of(V1.TeamSettings kept) => new(
        kept.Units switch { UnitSystem.Metric => UnitPreference.Metric, UnitSystem.Imperial => UnitPreference.Imperial, _ => null },
        kept.CountryCode.Length > 0 ? kept.CountryCode : null);
}
