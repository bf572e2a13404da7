namespace Quarterlight.Placement.Levels;

/// <summary>The gains a knob can be set to: from the least in steps.</summary>
internal readonly record struct GainSteps(double MinDb, double MaxDb, double StepDb)
{
    // A hair, so that a gain that is a step but for rounding counts as one.
    private const double Hair = 1e-9;

    /// <summary>The highest gain there is that is not above the one wanted; the least when that is lower.</summary>
    public double AtMost(double wantedDb)
    {
        double steps = Math.Floor((Math.Min(wantedDb, MaxDb) - MinDb) / StepDb + Hair);
        return MinDb + (Math.Max(0, steps) * StepDb);
    }
}
