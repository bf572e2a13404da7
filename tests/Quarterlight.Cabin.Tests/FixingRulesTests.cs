namespace Quarterlight.Cabin.Tests;

// Common practice, no source: what riggers will and will not do to a car that goes back to its owner.
public class FixingRulesTests
{
    private static readonly Fixings[] Single = [.. Enum.GetValues<Fixings>().Where(f => f != Fixings.None)];

    [Theory]
    [InlineData(Fixings.PaperTape, SurfaceMaterial.Leather, "leather")]
    [InlineData(Fixings.SuctionCup, SurfaceMaterial.Leather, "leather")]
    [InlineData(Fixings.SuctionCup, SurfaceMaterial.Cloth, "smooth")]
    [InlineData(Fixings.SuctionCup, SurfaceMaterial.SoftPlastic, "smooth")]
    [InlineData(Fixings.PaperTape, SurfaceMaterial.Carpet, "carpet")]
    [InlineData(Fixings.BodyMount, SurfaceMaterial.Metal, "clothing")]
    public void WhyNot_WrongMaterial_SaysWhy(Fixings fixing, SurfaceMaterial material, string word) =>
        Assert.Contains(word, FixingRules.WhyNot(fixing, material), StringComparison.Ordinal);

    [Theory]
    [InlineData(Fixings.PaperTape, MountFamily.DashTop, SurfaceMaterial.SoftPlastic)]
    [InlineData(Fixings.PaperTape, MountFamily.MovingGlass, SurfaceMaterial.Glass)]
    [InlineData(Fixings.WeightedBase, MountFamily.Visor, SurfaceMaterial.Cloth)]
    [InlineData(Fixings.SuctionCup, MountFamily.HeadrestPost, SurfaceMaterial.Metal)]
    public void WhyNot_WrongPlace_SaysWhy(Fixings fixing, MountFamily family, SurfaceMaterial material)
    {
        Assert.NotNull(FixingRules.WhyNot(fixing, family, material));
        Assert.False(FixingRules.PermittedOn(family, material).HasFlag(fixing));
    }

    [Theory]
    [InlineData(MountFamily.Visor, SurfaceMaterial.Cloth, Fixings.SpringClip)]
    [InlineData(MountFamily.FixedGlass, SurfaceMaterial.Glass, Fixings.SuctionCup)]
    [InlineData(MountFamily.Headliner, SurfaceMaterial.Cloth, Fixings.PaperTape)]
    [InlineData(MountFamily.HeadrestPost, SurfaceMaterial.Metal, Fixings.ArticulatedArm)]
    [InlineData(MountFamily.Floor, SurfaceMaterial.Carpet, Fixings.WeightedBase)]
    [InlineData(MountFamily.BodyWorn, SurfaceMaterial.Clothing, Fixings.BodyMount)]
    public void PermittedOn_UsualPractice_Permits(MountFamily family, SurfaceMaterial material, Fixings fixing) =>
        Assert.True(FixingRules.PermittedOn(family, material).HasFlag(fixing));

    [Fact]
    public void PermittedOn_AnyPlace_IsExactlyWhatHasNoReasonAgainstIt()
    {
        foreach (MountFamily family in Enum.GetValues<MountFamily>())
        {
            foreach (SurfaceMaterial material in Enum.GetValues<SurfaceMaterial>())
            {
                Fixings permitted = FixingRules.PermittedOn(family, material);
                Assert.All(Single, f => Assert.Equal(FixingRules.WhyNot(f, family, material) is null, permitted.HasFlag(f)));
            }
        }
    }

    [Fact]
    public void Sites_EveryBody_HaveAtLeastOneFixingUnlessLeather()
    {
        foreach (MountSite site in Cabins.Bodies.SelectMany(b => Cabins.Of(b).Sites))
        {
            Assert.True(site.PermittedFixings != Fixings.None, site.Id);
        }
    }

    [Theory]
    [InlineData(Fixings.None)]
    [InlineData(Fixings.PaperTape | Fixings.SuctionCup)]
    public void WhyNot_NotExactlyOne_Throws(Fixings fixing) =>
        Assert.Throws<ArgumentException>(() => FixingRules.WhyNot(fixing, SurfaceMaterial.Glass));
}
