namespace Quarterlight.Endurance.RunTime;

/// <summary>Something that runs empty and is swapped as a set: the batteries of a device, the cards, the file.</summary>
internal sealed record Supply
{
    public required RunTimeKind Kind { get; init; }

    public required string Id { get; init; }

    public required string DisplayName { get; init; }

    /// <summary>What a swap is called.</summary>
    public required string SwapWords { get; init; }

    /// <summary>Minutes a set lasts, margin taken off.</summary>
    public required double LifeMin { get; init; }

    /// <summary>Minutes it would last without.</summary>
    public required double LifeWithoutMarginMin { get; init; }

    /// <summary>Share of the energy that temperature and age leave; 1 for others.</summary>
    public double Share { get; init; } = 1;

    /// <summary>Batteries or cards of a set.</summary>
    public int UnitsPerSet { get; init; } = 1;

    /// <summary>Battery of the kit; empty for others.</summary>
    public string BatteryId { get; init; } = "";

    /// <summary>True when only takes use it up.</summary>
    public bool InTakesOnly { get; init; }

    /// <summary>When a set put in at a moment is empty; infinite when it lasts the day.</summary>
    public double EmptyAt(double sinceMin, DaySheet day)
    {
        double empty = InTakesOnly ? day.WhenRecorded(day.RecordedBefore(sinceMin) + LifeMin) : sinceMin + LifeMin;
        return empty >= day.DurationMin ? double.PositiveInfinity : empty;
    }
}
