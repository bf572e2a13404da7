using Grpc.Core;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew;

/// <summary>How the desk calls the planner.</summary>
public sealed record CrewDeskOptions
{
    /// <summary>Default of <see cref="Deadline"/>.</summary>
    public static readonly TimeSpan DefaultDeadline = TimeSpan.FromSeconds(20);

    /// <summary>Default of <see cref="ClipDeadline"/>.</summary>
    public static readonly TimeSpan DefaultClipDeadline = TimeSpan.FromMinutes(10);

    /// <summary>Default of <see cref="ClipStall"/>.</summary>
    public static readonly TimeSpan DefaultClipStall = TimeSpan.FromSeconds(60);

    /// <summary>Longest wait for a clip to be sent and judged; above zero.</summary>
    public TimeSpan ClipDeadline { get; init; } = DefaultClipDeadline;

    /// <summary>Longest time without a piece sent or a word from the planner before a clip is given up; above zero.</summary>
    public TimeSpan ClipStall { get; init; } = DefaultClipStall;

    /// <summary>Longest wait for one call other than a clip; above zero.</summary>
    public TimeSpan Deadline { get; init; } = DefaultDeadline;

    /// <summary>Clock the deadline is counted on.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Where the planner is, as the crew knows it, for the sentence that says it cannot be reached; may be empty.</summary>
    public string PlannerAddress { get; init; } = "";
}

/// <summary>The contract's services over one call invoker.</summary>
internal sealed class PlannerClients(CallInvoker invoker, CrewDeskOptions options)
{
    private const int PageSize = 200;

    public PlacementService.PlacementServiceClient Placement { get; } = new(invoker);

    public SceneService.SceneServiceClient Scenes { get; } = new(invoker);

    public CabinService.CabinServiceClient Cabins { get; } = new(invoker);

    public KitService.KitServiceClient Kits { get; } = new(invoker);

    public RadioService.RadioServiceClient Radio { get; } = new(invoker);

    public ClipService.ClipServiceClient Clips { get; } = new(invoker);

    public EnduranceService.EnduranceServiceClient Endurance { get; } = new(invoker);

    public NoiseService.NoiseServiceClient Noise { get; } = new(invoker);

    public TeamService.TeamServiceClient Team { get; } = new(invoker);

    public CrewDeskOptions Desk => options;

    public CallOptions Options(CancellationToken cancellation) =>
        new(deadline: options.Clock.GetUtcNow().UtcDateTime + options.Deadline, cancellationToken: cancellation);

    /// <summary>The team's own words, all lists read at once.</summary>
    public async Task<CrewVocabulary> VocabularyAsync(CancellationToken cancellation)
    {
        Task<IReadOnlyList<Scene>> scenes = AllScenesAsync(cancellation);
        Task<IReadOnlyList<Cabin>> cabins = AllCabinsAsync(cancellation);
        Task<IReadOnlyList<Kit>> kits = AllKitsAsync(cancellation);
        await Task.WhenAll(scenes, cabins, kits).ConfigureAwait(false);
        return new CrewVocabulary(await scenes.ConfigureAwait(false), await cabins.ConfigureAwait(false), await kits.ConfigureAwait(false));
    }

    public async Task<IReadOnlyList<Scene>> AllScenesAsync(CancellationToken cancellation)
    {
        var all = new List<Scene>();
        var request = new ListScenesRequest { PageSize = PageSize };
        do
        {
            ListScenesResponse page = await Scenes.ListScenesAsync(request, Options(cancellation)).ConfigureAwait(false);
            all.AddRange(page.Scenes);
            request.PageToken = page.NextPageToken;
        }
        while (request.PageToken.Length > 0);
        return all;
    }

    public async Task<IReadOnlyList<Cabin>> AllCabinsAsync(CancellationToken cancellation)
    {
        var all = new List<Cabin>();
        var request = new ListCabinsRequest { PageSize = PageSize };
        do
        {
            ListCabinsResponse page = await Cabins.ListCabinsAsync(request, Options(cancellation)).ConfigureAwait(false);
            all.AddRange(page.Cabins);
            request.PageToken = page.NextPageToken;
        }
        while (request.PageToken.Length > 0);
        return all;
    }

    public async Task<IReadOnlyList<Kit>> AllKitsAsync(CancellationToken cancellation)
    {
        var all = new List<Kit>();
        var request = new ListKitsRequest { PageSize = PageSize };
        do
        {
            ListKitsResponse page = await Kits.ListKitsAsync(request, Options(cancellation)).ConfigureAwait(false);
            all.AddRange(page.Kits);
            request.PageToken = page.NextPageToken;
        }
        while (request.PageToken.Length > 0);
        return all;
    }
}
