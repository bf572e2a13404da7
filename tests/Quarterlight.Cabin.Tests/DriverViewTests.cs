using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class DriverViewTests
{
    public static TheoryData<BodyStyle> AllBodies => Cabins.AllBodies;

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void InDriverView_VisorsMirrorFootAndHeadliner_Free(BodyStyle body)
    {
        MountSite[] high = [.. Cabins.Of(body).Sites.Where(s => s.Family is MountFamily.Visor or MountFamily.MirrorFoot or MountFamily.Headliner)];
        Assert.True(high.Length >= 12);
        Assert.All(high, s => Assert.False(s.InDriverView, s.Id));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void InDriverView_CentreOfTheWindscreenAtEyeHeight_Flagged(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        MountSite centre = cabin.FindSite("windscreen-centre")!;
        Assert.True(centre.InDriverView);
        Assert.Equal("the road", cabin.DriverView.HiddenAt(centre.Position));
    }

    [Fact]
    public void InDriverView_BehindTheDriver_Never()
    {
        foreach (BodyStyle body in Cabins.Bodies)
        {
            CabinGeometry cabin = Cabins.Of(body);
            Assert.All(cabin.Sites.Where(s => s.Position.X < cabin.DriverEye.X - 0.06), s => Assert.False(s.InDriverView, $"{body} {s.Id}"));
        }
    }

    [Fact]
    public void HiddenAt_OnTheLineToAThing_NamesIt()
    {
        CabinGeometry cabin = Cabins.Of(BodyStyle.Saloon);
        Vector3D Between(Vector3D target) => cabin.DriverEye + (0.7 * (target - cabin.DriverEye));
        Assert.Equal("the interior mirror", cabin.DriverView.HiddenAt(Between(cabin.Mirror!.Center)));
        Assert.Equal("the instruments", cabin.DriverView.HiddenAt(Between(new(cabin.FindSite("dash-face-centre-vent")!.Position.X, cabin.DriverEye.Y, 0.67))));
        Assert.Equal("the road", cabin.DriverView.HiddenAt(cabin.DriverEye + Vector3D.Forward));
        Assert.Null(cabin.DriverView.HiddenAt(cabin.DriverEye - Vector3D.Forward));
    }

    [Fact]
    public void Windows_Road_HasTheAnglesItStates()
    {
        CabinGeometry cabin = Cabins.Of(BodyStyle.Saloon);
        Vector3D At(double azimuthDeg, double elevationDeg) => cabin.DriverEye + Vector3D.FromAngles(Angles.DegToRad(azimuthDeg), Angles.DegToRad(elevationDeg));
        Assert.Equal("the road", cabin.DriverView.HiddenAt(At(DriverView.RoadTowardDoorDeg - 0.1, 3)));
        Assert.Null(cabin.DriverView.HiddenAt(At(DriverView.RoadTowardDoorDeg + 0.1, 3)));
        Assert.Equal("the road", cabin.DriverView.HiddenAt(At(20, -DriverView.RoadDownDeg + 0.1)));
        Assert.Null(cabin.DriverView.HiddenAt(At(20, -DriverView.RoadDownDeg - 0.1)));
        Assert.Equal("the road", cabin.DriverView.HiddenAt(At(0, DriverView.RoadUpDeg - 0.1)));
        Assert.Null(cabin.DriverView.HiddenAt(At(0, DriverView.RoadUpDeg + 0.1)));
    }
}
