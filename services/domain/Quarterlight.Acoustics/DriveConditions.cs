using Quarterlight.Quantities;

namespace Quarterlight.Acoustics;

/// <summary>What the road is made of.</summary>
public enum RoadSurface
{
    /// <summary>New or smooth asphalt.</summary>
    SmoothAsphalt,

    /// <summary>Worn or coarse asphalt.</summary>
    CoarseAsphalt,

    /// <summary>Concrete.</summary>
    Concrete,

    /// <summary>Cobbles or setts.</summary>
    Cobbles,

    /// <summary>Gravel.</summary>
    Gravel,
}

/// <summary>How hard it rains.</summary>
public enum Rain
{
    /// <summary>Dry.</summary>
    None,

    /// <summary>Light rain.</summary>
    Light,

    /// <summary>Heavy rain.</summary>
    Heavy,
}

/// <summary>What drives the car and how the engine is working.</summary>
public enum EngineState
{
    /// <summary>Not running: parked, towed, or on a trailer.</summary>
    Off,

    /// <summary>Running at the speed given or estimated.</summary>
    Running,
}

/// <summary>An opened side window.</summary>
/// <param name="PaneId">Pane as the cabin names it: front-left, front-right, rear-left or rear-right.</param>
/// <param name="OpenFraction">How far it is down, 0 (shut) to 1 (all the way).</param>
public sealed record WindowOpening(string PaneId, double OpenFraction);

/// <summary>What a clip from the real car says about the forecast of its noise.</summary>
/// <param name="ShiftsDb">Added to the forecast of every noise in the cabin, dB by octave, -40 to 40 each.</param>
/// <param name="Source">Where it comes from, up to 200 characters, such as "clip of scene 12, 60 km/h"; may be empty.</param>
public sealed record NoiseCorrection(BandLevels ShiftsDb, string Source);

/// <summary>How the car is driven while the scene is recorded: everything the noise forecast depends on.</summary>
public sealed record DriveConditions
{
    /// <summary>Road speed in km/h, 0 to 130.</summary>
    public double SpeedKmPerHour { get; init; }

    /// <summary>Road surface.</summary>
    public RoadSurface Road { get; init; } = RoadSurface.SmoothAsphalt;

    /// <summary>Open windows; panes not listed are shut.</summary>
    public IReadOnlyList<WindowOpening> OpenWindows { get; init; } = [];

    /// <summary>Blower step, 0 (off) to 4.</summary>
    public int FanStep { get; init; }

    /// <summary>Rain on roof and screen.</summary>
    public Rain Rain { get; init; } = Rain.None;

    /// <summary>Whether the engine or motor runs.</summary>
    public EngineState Engine { get; init; } = EngineState.Running;

    /// <summary>Engine speed in revolutions a minute, 500 to 8000; null lets the forecast estimate it from the road speed.</summary>
    public double? EngineRpm { get; init; }

    /// <summary>Correction measured in the car as driven; null takes the forecast as it is. It holds only for conditions like those of its clip.</summary>
    public NoiseCorrection? NoiseCorrection { get; init; }
}
