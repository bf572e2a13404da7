namespace Quarterlight.Endurance;

/// <summary>A take on the call sheet.</summary>
/// <param name="Label">What the call sheet calls it, 1 to 40 characters.</param>
/// <param name="StartMin">Minutes after the start of the day it is to roll, 0 to 1440.</param>
/// <param name="DurationMin">How long it rolls in minutes, 0.1 to 240.</param>
public sealed record PlannedTake(string Label, double StartMin, double DurationMin)
{
    /// <summary>Minutes after the start of the day at which it is over.</summary>
    public double EndMin => StartMin + DurationMin;
}
