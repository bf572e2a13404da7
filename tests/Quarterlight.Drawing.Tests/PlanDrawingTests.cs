using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

using SkiaSharp;

namespace Quarterlight.Drawing.Tests;

public class PlanDrawingTests
{
    [Theory]
    [MemberData(nameof(DrawingScenes.Indices), MemberType = typeof(DrawingScenes))]
    public void Draw_AnyScene_IsAPngOfTheStatedSizeFitForAPhone(int index)
    {
        DrawnPicture picture = DrawingScenes.All[index].Drawn.Picture;
        using SKBitmap decoded = SKBitmap.Decode(picture.Png);
        Assert.Equal((picture.WidthPx, picture.HeightPx), (decoded.Width, decoded.Height));
        Assert.Equal(1200, picture.WidthPx);
        Assert.True(picture.Png.Length < 300_000, $"{picture.Png.Length} bytes");
        Assert.Equal(SKColors.White, decoded.GetPixel(3, 3));
        Assert.Equal(Palette.Microphone, AnyPixel(decoded, Palette.Microphone));
    }

    [Fact]
    public async Task Draw_SameInput_GivesTheSameBytesAlsoSideBySide()
    {
        PlannedScene scene = DrawingScenes.SaloonOfThree;
        byte[] once = scene.Draw().Png;
        DrawnPicture[] again = await Task.WhenAll(Enumerable.Range(0, 3).Select(_ => Task.Run(() => scene.Draw(), TestContext.Current.CancellationToken)));
        Assert.All(again, p => Assert.Equal(once, p.Png));
    }

    [Fact]
    public void Draw_DifferentPlaces_GiveDifferentPictures()
    {
        PlannedScene scene = DrawingScenes.SaloonOfThree;
        TalkerPlacement first = scene.Plan.Best.Placements[0];
        PlanOption moved = scene.Plan.Best with
        {
            Placements = [first with { Capsule = first.Capsule + new Vector3D(0, 0.02, 0) }, .. scene.Plan.Best.Placements.Skip(1)],
        };
        Assert.NotEqual(scene.Drawn.Picture.Png, PlanDrawing.DrawWithLabels(scene.Cabin, scene.Kit, scene.Scene, moved).Picture.Png);
        PlannedScene without = DrawingScenes.Saloon(first.Site.Id);
        Assert.NotEqual(scene.Drawn.Picture.Png, without.Drawn.Picture.Png);
        Assert.NotEmpty(scene.Plan.RunnersUp);
        Assert.All(scene.Plan.RunnersUp, option => Assert.NotEqual(scene.Drawn.Picture.Png, scene.Draw(option).Png));
    }

    [Fact]
    public void Draw_OptionOfAnotherPlan_Throws()
    {
        PlannedScene scene = DrawingScenes.SaloonOfThree, other = DrawingScenes.VanOfOne;
        Assert.Throws<ArgumentException>(() => PlanDrawing.Draw(scene.Cabin, scene.Kit, scene.Scene, scene.Plan, other.Plan.Best));
    }

    [Fact]
    public void Draw_SeatOfAnotherCar_Throws()
    {
        PlannedScene van = DrawingScenes.VanOfOne, carrier = DrawingScenes.CarrierOfFive;
        Assert.Throws<ArgumentException>(() => PlanDrawing.Draw(van.Cabin, carrier.Kit, carrier.Scene, carrier.Plan, carrier.Plan.Best));
    }

    // Measured on the picture itself: the outer edges of the ink body line, which is 5 pixels wide, from above.
    [Fact]
    public void Draw_Body_IsAsWideAsTheScaleBarSays()
    {
        PlannedScene scene = DrawingScenes.VanOfOne;
        using SKBitmap picture = SKBitmap.Decode(scene.Drawn.Picture.Png);
        ViewProjection plan = SheetLayout.For(scene.Cabin, scene.Scene).Plan;
        IReadOnlyList<Vector3D> body = scene.Cabin.Outline.First(s => s.Kind == OutlineKind.Body && s.View == OutlineView.Plan).Points;
        double widthM = body.Max(p => p.Y) - body.Min(p => p.Y);

        int column = (int)plan.Point(new(scene.Cabin.Seats[0].Cushion.Center.X, 0, 0)).X;
        int[] ink = [.. Enumerable.Range((int)plan.Frame.Top + 3, (int)plan.Frame.Height - 6).Where(y => Palette.Luminance(picture.GetPixel(column, y)) < 0.05)];
        double bodyPx = ink.Max() + 1 - ink.Min() - 5;

        float barTop = SheetLayout.For(scene.Cabin, scene.Scene).LegendTop;
        Assert.Equal(widthM, bodyPx / InkRun(picture, (int)barTop + 24 - 7), 0.01);

        // 1 ft = 0.3048 m: the international foot, fixed by the agreement of 1959.
        Assert.Equal(widthM / (3 * 0.3048), bodyPx / InkRun(picture, (int)barTop + 68 - 7), 0.01);
    }

    /// <summary>Length in pixels of the run of ink that starts at the left margin in a row.</summary>
    private static int InkRun(SKBitmap picture, int row)
    {
        int left = (int)SheetLayout.MarginPx + 2, x = left;
        while (Palette.Luminance(picture.GetPixel(x, row)) < 0.5)
        {
            x++;
        }

        return x - left + 1;
    }

    private static SKColor AnyPixel(SKBitmap picture, SKColor color) => picture.Pixels.FirstOrDefault(p => p == color);
}
