using System.Globalization;
using System.Text;
using Google.Protobuf;
using Grpc.Core;

namespace Quarterlight.Crew.Keeping;

/// <summary>Ids made from names: 1 to 63 of a-z, 0-9 and dashes, starting with a letter.</summary>
internal static class NewIds
{
    private const int Longest = 40;
    private const int MostTries = 100;

    /// <summary>An id from a name; the fallback when the name has no letter of the Latin alphabet.</summary>
    /// <param name="name">Any text.</param>
    /// <param name="fallback">An id.</param>
    /// <param name="longest">Most characters, 2 or more.</param>
    public static string From(string name, string fallback, int longest = Longest)
    {
        var id = new StringBuilder();
        foreach (char c in name)
        {
            char lower = char.ToLowerInvariant(c);
            if (char.IsAsciiLetterLower(lower) || char.IsAsciiDigit(lower))
            {
                id.Append(lower);
            }
            else if (id.Length > 0 && id[^1] != '-')
            {
                id.Append('-');
            }

            if (id.Length >= longest)
            {
                break;
            }
        }

        string made = id.ToString().Trim('-');
        return made.Length == 0 ? fallback : char.IsAsciiLetter(made[0]) ? made : $"{fallback}-{made}"[..Math.Min(longest, fallback.Length + 1 + made.Length)].TrimEnd('-');
    }

    /// <summary>The id, or the id with the least number from 2 behind it that is free.</summary>
    public static string Free(string id, Func<string, bool> taken, int longest = 63)
    {
        string free = id;
        for (int number = 2; taken(free); number++)
        {
            string end = string.Create(CultureInfo.InvariantCulture, $"-{number}");
            free = id[..Math.Min(id.Length, longest - end.Length)].TrimEnd('-') + end;
        }

        return free;
    }

    /// <summary>Keeps a thing under the id, or the next one that is free: a colleague may take one at the same moment.</summary>
    /// <exception cref="RpcException">The planner refused or could not be reached.</exception>
    public static async Task<T> CreateAsync<T>(Shelf<T> shelf, string id, T thing, IReadOnlyList<T> kept, CancellationToken cancellation)
        where T : class, IMessage<T>, IDeepCloneable<T>
    {
        HashSet<string> taken = [.. kept.Select(shelf.IdOf)];
        for (int tries = 1; ; tries++)
        {
            string free = Free(id, taken.Contains);
            try
            {
                return await shelf.CreateAsync(free, thing, cancellation).ConfigureAwait(false);
            }
            catch (RpcException e) when (e.StatusCode == StatusCode.AlreadyExists && tries < MostTries)
            {
                taken.Add(free);
            }
        }
    }
}
