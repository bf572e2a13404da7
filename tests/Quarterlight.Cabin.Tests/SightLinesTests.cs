using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class SightLinesTests
{
    private static readonly CabinGeometry Saloon = Cabins.Of(BodyStyle.Saloon);

    [Fact]
    public void Find_ThroughTheWindscreen_SeesTheVisorButNotTheSeatBacks()
    {
        CabinSights sights = new(Saloon, []);
        Shot bonnet = Shot(new(2.2, 0, 1.1), new(0, 0, 1.0), 24);
        Assert.True(sights.Find(bonnet, Samples("visor-passenger-middle")).Seen);
        SightLineResult behind = sights.Find(bonnet, Samples("seatback-front-passenger-middle"));
        Assert.False(behind.Seen);
        Assert.NotNull(behind.HiddenBy);
        Assert.Equal(0, behind.SamplesSeen);
    }

    [Fact]
    public void Find_HeadInTheWay_IsNamedAndOnlyWithTheHead()
    {
        // From the passenger's side across the driver's head to the driver's window.
        SeatedHead head = SeatedHead.In(Saloon.Seats[0], new HeadPose());
        Shot shot = Shot(head.Center - (0.5 * Vector3D.Left), head.Center, 35);
        Vector3D[] behind = [head.Center + (0.2 * Vector3D.Left)], beside = [head.Center + new Vector3D(0.18, 0.2, 0)];
        CabinSights empty = new(Saloon, []), full = new(Saloon, Cabins.Heads(Saloon));
        Assert.Equal(new SightLineResult(true, false, null, 1), empty.Find(shot, behind));
        Assert.Equal(new SightLineResult(false, false, "driver's head", 0), full.Find(shot, behind));
        Assert.Equal("driver's head", full.FirstBetween(shot.Position, behind[0]));
        Assert.True(full.Find(shot, beside).Seen);
    }

    [Fact]
    public void Find_OutOfFrame_IsNotSeenAndNothingHidesIt()
    {
        SightLineResult result = new CabinSights(Saloon, []).Find(Shot(new(0.45, 0, 1.0), new(-0.17, 0.37, 1.0), 85), Samples("dash-face-centre-vent"));
        Assert.Equal(new SightLineResult(false, false, null, 0), result);
    }

    [Fact]
    public void Find_LongerLens_NeverSeesMore() => Gen.Select(Gen.Double[0.3, 2.0], Gen.Double[-0.6, 0.6], Gen.Double[0.8, 1.1], Gen.Double[10, 100]).Sample(
        (x, y, z, focal) =>
        {
            CabinSights sights = new(Saloon, Cabins.Heads(Saloon));
            Shot wide = Shot(new(x, y, z), new(-0.17, 0.37, 1.0), focal), tight = wide with { FocalLengthMm = 1.5 * focal };
            Assert.All(Saloon.Sites, s =>
            {
                Vector3D[] samples = Samples(s.Id);
                Assert.True(sights.Find(wide, samples).SamplesSeen >= sights.Find(tight, samples).SamplesSeen);
            });
        },
        iter: 100);

    // Law of reflection: equal angles on both sides of the normal, all in one plane.
    [Fact]
    public void TryReflect_AnyPair_ObeysTheLawOfReflection()
    {
        int met = 0;
        var wide = Saloon.Mirror! with { WidthM = 4, HeightM = 4 };
        var mirror = new MirrorView(wide);
        Gen<Vector3D> point = Gen.Select(Gen.Double[-1.5, 0.2], Gen.Double[-0.7, 0.7], Gen.Double[0.2, 1.1], (x, y, z) => new Vector3D(x, y, z));
        Gen.Select(point, point).Sample(
            (eye, thing) =>
            {
                if (!mirror.TryReflect(eye, thing, out Vector3D glass))
                {
                    return;
                }

                Interlocked.Increment(ref met);
                Vector3D toEye = (eye - glass).Normalized(), toThing = (thing - glass).Normalized();
                Assert.Equal(0, (glass - wide.Center).Dot(wide.Normal), 9);
                Assert.Equal(toEye.Dot(wide.Normal), toThing.Dot(wide.Normal), 9);
                Assert.True((toEye + toThing).Cross(wide.Normal).Length < 1e-9);
            },
            iter: 1000);
        Assert.True(met > 100);
    }

    [Fact]
    public void Mirror_DriversEye_SeesTheRearGlassInIt()
    {
        MountSite rear = Saloon.FindSite("rear-glass-centre")!;
        var mirror = new MirrorView(Saloon.Mirror!);
        Assert.True(mirror.TryReflect(Saloon.DriverEye, rear.Position, out _));
        Assert.False(mirror.TryReflect(new(1.5, 0, 1.0), rear.Position, out _));
    }

    [Fact]
    public void Find_CameraFacingTheMirror_SeesWhatIsBehindTheCamera()
    {
        // Hand-made: mirror at the origin facing back along -x, camera behind looking forward at it.
        var mirror = new InteriorMirror(Vector3D.Zero, -Vector3D.Forward, 0.24, 0.06);
        Shot shot = Shot(new(-1, 0.10, 0), Vector3D.Zero, 50);
        Vector3D[] thing = [new(-2, -0.20, 0)];
        SightLineResult seen = SightLines.Find(shot, thing, [], mirror);
        Assert.Equal(new SightLineResult(true, true, null, 1), seen);
        Assert.False(SightLines.Find(shot, thing, [], null).Seen);

        // The ray meets the glass where 0.10 - 0.30 t = 0, t = 1/3: y = 0. Block either leg and it is gone.
        Assert.False(SightLines.Find(shot, thing, [new BallOccluder("hand", new(-0.5, 0.05, 0), 0.02)], mirror).Seen);
        Assert.False(SightLines.Find(shot, thing, [new BallOccluder("hand", new(-1, -0.10, 0), 0.02)], mirror).Seen);
        Assert.True(SightLines.Find(shot, thing, [new BallOccluder("hand", new(-1, -0.20, 0), 0.02)], mirror).Seen);

        // Beside the glass, and behind the mirror.
        Assert.False(SightLines.Find(shot, [new(-2, -1.2, 0)], [], mirror).Seen);
        Assert.False(SightLines.Find(shot with { Position = new(1, 0.1, 0) }, thing, [new BoxOccluder("wall", Box3D.Around(new(0.5, 0, 0), 0.02, 2, 2))], mirror).Seen);
    }

    [Fact]
    public void Find_ArrayListAndSpan_Agree()
    {
        Shot shot = Shot(new(1.8, 0, 1.1), new(0, 0, 1.0), 24);
        foreach (MountSite site in Saloon.Sites)
        {
            Vector3D[] samples = Samples(site.Id);
            SightLineResult fast = new CabinSights(Saloon, []).Find(shot, samples);
            Assert.Equal(fast, SightLines.Find(shot, samples, Saloon.Occluders, Saloon.Mirror));
            Assert.Equal(fast, SightLines.Find(shot, samples.ToList(), Saloon.Occluders.ToList(), Saloon.Mirror));
        }
    }

    [Fact]
    public void Find_ManySites_AllocatesNothing()
    {
        CabinSights sights = new(Saloon, Cabins.Heads(Saloon));
        var view = new CameraView(Shot(new(1.8, 0, 1.1), new(0, 0, 1.0), 24));
        Vector3D[][] all = [.. Saloon.Sites.Select(s => Samples(s.Id))];
        sights.Find(view, all[0]);
        long before = GC.GetAllocatedBytesForCurrentThread();
        foreach (Vector3D[] samples in all)
        {
            sights.Find(view, samples);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static Vector3D[] Samples(string siteId)
    {
        MountSite site = Saloon.FindSite(siteId)!;
        Vector3D front = site.Position + (0.03 * site.Normal);
        Vector3D across = Math.Abs(site.Normal.X) < 0.9 ? site.Normal.Cross(Vector3D.Forward).Normalized() : Vector3D.Left;
        return [front, front + (0.01 * site.Normal), front + (0.01 * across), front - (0.01 * across)];
    }

    private static Shot Shot(Vector3D from, Vector3D at, double focalMm) => new()
    {
        Id = "A",
        Position = from,
        AimPoint = at,
        FocalLengthMm = focalMm,
        SensorWidthMm = 24.9,
        SensorHeightMm = 14,
    };
}
