using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class CabinBuilderTests
{
    public static TheoryData<BodyStyle> AllBodies => Cabins.AllBodies;

    [Theory]
    [InlineData(BodyStyle.SmallHatch, "driver front-passenger rear-left rear-centre rear-right")]
    [InlineData(BodyStyle.Saloon, "driver front-passenger rear-left rear-centre rear-right")]
    [InlineData(BodyStyle.Estate, "driver front-passenger rear-left rear-centre rear-right")]
    [InlineData(BodyStyle.Suv, "driver front-passenger rear-left rear-centre rear-right")]
    [InlineData(BodyStyle.Pickup, "driver front-passenger rear-left rear-centre rear-right")]
    [InlineData(BodyStyle.Coupe, "driver front-passenger rear-left rear-right")]
    [InlineData(BodyStyle.PeopleCarrier, "driver front-passenger rear-left rear-centre rear-right third-left third-right")]
    [InlineData(BodyStyle.PanelVan, "driver front-centre front-passenger")]
    [InlineData(BodyStyle.BenchSeatClassic, "driver front-centre front-passenger rear-left rear-centre rear-right")]
    public void Build_EitherHand_HasTheSeatsOfTheBodyInOrder(BodyStyle body, string seats)
    {
        foreach (DriveSide side in Enum.GetValues<DriveSide>())
        {
            CabinGeometry cabin = CabinBuilder.Build(Cabins.Spec(body) with { DriveSide = side });
            Assert.Equal(seats, string.Join(' ', cabin.Seats.Select(s => s.Id)));
            Assert.Equal(side == DriveSide.Left, cabin.Seats[0].ReferencePoint.Y > 0);
            Assert.Equal(0, cabin.Seats[0].ReferencePoint.X);
            Assert.All(cabin.Seats.Where(s => s.Id.EndsWith("-left", StringComparison.Ordinal)), s => Assert.True(s.ReferencePoint.Y > 0));
        }
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Build_EveryBody_SeatsHeadsClearOfEverythingSolid(BodyStyle body) => CabinChecks.HeadsAreClear(Cabins.Of(body));

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Build_EveryBody_SharesEachFaceFully(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        foreach (CabinFace face in Enum.GetValues<CabinFace>())
        {
            Assert.Equal(1, cabin.Trim.Where(t => t.Face == face).Sum(t => t.AreaFraction), 9);
        }

        Assert.All(cabin.Trim, t => Assert.InRange(t.AreaFraction, 0, 1));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Build_EveryBody_PutsNoisePortsInsideWithTheirOwnIds(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        Assert.All(cabin.NoisePorts, p => Assert.True(cabin.Interior.Grown(1e-9).Contains(p.Position), p.Id));
        Assert.Equal(cabin.NoisePorts.Count, cabin.NoisePorts.Select(p => p.Id).Distinct().Count());
        Assert.Equal(4, cabin.NoisePorts.Count(p => p.Kind == NoisePortKind.Tyre));
        Assert.Equal(2, cabin.NoisePorts.Count(p => p.Kind == NoisePortKind.Wind));
        Assert.Equal(cabin.Windows.Count(w => w.Moves), cabin.NoisePorts.Count(p => p.Kind == NoisePortKind.Window));
        Assert.Equal(body == BodyStyle.PeopleCarrier ? 4 : 3, cabin.NoisePorts.Count(p => p.Kind == NoisePortKind.Vent));
    }

    [Fact]
    public void Build_EngineLayouts_PutTheEngineWhereItIs()
    {
        double X(EngineLayout layout) => CabinBuilder.Build(Cabins.Spec(BodyStyle.Saloon) with { Engine = layout }).NoisePorts.Single(p => p.Kind == NoisePortKind.Engine).Position.X;
        Seat driver = Cabins.Of(BodyStyle.Saloon).Seats[0];
        Assert.True(X(EngineLayout.Front) > driver.Cushion.Max.X);
        Assert.InRange(X(EngineLayout.Middle), driver.Backrest.Min.X - 0.2, driver.Backrest.Min.X);
        Assert.True(X(EngineLayout.Rear) < X(EngineLayout.Middle) - 0.5);
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Build_EveryBody_AirIsLessThanTheBoxAndAtLeastHalf(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        Assert.InRange(cabin.AirVolumeM3, 0.5 * cabin.Interior.VolumeM3, 0.95 * cabin.Interior.VolumeM3);
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Build_EveryBody_DrawsBothViewsInsideTheCabin(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        Box3D around = cabin.Interior.Grown(1e-6);
        Assert.All(cabin.Outline, s => Assert.True(s.Points.Count >= 2 && s.Points.All(around.Contains), $"{s.View} {s.Kind}"));
        foreach (OutlineView view in Enum.GetValues<OutlineView>())
        {
            OutlineKind[] kinds = [.. cabin.Outline.Where(s => s.View == view).Select(s => s.Kind)];
            Assert.All(new[] { OutlineKind.Body, OutlineKind.Windscreen, OutlineKind.Roof, OutlineKind.RearGlass, OutlineKind.Dash, OutlineKind.Wheel }, k => Assert.Contains(k, kinds));
        }
    }

    [Fact]
    public void Build_GlassRoof_OpensTheRoofToCamerasAndTakesSuctionCupsNotTape()
    {
        CabinGeometry cabin = CabinBuilder.Build(Cabins.Spec(BodyStyle.Saloon) with { GlassRoof = true });
        MountSite above = cabin.FindSite("headliner-front-driver")!;
        Assert.Equal(SurfaceMaterial.Glass, above.Material);
        Assert.True(above.PermittedFixings.HasFlag(Fixings.SuctionCup));
        Vector3D head = SeatedHead.In(cabin.Seats[0], new HeadPose()).Center, drone = head + new Vector3D(0.1, 0, 3);
        Assert.DoesNotContain(cabin.Occluders, o => o.Cuts(drone, head));
        Assert.Contains(Cabins.Of(BodyStyle.Saloon).Occluders, o => o.Cuts(drone, head));
        Assert.Contains(cabin.Trim, t => t.Face == CabinFace.Roof && t.Material == TrimMaterial.Glazing);
    }

    [Fact]
    public void Build_PanelVan_HasABulkheadAndNoMirror()
    {
        CabinGeometry van = Cabins.Of(BodyStyle.PanelVan);
        Assert.Null(van.Mirror);
        Assert.Equal(6, van.Sites.Count(s => s.Family == MountFamily.Bulkhead));
        Assert.All(van.Windows, w => Assert.StartsWith("front-", w.Id, StringComparison.Ordinal));
    }
}
