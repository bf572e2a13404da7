using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A camera set-up: where it is, where it looks, through what lens onto what sensor.</summary>
public sealed record Shot
{
    /// <summary>Id within the scene, such as A or B.</summary>
    public required string Id { get; init; }

    /// <summary>Entrance pupil of the lens, metres; inside or outside the car.</summary>
    public required Vector3D Position { get; init; }

    /// <summary>Point the lens is aimed at, metres; at least 0.1 m from the position.</summary>
    public required Vector3D AimPoint { get; init; }

    /// <summary>Focal length in millimetres, 4 to 300.</summary>
    public required double FocalLengthMm { get; init; }

    /// <summary>Recorded width of the sensor in millimetres, 3 to 70.</summary>
    public required double SensorWidthMm { get; init; }

    /// <summary>Recorded height of the sensor in millimetres, 2 to 55.</summary>
    public required double SensorHeightMm { get; init; }
}
