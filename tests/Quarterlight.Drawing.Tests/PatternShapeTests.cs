using System.Globalization;

using CsCheck;

using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class PatternShapeTests
{
    // tests/vectors/patterns/patterns.csv: closed form of the first-order family, see its source note.
    [Fact]
    public void Nulls_AimInTheView_AreThePublishedAngles()
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "vectors/patterns/patterns.csv"));
        List<string[]> rows = [.. lines.Skip(1).Select(l => l.Split(','))];
        Assert.True(rows.Count >= 7, "the vector file is short of rows");
        Assert.Equal(["pattern", "A", "B", "null_deg"], lines[0].Split(',')[..4]);
        foreach (string[] row in rows)
        {
            IReadOnlyList<double> nulls = PatternShape.Nulls(PolarPattern.FirstOrder(double.Parse(row[1], CultureInfo.InvariantCulture)), 1);
            if (row[3].Length == 0)
            {
                Assert.Empty(nulls);
                continue;
            }

            double nullDeg = double.Parse(row[3], CultureInfo.InvariantCulture);
            Assert.All(nulls, n => Assert.Equal(nullDeg, Math.Abs(Angles.RadToDeg(n)), 0.02));
            Assert.Equal(nullDeg < 180 ? 2 : 1, nulls.Count);
        }
    }

    // A drawn pair of nulls must be true in space: each lies on the null cone around the aim, and the outline touches the capsule there.
    [Fact]
    public void Nulls_TiltedAim_LieOnTheNullConeInSpace() =>
        Gen.Select(Gen.Double[0, 0.49], Gen.Double[0.16, 1]).Sample((a, aimLength) =>
        {
            var pattern = PolarPattern.FirstOrder(a);
            var aim = new Vector3D(aimLength, 0, Math.Sqrt(1 - (aimLength * aimLength)));
            IReadOnlyList<double> nulls = PatternShape.Nulls(pattern, aimLength);
            if (nulls.Count == 2)
            {
                Assert.All(nulls, n => Assert.Equal(Math.Acos(-pattern.A / pattern.B), aim.AngleTo(Vector3D.FromAngles(n, 0)), 9));
                Assert.All(nulls, n => Assert.Equal(0, PatternShape.Response(pattern, aimLength, n), 9));
            }
        });

    // Squares of the aim's lengths from above and from the side sum to at least 1, so one is 0.707 or more: every
    // pattern with A/B below that shows its nulls in at least one view, and the narrower rear cones count as one null behind.
    [Fact]
    public void Nulls_AnyAim_AreSeenInAtLeastOneView() =>
        Gen.Select(Gen.Double[0, 0.5], Gen.Double[-Math.PI, Math.PI], Gen.Double[-1.57, 1.57]).Sample((a, azimuth, elevation) =>
        {
            var aim = Vector3D.FromAngles(azimuth, elevation);
            double fromAbove = Math.Sqrt((aim.X * aim.X) + (aim.Y * aim.Y)), fromSide = Math.Sqrt((aim.X * aim.X) + (aim.Z * aim.Z));
            var pattern = PolarPattern.FirstOrder(a);
            Assert.True(PatternShape.Nulls(pattern, fromAbove).Count + PatternShape.Nulls(pattern, fromSide).Count > 0);
        });

    [Fact]
    public void Outline_AimInTheView_IsThePolarDiagram()
    {
        PolarPattern pattern = PolarPattern.Supercardioid;
        Assert.All(PatternShape.Outline(pattern, 1), p => Assert.Equal(Math.Abs(pattern.A + (pattern.B * Math.Cos(p.AngleRad))), p.Radius, 9));
        Assert.All(PatternShape.Outline(PolarPattern.Omni, 0.3), p => Assert.Equal(1, p.Radius, 9));
        Assert.True(PatternShape.Response(PolarPattern.InterferenceTube(0.5), 1, 1.5) < PatternShape.Response(PolarPattern.Supercardioid, 1, 1.5));
    }

    [Fact]
    public void Projection_PointsAndLengths_AreToScaleInBothViews()
    {
        var plan = new ViewProjection(OutlineView.Plan, new(500, 300), 250, new(0, 0, 1200, 600));
        ViewProjection side = plan with { View = OutlineView.Side };
        Assert.Equal(new SKPoint(750, 50), plan.Point(new(1, 1, 9)));
        Assert.Equal(new SKPoint(250, 175), side.Point(new(-1, 9, 0.5)));
        Assert.Equal(25, plan.Length(0.1));
        Assert.Equal((0.0, 1.0), plan.Direction(Vector3D.Left));
        Assert.Equal((0.0, 0.0), side.Direction(Vector3D.Left));
        Assert.Equal(new SKRect(500, 175, 750, 300), side.Rectangle(new Box3D(new(0, -1, 0), new(1, 1, 0.5))));
    }
}
