namespace Quarterlight.Endurance.Heat;

/// <summary>Roll and cool in seconds from a start; no rhythm when the roll is 0.</summary>
internal readonly record struct Rhythm(int StartS, int RollS, int CoolS)
{
    /// <summary>Seconds rolled in a day.</summary>
    public int RolledS(int dayS)
    {
        if (RollS <= 0 || StartS >= dayS)
        {
            return 0;
        }

        int day = dayS - StartS, period = RollS + CoolS;
        return (day / period * RollS) + Math.Min(day % period, RollS);
    }
}

/// <summary>Finds the roll and cool that keep a limit all day and roll the longest.</summary>
/// <remarks>
/// More cooling never breaks a limit that less cooling keeps, and a longer roll never needs less of it; so for each roll the least cooling is found by
/// halving, from that of the roll before. A roll is held against the limit at its start and end, a long one in its middle too.
/// Steps of half a minute take people's heat and the coil's as steady for so long and cool a little too well, and over a day of rolls that adds up. So what
/// was found is held against the limit once more, by single seconds as the report has it, and cooled longer where that is needed.
/// </remarks>
internal sealed class RhythmSearch(HeatCase of, HeatLimits limits, Precooling precooling)
{
    /// <summary>Grid of both, seconds.</summary>
    public const int GridS = 30;

    /// <summary>Longest cooling between takes, seconds.</summary>
    public const int MostCoolS = 3600;

    /// <summary>Longest take of a rhythm, seconds.</summary>
    public const int MostRollS = 240 * 60;

    // Nobody breaks for less than this, and shorter takes are only looked for when no longer one keeps the limit (judgement).
    private const int LeastCoolS = 120, UsefulRollS = 180;

    // Steps of the first sweep; an option makes do with fewer.
    private const int Sweeps = 10, OptionSweeps = 4;

    // A roll this long is held against the limit in its middle as well: the sun may pass its height within it.
    private const int LongRollS = 1200;

    private readonly HeatLimitKind _limit = of.Task.RhythmLimit;

    /// <summary>The best rhythm; a roll of 0 when none keeps the limit.</summary>
    /// <param name="longestS">How long a roll from the cooled cabin lasts; null when it lasts all day.</param>
    /// <param name="refine">False takes the best of the coarse steps.</param>
    public Rhythm Best(int? longestS, bool refine = true)
    {
        Rhythm found = Found(longestS, refine);
        if (found.RollS == 0)
        {
            return found;
        }

        var proof = new RhythmProof(of, precooling, (state, second) => Over(state, second));
        if (longestS is null && !proof.Keeps(found))
        {
            // All day in one roll was a hair too long.
            found = Found(of.DayS - found.StartS, refine);
        }

        return proof.Nearest(found, of.Task.RollMin is null ? LeastCoolS : null);
    }

    private Rhythm Found(int? longestS, bool refine)
    {
        if (precooling.StartS + GridS > of.DayS)
        {
            return default;
        }

        if (of.Task.RollMin is { } minutes)
        {
            return Least((int)Math.Round(minutes * 60), 0);
        }

        if (longestS is null)
        {
            int whole = Math.Min(MostRollS, (of.DayS - precooling.StartS) / 60 * 60);
            return new Rhythm(precooling.StartS, Math.Max(whole, GridS), 0);
        }

        // Cooling longer before the first take may buy a longer one.
        int most = Math.Min(MostRollS, Longest(precooling.LastS) / GridS * GridS), low = Math.Min(UsefulRollS, most);
        Rhythm best = default;
        if (most >= GridS)
        {
            int stride = Math.Max(GridS, (most - low) / (refine ? Sweeps : OptionSweeps) / GridS * GridS);
            best = Sweep(low, most, stride, default);
            while (refine && stride > GridS && best.RollS > 0)
            {
                int around = best.RollS, from = Math.Max(low, around - stride), to = Math.Min(most, around + stride);
                stride = Math.Max(GridS, stride / 4 / GridS * GridS);
                best = Sweep(from, to, stride, best);
            }

            for (int roll = low - GridS; best.RollS == 0 && roll >= GridS; roll -= GridS)
            {
                best = Least(roll, LeastCoolS);
            }
        }

        return best;
    }

