using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>A seat with a belt.</summary>
public sealed record Seat
{
    /// <summary>Stable id: driver, front-passenger, front-centre, rear-left, rear-centre, rear-right, third-left, third-right.</summary>
    public required string Id { get; init; }

    /// <summary>Row, 1 = front.</summary>
    public required int Row { get; init; }

    /// <summary>Seating reference point (hip joint of a seated adult, SAE J1100 SgRP), metres.</summary>
    public required Vector3D ReferencePoint { get; init; }

    /// <summary>Backrest as a box, metres.</summary>
    public required Box3D Backrest { get; init; }

    /// <summary>Headrest as a box, metres.</summary>
    public required Box3D Headrest { get; init; }

    /// <summary>Cushion as a box, metres.</summary>
    public required Box3D Cushion { get; init; }

    /// <summary>True when a shut door is within the sitter's reach.</summary>
    public required bool NextToDoor { get; init; }
}

/// <summary>How a talker holds the head, for a share of the time.</summary>
public sealed record HeadPose
{
    /// <summary>Where the face points, radians counter-clockwise from forward, -pi to pi: positive looks left.</summary>
    public double YawRad { get; init; }

    /// <summary>Radians above the horizontal, -pi/2 to pi/2: negative looks down.</summary>
    public double PitchRad { get; init; }

    /// <summary>How far the head is from its place at rest, metres.</summary>
    public Vector3D LeanM { get; init; }

    /// <summary>Share of the talking done in this pose, above 0 to 1; a talker's shares sum to 1.</summary>
    public double ShareFraction { get; init; } = 1;
}

/// <summary>A head in a seat in one pose.</summary>
/// <param name="Center">Centre of the head, metres.</param>
/// <param name="Mouth">Mouth opening, metres.</param>
/// <param name="FaceDirection">Unit vector where the face points.</param>
public readonly record struct SeatedHead(Vector3D Center, Vector3D Mouth, Vector3D FaceDirection)
{
    /// <summary>Radius in metres of the ball that stands for a head in sight lines, screens and clearances.</summary>
    public const double RadiusM = 0.10;

    /// <summary>Head centre above the seating reference point, metres (mouth-below-vertex and head-height ranges of SAE J1100 texts, from memory).</summary>
    public const double CenterAboveReferenceM = 0.72;

    /// <summary>Head centre behind the seating reference point, metres: a torso leaning back about 14 degrees.</summary>
    public const double CenterBehindReferenceM = 0.17;

    /// <summary>Mouth below the head's centre, metres, with the face level.</summary>
    public const double MouthBelowCenterM = 0.06;

    /// <summary>Mouth in front of the head's centre, metres.</summary>
    public const double MouthForwardM = 0.10;

    /// <summary>Seats a head.</summary>
    public static SeatedHead In(Seat seat, HeadPose pose)
    {
        ArgumentNullException.ThrowIfNull(seat);
        ArgumentNullException.ThrowIfNull(pose);
        Vector3D center = seat.ReferencePoint + new Vector3D(-CenterBehindReferenceM, 0, CenterAboveReferenceM) + pose.LeanM;
        Vector3D face = Vector3D.FromAngles(pose.YawRad, pose.PitchRad);
        Vector3D chin = Vector3D.FromAngles(pose.YawRad, pose.PitchRad - (Math.PI / 2));
        return new(center, center + (MouthForwardM * face) + (MouthBelowCenterM * chin), face);
    }
}
