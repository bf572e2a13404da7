using Grpc.Core;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Commands;

/// <summary>The team's words and the sites of its cars, kept for a few seconds: while somebody types, every key asks for them.</summary>
internal sealed class TeamWords(PlannerClients planner)
{
    /// <summary>How long they are kept.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromSeconds(5);

    private const int MostCars = 32;

    private readonly Dictionary<string, (Task<IReadOnlyList<MountSite>> Sites, long Since)> sites = new(StringComparer.Ordinal);
    private readonly Lock gate = new();
    private Task<CrewVocabulary>? vocabulary;
    private long since;

    /// <summary>The vocabulary, at most <see cref="Kept"/> old.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public Task<CrewVocabulary> VocabularyAsync(CancellationToken cancellation)
    {
        lock (gate)
        {
            if (vocabulary is null || vocabulary.IsFaulted || vocabulary.IsCanceled || planner.Desk.Clock.GetElapsedTime(since) > Kept)
            {
                // Not called off with the key that asked first: the next key waits for the same.
                (vocabulary, since) = (planner.VocabularyAsync(CancellationToken.None), planner.Desk.Clock.GetTimestamp());
            }

            return vocabulary.WaitAsync(cancellation);
        }
    }

    /// <summary>Sites of a car, at most <see cref="Kept"/> old.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public Task<IReadOnlyList<MountSite>> SitesAsync(string cabinName, CancellationToken cancellation)
    {
        lock (gate)
        {
            if (!sites.TryGetValue(cabinName, out (Task<IReadOnlyList<MountSite>> Sites, long Since) kept) || kept.Sites.IsFaulted || kept.Sites.IsCanceled || planner.Desk.Clock.GetElapsedTime(kept.Since) > Kept)
            {
                if (sites.Count >= MostCars)
                {
                    sites.Clear();
                }

                sites[cabinName] = kept = (ReadSitesAsync(cabinName), planner.Desk.Clock.GetTimestamp());
            }

            return kept.Sites.WaitAsync(cancellation);
        }
    }

    /// <summary>Forgets what was read, after something was changed.</summary>
    public void Forget()
    {
        lock (gate)
        {
            vocabulary = null;
            sites.Clear();
        }
    }

    private async Task<IReadOnlyList<MountSite>> ReadSitesAsync(string cabinName) =>
        (await planner.Placement.ListMountSitesAsync(new() { Name = cabinName }, planner.Options(CancellationToken.None)).ConfigureAwait(false)).Sites;
}
