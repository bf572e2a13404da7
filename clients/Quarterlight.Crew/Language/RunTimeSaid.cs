namespace Quarterlight.Crew.Language;

/// <summary>What is asked about batteries and media.</summary>
public enum RunTimeAspect
{
    /// <summary>Not said: what runs out first.</summary>
    Any,

    /// <summary>Whether something lasts so long.</summary>
    Lasts,

    /// <summary>When to swap.</summary>
    Swaps,

    /// <summary>Batteries.</summary>
    Batteries,

    /// <summary>Cards.</summary>
    Cards,
}

/// <summary>What a question says about batteries and media; what it does not say is null.</summary>
public sealed record RunTimeSaid
{
    /// <summary>What is asked.</summary>
    public RunTimeAspect Aspect { get; init; }

    /// <summary>How long it has to last, minutes.</summary>
    public double? NeedMin { get; init; }

    /// <summary>Local time of day until when it has to last, minutes after midnight.</summary>
    public int? UntilMinute { get; init; }

    /// <summary>True when it has to last until the meal break.</summary>
    public bool UntilLunch { get; init; }

    /// <summary>Temperature of the batteries, degrees Celsius.</summary>
    public double? BatteryC { get; init; }

    /// <summary>Share kept back, 0 to 1.</summary>
    public double? MarginFraction { get; init; }

    /// <summary>True when it records in takes only, false when all day.</summary>
    public bool? TakesOnly { get; init; }

    /// <summary>Tracks recorded.</summary>
    public int? TrackCount { get; init; }

    /// <summary>Samples a second.</summary>
    public int? SampleRateHz { get; init; }

    /// <summary>Size of one card in gigabytes.</summary>
    public double? CardSizeGb { get; init; }

    /// <summary>Start of the word for what it is about, such as "recorder"; null for everything.</summary>
    public string? Thing { get; init; }

    /// <summary>True when nothing but perhaps an aspect was said.</summary>
    public bool IsEmpty => (this with { Aspect = RunTimeAspect.Any, Thing = null }) == new RunTimeSaid();

    /// <summary>This, with what it leaves open taken from the question before.</summary>
    public RunTimeSaid Over(RunTimeSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        bool need = NeedMin is not null || UntilMinute is not null || UntilLunch;
        return new RunTimeSaid
        {
            Aspect = Aspect != RunTimeAspect.Any ? Aspect : before.Aspect,
            NeedMin = need ? NeedMin : before.NeedMin,
            UntilMinute = need ? UntilMinute : before.UntilMinute,
            UntilLunch = need ? UntilLunch : before.UntilLunch,
            BatteryC = BatteryC ?? before.BatteryC,
            MarginFraction = MarginFraction ?? before.MarginFraction,
            TakesOnly = TakesOnly ?? before.TakesOnly,
            TrackCount = TrackCount ?? before.TrackCount,
            SampleRateHz = SampleRateHz ?? before.SampleRateHz,
            CardSizeGb = CardSizeGb ?? before.CardSizeGb,
            Thing = Thing ?? before.Thing,
        };
    }
}
