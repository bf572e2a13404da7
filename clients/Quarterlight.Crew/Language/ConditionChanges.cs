using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>A window as said.</summary>
/// <param name="Seat">Seat it belongs to; null for every window.</param>
/// <param name="OpenFraction">0 shut to 1 all the way down.</param>
public sealed record WindowSaid(SeatMention? Seat, double OpenFraction);

/// <summary>What a question says about how the car is driven; what it does not say is null.</summary>
public sealed record ConditionChanges
{
    /// <summary>Road speed in km/h, as said; the planner checks the range.</summary>
    public double? SpeedKmPerHour { get; init; }

    /// <summary>Windows, in the order said.</summary>
    public IReadOnlyList<WindowSaid> Windows { get; init; } = [];

    /// <summary>Blower step, 0 to 4.</summary>
    public int? FanStep { get; init; }

    /// <summary>Rain.</summary>
    public Rain? Rain { get; init; }

    /// <summary>Engine.</summary>
    public EngineState? Engine { get; init; }

    /// <summary>Engine speed in revolutions per minute.</summary>
    public double? EngineSpeedRpm { get; init; }

    /// <summary>Road surface.</summary>
    public RoadSurface? Road { get; init; }

    /// <summary>True when nothing was said.</summary>
    public bool IsEmpty => SpeedKmPerHour is null && Windows.Count == 0 && FanStep is null && Rain is null && Engine is null && EngineSpeedRpm is null && Road is null;

    /// <summary>These, with what they leave open taken from the question before. A road speed of its own drops the engine speed said before.</summary>
    public ConditionChanges Over(ConditionChanges before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return new ConditionChanges
        {
            SpeedKmPerHour = SpeedKmPerHour ?? before.SpeedKmPerHour,
            Windows = [.. before.Windows, .. Windows],
            FanStep = FanStep ?? before.FanStep,
            Rain = Rain ?? before.Rain,
            Engine = Engine ?? before.Engine,
            EngineSpeedRpm = EngineSpeedRpm ?? (SpeedKmPerHour is null ? before.EngineSpeedRpm : null),
            Road = Road ?? before.Road,
        };
    }

    /// <summary>The conditions with these changes.</summary>
    /// <param name="before">Conditions to start from; not changed.</param>
    /// <param name="driverOnLeft">True in a left-hand-drive car.</param>
    /// <param name="panes">Panes that wind down in this car.</param>
    public DriveConditions ApplyTo(DriveConditions before, bool driverOnLeft, IReadOnlyList<string> panes)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(panes);
        DriveConditions after = before.Clone();
        after.SpeedKmPerHour = SpeedKmPerHour ?? after.SpeedKmPerHour;
        after.FanStep = FanStep ?? after.FanStep;
        after.Rain = Rain ?? after.Rain;
        after.EngineState = Engine ?? after.EngineState;
        after.RoadSurface = Road ?? after.RoadSurface;
        if (EngineSpeedRpm is { } rpm)
        {
            after.EngineSpeedRpm = rpm;
        }
        else if (SpeedKmPerHour is not null)
        {
            // An engine speed kept from another road speed would be wrong.
            after.ClearEngineSpeedRpm();
        }

        foreach (WindowSaid window in Windows)
        {
            foreach (string pane in PanesOf(window, driverOnLeft, panes))
            {
                Set(after, pane, window.OpenFraction);
            }
        }

        return after;
    }

    private static IEnumerable<string> PanesOf(WindowSaid window, bool driverOnLeft, IReadOnlyList<string> panes)
    {
        if (window.Seat is not { } seat)
        {
            return panes;
        }

        string near = driverOnLeft ? "left" : "right", far = driverOnLeft ? "right" : "left";
        return seat.SeatIds(driverOnLeft).Select(id => id switch
        {
            "driver" => $"front-{near}",
            "front-passenger" => $"front-{far}",
            _ => id,
        }).Where(pane => seat.Place != SeatPlace.Any || panes.Contains(pane)).Where(pane => pane is not ("rear-centre" or "front-centre"));
    }

    private static void Set(DriveConditions conditions, string pane, double openFraction)
    {
        if (conditions.OpenWindows.FirstOrDefault(w => w.PaneId == pane) is { } kept)
        {
            conditions.OpenWindows.Remove(kept);
        }

        if (openFraction > 0)
        {
            conditions.OpenWindows.Add(new WindowOpening { PaneId = pane, OpenFraction = openFraction });
        }
    }
}
