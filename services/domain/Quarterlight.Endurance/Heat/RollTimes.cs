namespace Quarterlight.Endurance.Heat;

/// <summary>When one roll meets a limit.</summary>
/// <param name="Seconds">Seconds from fan off; null when it is not met within the day.</param>
/// <param name="Cause">What meets it.</param>
internal readonly record struct LimitHit(int? Seconds, HeatCause Cause);

/// <summary>Rolls on from a cooled cabin until the limits are met, by the steps of the report.</summary>
internal sealed class RollTimes(HeatCase of, HeatLimits limits, CabinPhase roll)
{
    // A cabin cooled on purpose below comfort may warm into it for so long before it counts as cold (judgement).
    private const int ColdGraceS = 600;

    /// <summary>Times for comfort, caution and stop, each no later than the next.</summary>
    /// <param name="state">The cabin when the fan goes off.</param>
    /// <param name="fromS">That second of the day.</param>
    /// <param name="last">Highest limit that matters; those above it may stay open.</param>
    public LimitHit[] All(CabinState state, int fromS, HeatLimitKind last = HeatLimitKind.Stop)
    {
        var hits = new LimitHit[3];
        int? cold = null;
        bool cooledBelow = limits.IsCold(state, roll.SunW(fromS));
        CabinState before = state;
        for (int at = fromS, previous = fromS; ; previous = at, at = Math.Min(at + 60, of.DayS))
        {
            before = state;
            roll.Advance(ref state, previous, at, fine: true);
            for (int kind = 0; kind <= (int)last && Over(kind, state, at) != HeatCause.None; kind++)
            {
                if (hits[kind].Seconds is null)
                {
                    hits[kind] = Within(kind, before, previous, at, fromS);
                }
            }

            if (hits[(int)last].Seconds is not null || (limits.Strictest && hits[0].Seconds is not null))
            {
                break;
            }

            bool isCold = cold is null && hits[0].Seconds is null && limits.IsCold(state, roll.SunW(at));
            if (isCold && (!cooledBelow || at - fromS >= ColdGraceS || at >= of.DayS))
            {
                cold = cooledBelow ? 0 : at - fromS;
            }

            cooledBelow &= isCold || cold is not null;
            if (at >= of.DayS)
            {
                break;
            }
        }

        if (cold is not null && (hits[0].Seconds is null || cold < hits[0].Seconds))
        {
            hits[0] = new LimitHit(cold, HeatCause.Cold);
        }

        return limits.Strictest ? [hits[0], hits[0], hits[0]] : hits;
    }

    // The second within the last minute, by halving; steps are exact, so it does not matter where they end.
    private LimitHit Within(int kind, CabinState low, int lowS, int highS, int fromS)
    {
        HeatCause cause = Over(kind, low, lowS);
        if (cause != HeatCause.None)
        {
            return new LimitHit(lowS - fromS, cause);
        }

        CabinState high = low;
        roll.Advance(ref high, lowS, highS, fine: true);
        cause = Over(kind, high, highS);
        while (highS - lowS > 1)
        {
            int middleS = (lowS + highS) / 2;
            CabinState middle = low;
            roll.Advance(ref middle, lowS, middleS, fine: true);
            HeatCause then = Over(kind, middle, middleS);
            if (then == HeatCause.None)
            {
                (low, lowS) = (middle, middleS);
            }
            else
            {
                (highS, cause) = (middleS, then);
            }
        }

        return new LimitHit(highS - fromS, cause);
    }

    private HeatCause Over(int kind, in CabinState state, int second)
    {
        double sun = roll.SunW(second);
        bool sunlit = of.IsSunlit(second);
        return limits.Strictest ? limits.OverStrictest(state, sun, sunlit) : limits.Over((HeatLimitKind)kind, state, sun, sunlit);
    }
}
