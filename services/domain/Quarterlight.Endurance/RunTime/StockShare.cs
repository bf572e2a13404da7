namespace Quarterlight.Endurance.RunTime;

/// <summary>Shares the charged batteries of one kind among the devices that take it.</summary>
/// <remarks>
/// The next set always goes to the device that would stop first, so no other sharing makes the first stop later. A device the rest does not
/// suffice for is left out, and the others go on. What is left after the day's need goes the same way.
/// </remarks>
internal static class StockShare
{
    /// <summary>Sets each device gets.</summary>
    /// <param name="stock">Batteries.</param>
    /// <param name="unitsPerSet">Batteries of a set, by device.</param>
    /// <param name="coveredMin">Minute until which a device runs with so many sets: (device, sets); rises with sets.</param>
    public static int[] Of(int stock, IReadOnlyList<int> unitsPerSet, Func<int, int, double> coveredMin)
    {
        int[] sets = new int[unitsPerSet.Count];
        var open = new List<int>(Enumerable.Range(0, sets.Length));
        while (open.Count > 0)
        {
            int next = open.MinBy(i => coveredMin(i, sets[i]));
            if (unitsPerSet[next] > stock)
            {
                open.Remove(next);
                continue;
            }

            stock -= unitsPerSet[next];
            sets[next]++;
        }

        return sets;
    }
}
