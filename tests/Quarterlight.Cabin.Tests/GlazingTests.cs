using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class GlazingTests
{
    public static TheoryData<BodyStyle> AllBodies => Cabins.AllBodies;

    // Published parameters of a cabin heat model of a hatchback (public repository SGilSayas/MACproject, JRC_CabinEnergyLoads.m, 2021):
    // windscreen 0.63 x 1.3 m, rear 0.29 x 1 m, each side 1.45 x 0.29 m, together 1.95 m2. Its cabin is 1.1 m wide, ours wider.
    [Fact]
    public void Glazing_SmallHatch_LiesNearAPublishedModel()
    {
        CabinGeometry cabin = Cabins.Of(BodyStyle.SmallHatch);
        Assert.Equal(2 * 1.45 * 0.29, cabin.Windows.Sum(w => Pane(cabin, w.Id).AreaM2), 0.15);
        Assert.InRange(cabin.Glazing.Sum(g => g.AreaM2), 1.95, 1.25 * 1.95);
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Glazing_EveryBody_HasOneWindscreenAndItsWindowsAndRearGlassUnlessABulkheadStandsThere(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        string[] rear = body == BodyStyle.PanelVan ? [] : ["rear"];
        Assert.Equal(["windscreen", .. rear, .. cabin.Windows.Select(w => w.Id)], cabin.Glazing.Select(g => g.Id));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Glazing_EveryBody_PointsOutward(BodyStyle body)
    {
        CabinGeometry cabin = CabinBuilder.Build(Cabins.Spec(body) with { GlassRoof = true });
        Assert.All(cabin.Glazing, g => Assert.Equal(1, g.OutwardNormal.Length, 12));
        Assert.All(cabin.Glazing, g => Assert.True(g.OutwardNormal.Z >= 0, "glass looks at the sky, or level"));
        Assert.True(Pane(cabin, "windscreen").OutwardNormal is { X: > 0.4, Y: 0 });
        Assert.Equal(Vector3D.Up, Pane(cabin, "roof").OutwardNormal);
        Assert.All(cabin.Glazing.Where(g => g.Id == "rear"), g => Assert.True(g.OutwardNormal.X < -0.5));
        Assert.All(cabin.Windows, w => Assert.True(Pane(cabin, w.Id).OutwardNormal.Y * w.Glass.Center.Y > 0, w.Id));
    }

    // Seen from the side, a pane is the rectangle its window is; seen straight on it is larger.
    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Glazing_EverySidePane_ProjectsToItsWindow(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        Assert.All(cabin.Windows, w => Assert.Equal(w.Glass.Size.X * w.Glass.Size.Z, Pane(cabin, w.Id).AreaM2 * Math.Abs(Pane(cabin, w.Id).OutwardNormal.Y), 1e-9));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Glazing_TheOtherHand_IsTheMirrorImage(BodyStyle body)
    {
        CabinGeometry left = Cabins.Of(body), right = CabinBuilder.Build(Cabins.Spec(body) with { DriveSide = DriveSide.Right });
        Assert.Equal(left.Glazing.Count, right.Glazing.Count);
        Assert.All(left.Glazing, g =>
        {
            GlazingPane other = Pane(right, g.Id.Replace("left", "\0").Replace("right", "left").Replace("\0", "right"));
            Assert.Equal(g.OutwardNormal.MirroredLeftRight(), other.OutwardNormal);
            Assert.Equal(g.AreaM2, other.AreaM2);
        });
    }

    private static GlazingPane Pane(CabinGeometry cabin, string id) => Assert.Single(cabin.Glazing, g => g.Id == id);
}
