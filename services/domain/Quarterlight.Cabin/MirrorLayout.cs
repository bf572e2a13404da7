using Quarterlight.Quantities;

namespace Quarterlight.Cabin;

/// <summary>Hangs the interior mirror and turns it so that the driver sees the rear glass in it.</summary>
internal static class MirrorLayout
{
    /// <summary>Housing behind the glass, far enough for the turned glass to stay in front of it.</summary>
    public const double HousingGapM = 0.055;

    private const double WidthM = 0.24;
    private const double HeightM = 0.06;

    public static InteriorMirror? Mirror(CabinLayout cabin)
    {
        if (cabin.Traits.Bulkhead)
        {
            return null;
        }

        var center = new Vector3D(cabin.HeaderX - 0.02, 0, cabin.M.FrontHeightM - 0.09);
        Vector3D toEye = (cabin.DriverEye - center).Normalized();
        Vector3D toRear = (cabin.OnRearGlass(0.6, 0) - center).Normalized();
        return new InteriorMirror(center, (toEye + toRear).Normalized(), WidthM, HeightM);
    }
}
