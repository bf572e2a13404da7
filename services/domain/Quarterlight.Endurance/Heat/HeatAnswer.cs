namespace Quarterlight.Endurance.Heat;

/// <summary>The figures of one forecast, without its day in samples.</summary>
internal sealed class HeatAnswer
{
    private HeatAnswer(HeatCase of, HeatLimits limits, Precooling precooling, LimitHit[] hits, Rhythm rhythm)
    {
        Case = of;
        Limits = limits;
        Precooling = precooling;
        Hits = hits;
        Rhythm = rhythm;
    }

    public HeatCase Case { get; }

    public HeatLimits Limits { get; }

    public Precooling Precooling { get; }

    /// <summary>Comfort, caution and stop from the cooled cabin.</summary>
    public LimitHit[] Hits { get; }

    public Rhythm Rhythm { get; }

    /// <summary>Minutes until the rhythm's limit.</summary>
    public double? LimitMin => Hits[(int)Case.Task.RhythmLimit].Seconds / 60.0;

    /// <summary>Minutes of cooling; null when the set point is not reached.</summary>
    public double? PrecoolMin => Precooling.AirS is null ? null : StartS / 60.0;

    /// <summary>When the first take rolls, seconds: a rhythm may want more cooling than the trim needs.</summary>
    public int StartS => Rhythm.RollS > 0 ? Rhythm.StartS : Precooling.StartS;

    /// <summary>Share of the day spent rolling.</summary>
    public double RollingShare => (double)Rhythm.RolledS(Case.DayS) / Case.DayS;

    /// <summary>Works out a task; without refining, a coarser rhythm and no limit above the rhythm's own.</summary>
    public static HeatAnswer Of(HeatTask task, SunTable table, double shiftMin = 0, bool refine = true)
    {
        var of = new HeatCase(task, table, shiftMin);
        var limits = new HeatLimits(task);
        var precooling = new Precooling(of);
        var times = new RollTimes(of, limits, of.Roll);
        HeatLimitKind last = refine ? HeatLimitKind.Stop : task.RhythmLimit;
        LimitHit[] hits = times.All(precooling.At(precooling.StartS), precooling.StartS, last);
        LimitHit kept = hits[(int)task.RhythmLimit];

        // Against the cold no cooling helps.
        Rhythm rhythm = kept.Cause == HeatCause.Cold ? default : new RhythmSearch(of, limits, precooling).Best(kept.Seconds, refine);
        if (rhythm.RollS > 0 && rhythm.StartS != precooling.StartS)
        {
            // Times and rhythm are of one and the same cooled cabin, or a reader finds them at odds.
            hits = times.All(precooling.At(rhythm.StartS), rhythm.StartS, last);
        }

        return new HeatAnswer(of, limits, precooling, hits, rhythm);
    }

    /// <summary>The same limits with the load at the upper end of what is likely; each no later than the likely one.</summary>
    public LimitHit[] AtWorst()
    {
        CabinState cooled = Precooling.At(StartS);
        LimitHit[] worst = [.. Hits];
        foreach (double loss in s_lossFactors)
        {
            LimitHit[] hits = new RollTimes(Case, Limits, Case.Roll.Loaded(SunFactor, loss)).All(cooled, StartS);
            for (int i = 0; i < worst.Length; i++)
            {
                if (hits[i].Seconds is { } seconds && (worst[i].Seconds is not { } before || seconds < before))
                {
                    worst[i] = hits[i];
                }
            }
        }

        return worst;
    }

    // A quarter more sun, and a fifth less or more loss to outside, whichever is worse: in hot air outside a tight car is the better one (judgement).
    private const double SunFactor = 1.25;

    private static readonly double[] s_lossFactors = [0.8, 1.2];
}
