using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

public class PlaceWordsTests
{
    [Fact]
    public void Aim_DownAndBackAtTheMouth_ReadsSo()
    {
        var aim = Vector3D.FromAngles(Math.PI, Angles.DegToRad(-35));
        Assert.Equal("down and back, at the driver's mouth, 35° below level", PlaceWords.Aim(aim, aim, "the driver", false));
    }

    [Fact]
    public void Aim_OffTheMouth_SaysBySoManyDegreesAndWhichSide()
    {
        var mouth = Vector3D.FromAngles(Math.PI, 0);
        string words = PlaceWords.Aim(Vector3D.FromAngles(Math.PI, Angles.DegToRad(25)), mouth, "Tess", false);
        Assert.Contains("25° above Tess' mouth", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Aim_Omni_HasNoDirection() => Assert.StartsWith("any way round", PlaceWords.Aim(Vector3D.Up, Vector3D.Up, "x", true), StringComparison.Ordinal);

    [Fact]
    public void Place_SaysCentimetresAndSide() =>
        Assert.Equal("visor: 31 cm from the driver's mouth, 112 cm above the floor, 40 cm left of centre", PlaceWords.Place("visor", new Vector3D(0.2, 0.4, 1.12), 0.31, "the driver"));
}
