using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class MountSiteTests
{
    public static TheoryData<BodyStyle> AllBodies => Cabins.AllBodies;

    // The project's own floor for each body, so that a family that silently vanishes is noticed.
    [Theory]
    [InlineData(BodyStyle.SmallHatch, 90)]
    [InlineData(BodyStyle.Saloon, 100)]
    [InlineData(BodyStyle.Estate, 110)]
    [InlineData(BodyStyle.Coupe, 90)]
    [InlineData(BodyStyle.Suv, 110)]
    [InlineData(BodyStyle.PeopleCarrier, 130)]
    [InlineData(BodyStyle.Pickup, 90)]
    [InlineData(BodyStyle.PanelVan, 60)]
    [InlineData(BodyStyle.BenchSeatClassic, 90)]
    public void Sites_EachBody_AreManyEnough(BodyStyle body, int atLeast) => Assert.True(Cabins.Of(body).Sites.Count >= atLeast);

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Sites_EachBody_AreInsideAndLookInward(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        CabinChecks.SitesAreSound(cabin);
        Assert.All(cabin.Sites, s => Assert.True(cabin.Interior.Contains(s.Position + (0.05 * s.Normal)), s.Id));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Sites_EachBody_NameTheirSeatsAndPanes(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        Assert.All(cabin.Sites.Where(s => s.SeatId is not null), s => Assert.NotNull(cabin.FindSeat(s.SeatId!)));
        Assert.All(cabin.Sites.Where(s => s.PaneId is not null), s => Assert.Contains(cabin.Windows, w => w.Id == s.PaneId && w.Moves == s.OnMovingGlass));
        Assert.All(cabin.Sites, s => Assert.Equal(s.Family == MountFamily.MovingGlass, s.OnMovingGlass));
        Assert.All(cabin.Sites, s => Assert.Matches("^[a-z]+(-[a-z]+)*$", s.Id));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void Sites_EachBody_HaveEverySeatsHeadrestAndBothVisors(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        Assert.All(cabin.Seats, seat => Assert.True(cabin.Sites.Count(s => s.Family == MountFamily.HeadrestPost && s.SeatId == seat.Id) == 2, seat.Id));
        Assert.Equal(6, cabin.Sites.Count(s => s.Family == MountFamily.Visor));
    }

    [Fact]
    public void Sites_LeatherSaloon_LeatherTakesNeitherTapeNorSuctionCup()
    {
        CabinGeometry cabin = CabinBuilder.Build(Cabins.Spec(BodyStyle.Saloon) with { Upholstery = Upholstery.Leather });
        MountSite[] leather = [.. cabin.Sites.Where(s => s.Material == SurfaceMaterial.Leather)];
        Assert.True(leather.Length >= 6);
        Assert.All(leather, s => Assert.False(s.PermittedFixings.HasFlag(Fixings.PaperTape) || s.PermittedFixings.HasFlag(Fixings.SuctionCup), s.Id));
    }

    [Theory]
    [MemberData(nameof(AllBodies))]
    public void AirbagZone_DashInFrontOfThePassenger_FlaggedWhereThereAreAirbags(BodyStyle body)
    {
        CabinGeometry cabin = Cabins.Of(body);
        bool fitted = body != BodyStyle.BenchSeatClassic;
        MountSite[] tops = [.. cabin.Sites.Where(s => s.Id is "dash-top-passenger" or "dash-top-far-passenger")];
        Assert.NotEmpty(tops);
        Assert.All(tops, s => Assert.Equal(fitted ? "passenger's front airbag" : null, s.AirbagZone));
        Assert.Equal(fitted, cabin.AirbagZones.Count > 0);
        Assert.Equal(fitted, cabin.Sites.Any(s => s.AirbagZone is not null));
    }

    [Theory]
    [InlineData("dash-top-passenger")]
    [InlineData("dash-face-passenger")]
    [InlineData("dash-face-driver-low")]
    [InlineData("glass-driver-rear-high")]
    [InlineData("pillar-b-passenger-high")]
    [InlineData("grab-passenger")]
    public void AirbagZone_ObviousPlacesInASaloon_Flagged(string id) => Assert.NotNull(Cabins.Of(BodyStyle.Saloon).FindSite(id)!.AirbagZone);

    [Fact]
    public void AirbagZone_VisorsAndHeadlinerAndConsole_Free()
    {
        foreach (BodyStyle body in Cabins.Bodies)
        {
            Assert.All(
                Cabins.Of(body).Sites.Where(s => s.Family is MountFamily.Visor or MountFamily.Headliner or MountFamily.CentreConsole or MountFamily.HeadrestPost),
                s => Assert.True(s.AirbagZone is null, $"{body} {s.Id}"));
        }
    }

    [Fact]
    public void HasAirbags_ToldOtherwise_WinsOverTheTemplate()
    {
        Assert.Empty(CabinBuilder.Build(Cabins.Spec(BodyStyle.Saloon) with { HasAirbags = false }).AirbagZones);
        Assert.NotEmpty(CabinBuilder.Build(Cabins.Spec(BodyStyle.BenchSeatClassic) with { HasAirbags = true }).AirbagZones);
    }

    [Fact]
    public void NearVent_CentreVent_TrueAndRearHeadlinerFalse()
    {
        CabinGeometry cabin = Cabins.Of(BodyStyle.Saloon);
        Assert.True(cabin.FindSite("dash-face-centre-vent")!.NearVent);
        Assert.False(cabin.FindSite("headliner-above-rear-centre")!.NearVent);
        Assert.True(Cabins.Of(BodyStyle.PeopleCarrier).FindSite("headliner-between-rear-centre")!.NearVent);
    }

    [Fact]
    public void FreeDepth_DashTopAgainstTheGlass_IsTheHeightOfTheGlassAboveIt()
    {
        CabinGeometry cabin = Cabins.Of(BodyStyle.Saloon);
        MountSite far = cabin.FindSite("dash-top-far-centre")!;
        // Rake 29 degrees: height = distance to the windscreen's base times its tangent.
        double expected = (cabin.Interior.Max.X - far.Position.X) * Math.Tan(Angles.DegToRad(29));
        Assert.Equal(expected, far.FreeDepthM, 2);
        Assert.True(cabin.FindSite("dash-top-centre")!.FreeDepthM > far.FreeDepthM);
    }

    [Fact]
    public void ParcelShelf_OnlyWhereThereIsOne()
    {
        foreach (BodyStyle body in Cabins.Bodies)
        {
            bool shelf = body is BodyStyle.SmallHatch or BodyStyle.Saloon or BodyStyle.Coupe or BodyStyle.BenchSeatClassic;
            Assert.Equal(shelf ? 3 : 0, Cabins.Of(body).Sites.Count(s => s.Family == MountFamily.ParcelShelf));
        }
    }

    [Fact]
    public void Words_PassengerVisor_AreARiggers() =>
        Assert.Equal("passenger visor, inner edge", Cabins.Of(BodyStyle.Saloon).FindSite("visor-passenger-inner")!.Words);
}
