namespace Quarterlight.Acoustics;

/// <summary>How long a person may sit in noise: the recommended limit of NIOSH, 85 dB(A) over 8 hours with a 3 dB exchange.</summary>
/// <remarks>
/// NIOSH sound level page: limit, exchange, table of times to a dose of 100 %, and the time-weighted average.
/// Not a medical statement and not the law of any country. docs/models/listening-dose.md.
/// </remarks>
public static class ListeningDose
{
    /// <summary>Recommended limit over <see cref="ReferenceMin"/>, dB(A).</summary>
    public const double LimitDba = 85;

    /// <summary>Minutes of a full day's exposure at <see cref="LimitDba"/>.</summary>
    public const double ReferenceMin = 480;

    /// <summary>Decibels that halve the time.</summary>
    public const double ExchangeDb = 3;

    private const double DayMin = 1440;

    /// <summary>Minutes to a dose of 100 %: 480/2^((L - 85)/3).</summary>
    /// <param name="levelDba">Steady level, dB(A); finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">The level is not a finite number.</exception>
    public static double AllowedMinutes(double levelDba) => double.IsFinite(levelDba)
        ? ReferenceMin / Math.Pow(2, (levelDba - LimitDba) / ExchangeDb)
        : throw new ArgumentOutOfRangeException(nameof(levelDba), levelDba, "A level is a finite number.");

    /// <summary>Minutes a day in a steady level; null when that is a day or more.</summary>
    /// <inheritdoc cref="AllowedMinutes"/>
    public static double? DailyLimitMin(double levelDba) => AllowedMinutes(levelDba) is var min && min < DayMin ? min : null;

    /// <summary>Dose in percent of the day's limit: 100 times the sum of minutes spent over minutes allowed. Every level counts, however low.</summary>
    /// <param name="exposures">Steady levels in dB(A) and the minutes spent in each, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A level is not finite, or minutes are below 0 or not finite.</exception>
    public static double Percent(params ReadOnlySpan<(double LevelDba, double Minutes)> exposures)
    {
        double sum = 0;
        foreach ((double level, double minutes) in exposures)
        {
            if (!(minutes >= 0 && double.IsFinite(minutes)))
            {
                throw new ArgumentOutOfRangeException(nameof(exposures), minutes, "Minutes are 0 or more.");
            }

            sum += minutes / AllowedMinutes(level);
        }

        return 100 * sum;
    }

    /// <summary>Steady level in dB(A) that gives a dose in 8 hours: 10 lg(D/100) + 85; minus infinity for no dose.</summary>
    /// <param name="dosePercent">Dose D in percent, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The dose is below 0 or not a number.</exception>
    public static double TimeWeightedAverageDba(double dosePercent) => dosePercent >= 0
        ? (10 * Math.Log10(dosePercent / 100)) + LimitDba
        : throw new ArgumentOutOfRangeException(nameof(dosePercent), dosePercent, "A dose is 0 or more.");
}
