using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>A talker's own clothing as a mount site.</summary>
public static class BodyWorn
{
    /// <summary>Word a caller may use for "on this talker" instead of the full id.</summary>
    public const string AnyId = "body-worn";

    /// <summary>Below the mouth at rest, metres: breastbone height (judgement).</summary>
    public const double BelowMouthM = 0.22;

    /// <summary>Id of a talker's own site.</summary>
    public static string IdFor(string talkerId) => $"{AnyId}-{talkerId}";

    internal static MountSite SiteFor(Talker talker, Seat seat)
    {
        Vector3D mouth = SeatedHead.In(seat, CabinRoom.Rest).Mouth;
        return new MountSite
        {
            Id = IdFor(talker.Id),
            Words = $"{talker.DisplayName}'s clothing, breastbone height",
            Family = MountFamily.BodyWorn,
            Position = mouth + new Vector3D(-0.02, 0, -BelowMouthM),
            Normal = new Vector3D(1, 0, 0.25).Normalized(),
            Material = SurfaceMaterial.Clothing,
            PermittedFixings = Fixings.BodyMount,
            FreeDepthM = 0.05,
            Vibration = VibrationGrade.Low,
            SeatId = seat.Id,
        };
    }
}
