using System.Globalization;

using CsCheck;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class LabelTests
{
    [Theory]
    [MemberData(nameof(DrawingScenes.Indices), MemberType = typeof(DrawingScenes))]
    public void Labels_AnyScene_DoNotOverlapAndStayOnTheSheet(int index)
    {
        (DrawnPicture picture, IReadOnlyList<DrawnLabel> labels) = DrawingScenes.All[index].Drawn;
        var sheet = new SKRect(0, 0, picture.WidthPx, picture.HeightPx);
        Assert.All(labels, label => Assert.True(sheet.Contains(label.Box), $"{label.Text} leaves the sheet"));
        for (int i = 0; i < labels.Count; i++)
        {
            Assert.All(labels.Skip(i + 1), other => Assert.False(labels[i].Box.IntersectsWith(other.Box), $"{labels[i].Series} {labels[i].Text} and {other.Series} {other.Text} overlap"));
        }
    }

    // 32 of 1200 pixels are 9.6 when the picture is shown 360 pixels wide.
    [Theory]
    [MemberData(nameof(DrawingScenes.Indices), MemberType = typeof(DrawingScenes))]
    public void Labels_AnyScene_AreLargeEnoughForAPhone(int index) =>
        Assert.All(DrawingScenes.All[index].Drawn.Labels, label => Assert.True(label.TextHeightPx >= 32, label.Text));

    [Theory]
    [MemberData(nameof(DrawingScenes.Indices), MemberType = typeof(DrawingScenes))]
    public void Labels_AnyScene_NumberEveryTalkerAndMicrophoneInBothViews(int index)
    {
        PlannedScene scene = DrawingScenes.All[index];
        IReadOnlyList<DrawnLabel> labels = scene.Drawn.Labels;
        SheetLayout layout = SheetLayout.For(scene.Cabin, scene.Scene);
        foreach (SKRect frame in new[] { layout.Plan.Frame, layout.Side.Frame })
        {
            for (int t = 0; t < scene.Scene.Talkers.Count; t++)
            {
                string number = (t + 1).ToString(CultureInfo.InvariantCulture);
                bool covered = scene.Plan.Best.Placements.Any(p => p.TalkerId == scene.Scene.Talkers[t].Id);
                Assert.Single(labels, l => l.Series == Callouts.TalkerSeries && frame.Contains(l.Box) && l.Text.Split(',').Contains(number));
                Assert.Equal(covered ? 1 : 0, labels.Count(l => l.Series == Callouts.MicrophoneSeries && frame.Contains(l.Box) && l.Text.Split('+').Contains(number)));
            }

            Assert.All(scene.Scene.Shots, shot => Assert.Single(labels, l => l.Series == Callouts.CameraSeries && frame.Contains(l.Box) && l.Text.StartsWith(CameraPainter.LabelOf(shot), StringComparison.Ordinal)));
        }
    }

    // Ten labels take a twentieth of this frame, so there is always room.
    [Fact]
    public void Place_ScatteredAnchors_NeverOverlapWhileThereIsRoom() =>
        Gen.Select(Gen.Float[0, 1100], Gen.Float[0, 500]).Array[10].Sample(anchors =>
        {
            var frame = new SKRect(0, 0, 1100, 500);
            var placer = new LabelPlacer(frame);
            List<SKRect> boxes = [.. anchors.Select(a => placer.Place(new(a.Item1, a.Item2), new(60, 46), 20))];
            Assert.All(boxes, b => Assert.True(frame.Contains(b)));
            for (int i = 0; i < boxes.Count; i++)
            {
                Assert.DoesNotContain(boxes.Skip(i + 1), b => b.IntersectsWith(boxes[i]));
            }
        });

    [Fact]
    public void Place_NothingInTheWay_SitsNextToItsAnchor()
    {
        SKRect box = new LabelPlacer(new SKRect(0, 0, 1000, 1000)).Place(new(500, 500), new(60, 46), 20);
        Assert.Equal(20, SKPoint.Distance(new(500, 500), LabelPlacer.Nearest(box, new(500, 500))), 0.01);
    }
}
