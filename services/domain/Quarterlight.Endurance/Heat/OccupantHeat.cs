namespace Quarterlight.Endurance.Heat;

/// <summary>Heat people give off.</summary>
/// <remarks>
/// ASHRAE Fundamentals 2009 and 2013, chapter 18, table 1: seated, very light work: 115 W, of it 70 W sensible at 24 C; at 27 C the sensible part is 20 %
/// less and the whole the same. The line through the two is carried on to nothing and to the whole; 1.2 met stands for that row.
/// </remarks>
public static class OccupantHeat
{
    private const double TotalW = 115, SensibleAt24W = 70, FallWPerK = SensibleAt24W * 0.2 / 3, RowMet = 1.2;

    // A child gives off 75 % of an adult's heat (same table, note); an animal is taken as half an adult (judgement).
    private const double ChildShare = 0.75, AnimalShare = 0.5;

    /// <summary>People and animals as a number of adults at 1.2 met.</summary>
    public static double AdultEquivalents(Occupants occupants)
    {
        ArgumentNullException.ThrowIfNull(occupants);
        return (occupants.AdultCount + (ChildShare * occupants.ChildCount) + (AnimalShare * occupants.AnimalCount)) * occupants.ActivityMet / RowMet;
    }

    /// <summary>Sensible heat of one adult at 1.2 met, watts: 70 at 24 C, none from 39 C.</summary>
    public static double SensibleW(double airC) => Math.Clamp(SensibleAt24W - (FallWPerK * (airC - 24)), 0, TotalW);

    /// <summary>Latent heat of one adult at 1.2 met, watts: what the sensible part leaves of 115.</summary>
    public static double LatentW(double airC) => TotalW - SensibleW(airC);
}
