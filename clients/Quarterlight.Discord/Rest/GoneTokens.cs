namespace Quarterlight.Discord.Rest;

/// <summary>Remembers tokens of interactions that are known to be of no use any more, so that they are not tried again. The oldest are forgotten first.</summary>
internal sealed class GoneTokens
{
    private const int Most = 4096;

    private readonly Lock sync = new();
    private readonly Dictionary<string, DiscordFault> faults = [];
    private readonly Queue<string> order = [];

    /// <summary>Why a token is of no use; null when nothing is known against it.</summary>
    public DiscordFault? Find(string top)
    {
        lock (sync)
        {
            return faults.TryGetValue(top, out DiscordFault fault) ? fault : null;
        }
    }

    /// <summary>Remembers one.</summary>
    public void Add(string top, DiscordFault fault)
    {
        lock (sync)
        {
            if (!faults.TryAdd(top, fault))
            {
                return;
            }

            order.Enqueue(top);
            while (order.Count > Most)
            {
                faults.Remove(order.Dequeue());
            }
        }
    }

    /// <summary>Forgets one: it turned out to be of use.</summary>
    public void Remove(string top)
    {
        lock (sync)
        {
            faults.Remove(top);
        }
    }
}