    /// <summary>True when the limit is kept all day.</summary>
    public bool Keeps(Rhythm rhythm)
    {
        CabinState state = precooling.At(rhythm.StartS);
        for (int at = rhythm.StartS; at < of.DayS;)
        {
            int end = Math.Min(at + rhythm.RollS, of.DayS), middle = end - at >= LongRollS ? at + ((end - at) / 2 / GridS * GridS) : at;
            if (Over(state, at))
            {
                return false;
            }

            of.Roll.Advance(ref state, at, middle);
            if (middle > at && Over(state, middle))
            {
                return false;
            }

            of.Roll.Advance(ref state, middle, end);
            if (Over(state, end))
            {
                return false;
            }

            at = Math.Min(end + rhythm.CoolS, of.DayS);
            of.Cool.Advance(ref state, end, at);
        }

        return true;
    }

    private Rhythm Sweep(int from, int to, int stride, Rhythm best)
    {
        int cool = LeastCoolS;
        for (int roll = from; roll <= to; roll += stride)
        {
            // No later roll can do better than the longest with the cooling already needed.
            if (new Rhythm(best.StartS, to, cool).RolledS(of.DayS) < best.RolledS(of.DayS))
            {
                break;
            }

            Rhythm found = Least(roll, cool);
            if (found.RollS == 0)
            {
                break;
            }

            cool = Math.Max(cool, found.CoolS);
            if (found.RolledS(of.DayS) >= best.RolledS(of.DayS))
            {
                best = found;
            }
        }

        return best;
    }

    // The least cooling for a roll, from a known lower bound on.
    private Rhythm Least(int rollS, int fromCoolS)
    {
        if (First(rollS) is not { } start)
        {
            return default;
        }

        var none = new Rhythm(start, rollS, fromCoolS);
        if (Keeps(none))
        {
            return none;
        }

        // The answer is mostly just above the bound: gallop first, then halve.
        int low = fromCoolS, high = low;
        for (int step = GridS; ; step *= 2)
        {
            high = Math.Min(low + step, MostCoolS);
            if (Keeps(none with { CoolS = high }))
            {
                break;
            }

            if (high == MostCoolS)
            {
                return default;
            }

            low = high;
        }

        while (high - low > GridS)
        {
            int middle = (low + high) / 2 / GridS * GridS;
            (low, high) = Keeps(none with { CoolS = middle }) ? (low, middle) : (middle, high);
        }

        return none with { CoolS = high };
    }

    // Cooling before the first take that lets it last; null when the longest does not.
    private int? First(int rollS)
    {
        int high = precooling.StartS;
        if (Lasts(high, rollS))
        {
            return high;
        }

        int low = high;
        high = precooling.LastS;
        if (high <= low || !Lasts(high, rollS))
        {
            return null;
        }

        while (high - low > GridS)
        {
            int middle = (low + high) / 2 / GridS * GridS;
            (low, high) = Lasts(middle, rollS) ? (low, middle) : (middle, high);
        }

        return high;
    }

    private bool Lasts(int startS, int rollS)
    {
        CabinState state = precooling.At(startS);
        if (startS >= of.DayS || Over(state, startS))
        {
            return false;
        }

        int end = Math.Min(startS + rollS, of.DayS);
        of.Roll.Advance(ref state, startS, end);
        return !Over(state, end);
    }

    private int Longest(int startS)
    {
        CabinState state = precooling.At(startS);
        int at = startS;
        while (at < of.DayS && at - startS < MostRollS && !Over(state, at))
        {
            of.Roll.Advance(ref state, at, Math.Min(at + GridS, of.DayS));
            at += GridS;
        }

        return Math.Max(0, at - startS - (Over(state, Math.Min(at, of.DayS)) ? GridS : 0));
    }

    private bool Over(in CabinState state, int second)
    {
        double sun = of.Roll.SunW(second);
        bool sunlit = of.IsSunlit(second);
        return (limits.Strictest ? limits.OverStrictest(state, sun, sunlit) : limits.Over(_limit, state, sun, sunlit)) != HeatCause.None;
    }
}
