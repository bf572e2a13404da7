using CsCheck;
using Quarterlight.Quantities;

namespace Quarterlight.Cabin.Tests;

public class OccluderTests
{
    private static readonly Gen<Vector3D> Point = Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-1, 1], (x, y, z) => new Vector3D(x, y, z));

    private static readonly Gen<Occluder> Body = Gen.Select(Gen.Int[0, 2], Point, Point, Gen.Double[0.05, 0.4], (kind, a, b, r) => kind switch
    {
        0 => (Occluder)new BoxOccluder("box", Box3D.Around(0.5 * a, 0.1 + Math.Abs(b.X), 0.1 + Math.Abs(b.Y), 0.1 + Math.Abs(b.Z))),
        1 => new BallOccluder("ball", 0.5 * a, r),
        _ => new PostOccluder("post", a, b, r),
    });

    // Independent of the closed forms: walk along the line in small steps and look where one stands.
    [Fact]
    public void Cuts_AnyLine_AgreesWithWalkingAlongIt() => Gen.Select(Body, Point, Point).Sample(
        (body, from, to) =>
        {
            const int Steps = 2000;
            bool walked = false;
            for (int i = 0; i <= Steps && !walked; i++)
            {
                walked = body.Contains(from + ((double)i / Steps * (to - from)));
            }

            // A graze can slip between two steps, so only the other direction is exact.
            if (walked)
            {
                Assert.True(body.Cuts(from, to));
            }
            else
            {
                Assert.False(Shrunk(body).Cuts(from, to));
            }
        },
        iter: 2000);

    [Fact]
    public void Hides_PointWellClear_IsTheSameAsCuts() => Gen.Select(Body, Point, Point).Sample(
        (body, eye, point) =>
        {
            if (!Grown(body).Contains(point))
            {
                Assert.Equal(body.Cuts(eye, point), body.Hides(eye, point));
            }
        },
        iter: 2000);

    [Fact]
    public void Hides_PointInTheSkin_SeenFromTheFrontAndHiddenFromBehind()
    {
        var seat = new BoxOccluder("backrest", new Box3D(new(0, -0.3, 0), new(0.12, 0.3, 0.7)));
        var onBack = new Vector3D(0.005, 0.1, 0.5);
        Assert.False(seat.Hides(new(-1, 0.1, 0.6), onBack));
        Assert.True(seat.Hides(new(1, 0.1, 0.6), onBack));
        var ball = new BallOccluder("head", Vector3D.Zero, 0.1);
        Assert.False(ball.Hides(new(-1, 0, 0), new(-0.095, 0, 0)));
        Assert.True(ball.Hides(new(1, 0, 0), new(-0.095, 0, 0)));
        var post = new PostOccluder("pillar", new(0, 0, -1), new(0, 0, 1), 0.05);
        Assert.False(post.Hides(new(-1, 0, 0), new(-0.045, 0, 0)));
        Assert.True(post.Hides(new(1, 0, 0), new(-0.045, 0, 0)));
    }

    private static Occluder Shrunk(Occluder body) => Resized(body, -0.02);

    private static Occluder Grown(Occluder body) => Resized(body, Occluder.SkinM);

    private static Occluder Resized(Occluder body, double byM) => body switch
    {
        BoxOccluder box => box with { Box = box.Box.Grown(byM) },
        BallOccluder ball => ball with { RadiusM = ball.RadiusM + byM },
        PostOccluder post => post with { RadiusM = post.RadiusM + byM },
        _ => throw new ArgumentException("Unknown kind.", nameof(body)),
    };
}
