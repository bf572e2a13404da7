namespace Quarterlight.Endurance.Heat;

/// <summary>Holds a rhythm against its limit by the steps of the report, and mends it where the coarser search was too hopeful.</summary>
/// <param name="of">The question.</param>
/// <param name="precooling">The cooling before the first take.</param>
/// <param name="over">True when a rolling cabin is over the limit at a second of the day.</param>
internal sealed class RhythmProof(HeatCase of, Precooling precooling, Func<CabinState, int, bool> over)
{
    private const int GridS = RhythmSearch.GridS;

    /// <summary>True when the limit is kept at both ends of each roll and at every half minute within.</summary>
    public bool Keeps(Rhythm rhythm) => Broken(rhythm) is null;

    /// <summary>The rhythm nearest to the one found that is kept: cooled longer, or rolled shorter where that does not help and may be; no roll when none is.</summary>
    /// <param name="found">What the search found.</param>
    /// <param name="leastCoolS">Shortest cooling wanted, seconds; null when the roll is given, which is then kept, with any cooling.</param>
    public Rhythm Nearest(Rhythm found, int? leastCoolS)
    {
        while (found.RollS > 0 && Broken(found) is { } second)
        {
            bool first = second <= found.StartS + found.RollS;
            if (first && found.StartS < precooling.LastS && found.StartS + GridS < of.DayS)
            {
                found = found with { StartS = found.StartS + GridS };
            }
            else if (!first && found.CoolS < RhythmSearch.MostCoolS)
            {
                found = found with { CoolS = Math.Min(found.CoolS + GridS, RhythmSearch.MostCoolS) };
            }
            else
            {
                found = leastCoolS is not null && found.RollS > GridS ? found with { RollS = found.RollS - GridS } : default;
            }
        }

        // The search may have been too careful as well.
        while (found.RollS > 0 && found.CoolS - GridS >= (leastCoolS ?? 0) && found with { CoolS = found.CoolS - GridS } is var less && Keeps(less))
        {
            found = less;
        }

        return found;
    }

    // The first second over the limit; null when there is none.
    private int? Broken(Rhythm rhythm)
    {
        CabinState state = precooling.At(rhythm.StartS);
        for (int at = rhythm.StartS; at < of.DayS;)
        {
            int end = Math.Min(at + rhythm.RollS, of.DayS);
            while (!over(state, at) && at < end)
            {
                int next = Math.Min(end, ((at / GridS) + 1) * GridS);
                of.Roll.Advance(ref state, at, next, fine: true);
                at = next;
            }

            if (over(state, at))
            {
                return at;
            }

            at = Math.Min(end + rhythm.CoolS, of.DayS);
            of.Cool.Advance(ref state, end, at, fine: true);
        }

        return null;
    }
}
