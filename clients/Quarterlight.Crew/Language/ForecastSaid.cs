namespace Quarterlight.Crew.Language;

/// <summary>What a question says about heat, run time, levels and noise, with what goes on from the question before.</summary>
public sealed record ForecastSaid
{
    /// <summary>About heat.</summary>
    public HeatSaid Heat { get; init; } = new();

    /// <summary>About batteries and media.</summary>
    public RunTimeSaid RunTime { get; init; } = new();

    /// <summary>About levels.</summary>
    public LevelSaid Levels { get; init; } = new();

    /// <summary>About noise, and how the car is driven in all of them.</summary>
    public NoiseSaid Noise { get; init; } = new();

    /// <summary>Kit to ask about, by resource name; null takes the scene's.</summary>
    public string? KitName { get; init; }

    /// <summary>Car to ask about, by resource name; null takes the scene's.</summary>
    public string? CabinName { get; init; }

    /// <summary>This, with what it leaves open taken from the question before.</summary>
    public ForecastSaid Over(ForecastSaid before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new ForecastSaid
        {
            Heat = Heat.Over(before.Heat),
            RunTime = RunTime.Over(before.RunTime),
            Levels = Levels.Over(before.Levels),
            Noise = Noise.Over(before.Noise),
            KitName = KitName ?? before.KitName,
            CabinName = CabinName ?? before.CabinName,
        };
    }
}
