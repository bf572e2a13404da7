using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class CabinPropertyTests
{
    private static readonly Gen<CabinSpec> AnyCabin =
        from body in Gen.Enum<BodyStyle>()
        from side in Gen.Enum<DriveSide>()
        from engine in Gen.Enum<EngineLayout>()
        from glassRoof in Gen.Bool
        from spread in Gen.Int[0, 2].Select(i => new[] { 0.05, 0.15, 0.40 }[i])
        from steps in Gen.Double[-1, 1].Array[11]
        select new CabinSpec
        {
            Body = body,
            DriveSide = side,
            Engine = engine,
            GlassRoof = glassRoof,
            Measurements = Cabins.Scaled(CabinTemplates.MeasurementsFor(body), [.. steps.Select(s => 1 + (spread * s))]),
        };

    [Fact]
    public void Build_AnyMeasurements_BuildsASoundCabinOrRefusesWithFieldAndRemedy()
    {
        int built = 0, refused = 0;
        AnyCabin.Sample(
            spec =>
            {
                IReadOnlyList<Violation> violations = CabinRules.Validate(spec, "cabin");
                if (violations.Count > 0)
                {
                    Interlocked.Increment(ref refused);
                    Assert.All(violations, v =>
                    {
                        Assert.StartsWith("cabin.measurements.", v.Field, StringComparison.Ordinal);
                        Assert.NotEmpty(v.Problem);
                        Assert.NotEmpty(v.Remedy);
                    });
                    return;
                }

                Interlocked.Increment(ref built);
                CabinGeometry cabin = CabinBuilder.Build(spec);
                CabinChecks.HeadsAreClear(cabin);
                CabinChecks.SitesAreSound(cabin);
                Assert.All(cabin.NoisePorts, p => Assert.True(cabin.Interior.Grown(1e-9).Contains(p.Position), p.Id));
                Assert.True(cabin.AirVolumeM3 > 0);
                Assert.All(cabin.Glazing, g => Assert.InRange(g.AreaM2, 0.01, 8));
            },
            iter: 3000);

        // Both outcomes must have been met, or the property says nothing.
        Assert.True(built > 300 && refused > 300, $"built {built}, refused {refused}");
    }

    [Fact]
    public void Build_TheOtherHand_IsTheMirrorImage() => AnyCabin.Sample(
        spec =>
        {
            if (CabinRules.Validate(spec, "").Count > 0)
            {
                return;
            }

            CabinGeometry left = CabinBuilder.Build(spec with { DriveSide = DriveSide.Left });
            CabinGeometry right = CabinBuilder.Build(spec with { DriveSide = DriveSide.Right });
            Assert.True(left.Seats[0].ReferencePoint.Y > 0 && right.Seats[0].ReferencePoint.Y < 0);
            Assert.Equal(left.Sites.Count, right.Sites.Count);
            foreach (MountSite site in left.Sites)
            {
                MountSite other = right.FindSite(OtherSide(site.Id))!;
                Assert.Equal(site.Position.MirroredLeftRight(), other.Position);
                Assert.Equal(site.Normal.MirroredLeftRight(), other.Normal);
                Assert.Equal(site.PermittedFixings, other.PermittedFixings);
                Assert.Equal((site.FreeDepthM, site.InDriverView, site.NearVent, site.NearLoudspeaker), (other.FreeDepthM, other.InDriverView, other.NearVent, other.NearLoudspeaker));
                Assert.Equal(site.AirbagZone is null, other.AirbagZone is null);
                Assert.Equal(other.InDriverView, right.DriverView.HiddenBy(other.Position, other.Normal) is not null);
            }

            foreach (Seat seat in left.Seats)
            {
                Assert.Equal(seat.Backrest.MirroredLeftRight(), right.FindSeat(OtherSide(seat.Id))!.Backrest);
            }

            Assert.Equal(left.DriverEye.MirroredLeftRight(), right.DriverEye);
            Assert.All(right.NoisePorts.Where(p => p.Id.EndsWith("-left", StringComparison.Ordinal)), p => Assert.True(p.Position.Y > 0, p.Id));
            Assert.All(right.Windows, w => Assert.Equal(w.Face == CabinFace.Left, w.Glass.Center.Y > 0));
        },
        iter: 500);

    // Written apart from the product's own swap, word by word.
    private static string OtherSide(string id) => string.Join('-', id.Split('-').Select(word => word switch { "left" => "right", "right" => "left", _ => word }));
}
