using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

public class AimGridTests
{
    [Fact]
    public void Directions_AreAThousandUnitVectorsThatBalance()
    {
        Assert.Equal(1000, AimGrid.Directions.Length);
        Vector3D sum = default;
        foreach (Vector3D d in AimGrid.Directions)
        {
            Assert.Equal(1, d.Length, 1e-12);
            sum += d;
        }

        Assert.True(sum.Length < 1, $"{sum}");
    }

    [Fact]
    public void NearestTo_AnyDirection_IsTheNearestOfAll() => Gen.Select(Gen.Double[-3.14, 3.14], Gen.Double[-1.57, 1.57]).Sample((azimuth, elevation) =>
    {
        Vector3D direction = Vector3D.FromAngles(azimuth, elevation);
        double best = double.NegativeInfinity;
        foreach (Vector3D d in AimGrid.Directions)
        {
            best = Math.Max(best, d.Dot(direction));
        }

        double found = AimGrid.Directions[AimGrid.NearestTo(direction)].Dot(direction);
        Assert.Equal(best, found, 1e-12);
        Assert.True(Angles.RadToDeg(Math.Acos(found)) < 5);
    });
}
