using Grpc.Core;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Commands;

/// <summary>Choices for an option while it is typed.</summary>
internal sealed class Completion(TeamWords words)
{
    /// <summary>Most choices, as the platforms allow.</summary>
    public const int Most = 25;

    private const int LongestName = 100;

    // Best first: how well what is typed fits.
    private const int Whole = 0, Beginning = 1, WordBeginning = 2, AllWords = 3, Inside = 4, Slips = 5;

    /// <summary>Best matches first, at most <see cref="Most"/>; with nothing typed the likeliest. None for an option without completion or when the planner is away.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<IReadOnlyList<CrewChoice>> OfAsync(CrewCommandCall call, string option, CrewMemory memory, CancellationToken cancellation)
    {
        CrewOptionKind? kind = CrewCommands.Find(call.Name)?.Options.FirstOrDefault(o => o.Name == option)?.Kind;
        string typed = CrewText.Clean(call.Values.GetValueOrDefault(option, ""), LongestName);
        try
        {
            CrewVocabulary vocabulary = await words.VocabularyAsync(cancellation).ConfigureAwait(false);
            return Best(typed, kind switch
            {
                CrewOptionKind.Scene => Scenes(vocabulary, memory),
                CrewOptionKind.Cabin => Newest(vocabulary.Cabins, c => c.UpdateTime?.ToDateTimeOffset(), c => new Offer(ResourceName.IdOf(c.Name), Named(c.DisplayName, c.Name))),
                CrewOptionKind.Kit => Newest(vocabulary.Kits, k => k.UpdateTime?.ToDateTimeOffset(), k => new Offer(ResourceName.IdOf(k.Name), Named(k.DisplayName, k.Name))),
                CrewOptionKind.Talker => (SceneOf(call, vocabulary, memory)?.Talkers ?? []).Select(t => new Offer(t.Id, $"{Named(t.DisplayName, t.Id)}, {Wordings.Seat(t.SeatId)}")),
                CrewOptionKind.Site => await SitesAsync(call, vocabulary, memory, cancellation).ConfigureAwait(false),
                _ => [],
            });
        }
        catch (RpcException) when (!cancellation.IsCancellationRequested)
        {
            // Typing goes on without help.
            return [];
        }
    }

    /// <summary>The car whose sites are meant: the scene's, or the one named.</summary>
    public static string? CabinOf(CrewCommandCall call, CrewVocabulary vocabulary, CrewMemory memory) =>
        Chosen(call, "car", vocabulary.Cabins, c => c.Name, c => c.DisplayName)?.Name ?? SceneOf(call, vocabulary, memory)?.Cabin;

    private async Task<IEnumerable<Offer>> SitesAsync(CrewCommandCall call, CrewVocabulary vocabulary, CrewMemory memory, CancellationToken cancellation)
    {
        if (CabinOf(call, vocabulary, memory) is not { Length: > 0 } cabin)
        {
            return [];
        }

        // Places near the talkers first: with nothing typed they are the likeliest.
        HashSet<string> seats = [.. (SceneOf(call, vocabulary, memory)?.Talkers ?? []).Select(t => t.SeatId)];
        IReadOnlyList<MountSite> all = await words.SitesAsync(cabin, cancellation).ConfigureAwait(false);
        return all.OrderBy(s => seats.Contains(s.SeatId) ? 0 : 1).Select(s => new Offer(s.Id, CrewText.Clean(s.Words, LongestName)));
    }

    private static IEnumerable<Offer> Scenes(CrewVocabulary vocabulary, CrewMemory memory) => vocabulary.Scenes
        .OrderBy(s => s.Name == memory.SceneName ? 0 : 1).ThenByDescending(s => s.UpdateTime?.ToDateTimeOffset() ?? DateTimeOffset.MinValue).ThenBy(s => s.Name, StringComparer.Ordinal)
        .Select(s => new Offer(ResourceName.IdOf(s.Name), $"{Named(s.DisplayName, s.Name)}, {Named(vocabulary.CabinOf(s)?.DisplayName ?? "", s.Cabin)}"));

    private static IEnumerable<Offer> Newest<T>(IReadOnlyList<T> all, Func<T, DateTimeOffset?> written, Func<T, Offer> offer) =>
        all.OrderByDescending(t => written(t) ?? DateTimeOffset.MinValue).Select(offer);

    private static Scene? SceneOf(CrewCommandCall call, CrewVocabulary vocabulary, CrewMemory memory) =>
        Chosen(call, "scene", vocabulary.Scenes, s => s.Name, s => s.DisplayName) ?? vocabulary.Scenes.FirstOrDefault(s => s.Name == memory.SceneName) ?? RequestReader.Latest(vocabulary.Scenes);

    private static T? Chosen<T>(CrewCommandCall call, string option, IReadOnlyList<T> all, Func<T, string> name, Func<T, string> displayName)
        where T : class => call.Values.TryGetValue(option, out string? value)
        ? all.FirstOrDefault(t => ResourceName.IdOf(name(t)) == value || name(t) == value || string.Equals(displayName(t), value, StringComparison.OrdinalIgnoreCase)) : null;

    private static IReadOnlyList<CrewChoice> Best(string typed, IEnumerable<Offer> offers)
    {
        string[] said = [.. Tokenizer.Split(typed).Select(t => t.Word)];
        return [.. offers.Where(o => o.Value.Length is > 0 and <= LongestName).Select((offer, order) => (offer, order, Fit: Fit(typed, said, offer))).Where(o => o.Fit is not null)
            .OrderBy(o => o.Fit).ThenBy(o => o.order).DistinctBy(o => o.offer.Value).Take(Most).Select(o => new CrewChoice(Cut(o.offer.Name.Length > 0 ? o.offer.Name : o.offer.Value), o.offer.Value))];
    }

    private static int? Fit(string typed, string[] said, Offer offer)
    {
        if (typed.Length == 0)
        {
            return Whole;
        }

        if (string.Equals(offer.Value, typed, StringComparison.OrdinalIgnoreCase) || string.Equals(offer.Name, typed, StringComparison.OrdinalIgnoreCase))
        {
            return Whole;
        }

        if (offer.Name.StartsWith(typed, StringComparison.OrdinalIgnoreCase) || offer.Value.StartsWith(typed, StringComparison.OrdinalIgnoreCase))
        {
            return Beginning;
        }

        string[] words = [.. Tokenizer.Split(offer.Name).Concat(Tokenizer.Split(offer.Value)).Select(t => t.Word)];
        if (said.Length > 0 && said.All(s => words.Any(w => w.StartsWith(s, StringComparison.Ordinal))))
        {
            return said.Length == 1 ? WordBeginning : AllWords;
        }

        if (offer.Name.Contains(typed, StringComparison.OrdinalIgnoreCase))
        {
            return Inside;
        }

        // Of a word half typed only its beginning can be compared.
        return said.Length > 0 && said.All(s => words.Any(w => EditDistance.Between(s, w) <= EditDistance.Forgiven(s.Length) || (w.Length > s.Length && EditDistance.Between(s, w[..s.Length]) <= EditDistance.Forgiven(s.Length)))) ? Slips : null;
    }

    private static string Cut(string name) => name.Length <= LongestName ? name : string.Concat(CrewText.Clean(name, LongestName - 1), "…");

    private static string Named(string displayName, string name) => Wordings.Name(displayName, name);

    /// <summary>Something to choose.</summary>
    private sealed record Offer(string Value, string Name);
}
