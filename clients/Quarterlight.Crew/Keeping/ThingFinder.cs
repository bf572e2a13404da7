using Google.Protobuf;
using Quarterlight.Crew.Language;

namespace Quarterlight.Crew.Keeping;

/// <summary>What a name came to: the thing, or a sentence that says what would be right.</summary>
internal readonly record struct Found<T>(T? Thing, string Problem)
    where T : class;

/// <summary>Finds one of the team's scenes, cars or kits by id or name.</summary>
internal static class ThingFinder
{
    private const int MostNames = 8;

    /// <summary>The one thing meant; never a guess between two.</summary>
    public static Found<T> Find<T>(Shelf<T> shelf, IReadOnlyList<T> kept, string said)
        where T : class, IMessage<T>, IDeepCloneable<T>
    {
        string text = CrewText.Clean(said, CrewText.LongestName);
        if (kept.FirstOrDefault(t => shelf.Label(t).Name == said || shelf.IdOf(t) == said || shelf.IdOf(t) == text) is { } byId)
        {
            return new(byId, "");
        }

        T[] byName = [.. kept.Where(t => string.Equals(shelf.Shown(t), text, StringComparison.OrdinalIgnoreCase))];
        if (byName.Length == 0 && text.Length > 0)
        {
            var matcher = new NameMatcher(kept.Select(t => new Named(shelf.Label(t).Name, shelf.Label(t).DisplayName)));
            IReadOnlyList<Named> near = matcher.Find(Tokenizer.Split(text));
            byName = [.. near.Select(n => kept.First(t => shelf.Label(t).Name == n.Id))];
        }

        return byName.Length switch
        {
            1 => new(byName[0], ""),
            0 => new(null, $"there is no {shelf.Word} called \"{text}\". {There(shelf, kept)}"),
            _ => new(null, $"\"{text}\" can be {string.Join(" or ", byName.Take(MostNames).Select(t => $"{shelf.Shown(t)} (id {shelf.IdOf(t)})"))}; say which."),
        };
    }

    /// <summary>What there is, in a sentence.</summary>
    public static string There<T>(Shelf<T> shelf, IReadOnlyList<T> kept)
        where T : class, IMessage<T>, IDeepCloneable<T> =>
        kept.Count == 0 ? $"No {shelf.Word}s are kept yet: \"{shelf.Word} new\" makes one, \"load demo\" brings invented ones."
        : $"There is: {string.Join("; ", kept.Take(MostNames).Select(shelf.Shown))}{(kept.Count > MostNames ? " and more" : "")}.";

    /// <summary>How a form names a thing: by its name, or by its id when others are called the same.</summary>
    public static string NameFor<T>(Shelf<T> shelf, IReadOnlyList<T> kept, string resourceName)
        where T : class, IMessage<T>, IDeepCloneable<T>
    {
        T? thing = kept.FirstOrDefault(t => shelf.Label(t).Name == resourceName);
        string id = ResourceName.IdOf(resourceName);
        return thing is not null && Find(shelf, kept, shelf.Shown(thing)).Thing is { } one && shelf.IdOf(one) == id ? shelf.Shown(thing) : id;
    }
}
