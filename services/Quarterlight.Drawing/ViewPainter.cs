using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws one view: first everything to scale, then the labels where there is room.</summary>
internal sealed class ViewPainter(PictureSheet sheet, ViewProjection view, CabinGeometry cabin, Kit kit, Scene scene, PlanOption option)
{
    private readonly LabelPlacer placer = new(SKRect.Inflate(view.Frame, -6, -6));
    private readonly List<Action> labels = [];

    public void Draw(string caption)
    {
        sheet.Words(caption, view.Frame.Left, view.Frame.Top - 15, true);
        DrawFrontArrow();
        sheet.Canvas.Save();
        sheet.Canvas.ClipRect(view.Frame);
        DrawToScale();
        sheet.Canvas.Restore();
        using SKPaint edge = PictureSheet.Pen(Palette.CarLine, 1.5f);
        sheet.Canvas.DrawRect(view.Frame, edge);
        PlaceLabels();
        labels.ForEach(draw => draw());
    }

    private void DrawFrontArrow()
    {
        const string Front = "front";
        const float Arrow = 44;
        float baseline = view.Frame.Top - 15, tip = view.Frame.Right - 2, middle = baseline - 11;
        sheet.Words(Front, tip - Arrow - 12 - DrawingFonts.Width(Front, PictureSheet.TextPx, true), baseline, true);
        using SKPaint pen = PictureSheet.Pen(Palette.Ink, 4), fill = PictureSheet.Brush(Palette.Ink);
        sheet.Line(new(tip - Arrow, middle), new(tip - 14, middle), pen);
        sheet.Shape([new(tip, middle), new(tip - 18, middle - 11), new(tip - 18, middle + 11)], true, fill);
    }

    private void DrawToScale()
    {
        CabinPainter.DrawCar(sheet, view, cabin);
        for (int i = 0; i < scene.Shots.Count; i++)
        {
            CameraPainter.DrawFan(sheet, view, scene.Shots[i], i, scene.Shots.Count);
        }

        CabinPainter.DrawOpenWindows(sheet, view, cabin, scene);
        if (CabinPainter.Engine(cabin) is { } engine)
        {
            CabinPainter.DrawEngine(sheet, view.Point(engine.Position), scene.Drive.Engine == EngineState.Running);
        }

        List<TalkerPlacement> microphones = [.. ByInput().Select(shared => shared.First())];
        microphones.ForEach(p => MicrophonePainter.DrawOutline(sheet, view, p, PatternOf(p)));
        foreach (string seatId in scene.SilentSeatIds)
        {
            TalkerPainter.DrawSilent(sheet, view, cabin, seatId);
        }

        foreach (Talker talker in scene.Talkers)
        {
            TalkerPainter.Draw(sheet, view, cabin, talker);
        }

        microphones.ForEach(p => MicrophonePainter.DrawLines(sheet, view, p, PatternOf(p)));
        foreach (Shot shot in scene.Shots)
        {
            CameraPainter.DrawBody(sheet, view, shot);
        }
    }

    private PolarPattern PatternOf(TalkerPlacement placement) =>
        kit.Microphones.FirstOrDefault(m => m.Id == placement.MicrophoneId)?.Pattern
        ?? throw new ArgumentException($"The kit has no microphone {placement.MicrophoneId}.", nameof(placement));

    private IEnumerable<IGrouping<int, TalkerPlacement>> ByInput() => option.Placements.GroupBy(p => p.RecorderInput);

    private void PlaceLabels()
    {
        float head = view.Length(SeatedHead.RadiusM);
        foreach (Talker talker in scene.Talkers)
        {
            placer.Avoid(Square(view.Point(TalkerPainter.MainHead(cabin, talker).Center), head), 120);
        }

        foreach (OutlineStroke wheel in cabin.Outline.Where(s => s.Kind == OutlineKind.Wheel && s.View == view.View))
        {
            SKPoint[] ring = [.. wheel.Points.Select(view.Point)];
            placer.Avoid(new(ring.Min(p => p.X), ring.Min(p => p.Y), ring.Max(p => p.X), ring.Max(p => p.Y)), 60);
        }

        foreach (TalkerPlacement placement in option.Placements)
        {
            SKPoint capsule = view.Point(placement.Capsule);
            (double angle, double length) = MicrophonePainter.AimSeen(view, placement);
            placer.Take(Square(capsule, 12));
            placer.Avoid(Square(capsule, MicrophonePainter.PatternPx), 60);
            foreach (SKPoint tip in MicrophonePainter.Tips(capsule, PatternOf(placement), angle, length))
            {
                placer.Avoid(Square(tip, 22), 60);
            }
        }

        if (CabinPainter.Engine(cabin) is { } port)
        {
            placer.Take(Square(view.Point(port.Position), 30));
        }

        PlaceTalkers();
        foreach (IGrouping<int, TalkerPlacement> shared in ByInput())
        {
            string text = Callouts.Numbers(scene, shared.Select(p => p.TalkerId));
            Add(view.Point(shared.First().Capsule), Callouts.BadgeSize(text), 26, box => Callouts.Microphone(sheet, text, box));
        }

        PlaceCameras();
        if (CabinPainter.Engine(cabin) is { } engine)
        {
            string name = cabin.Spec.Engine == EngineLayout.Electric ? "motor" : "engine";
            string words = scene.Drive.Engine == EngineState.Running ? name : name + " off";
            AddPlate(view.Point(engine.Position), words, Callouts.PlateSeries, 38, Palette.Ink);
        }

        foreach (WindowPane pane in OpenPanesSeen())
        {
            AddPlate(Middle(view.Rectangle(pane.Glass)), "open", Callouts.PlateSeries, 14, Palette.Ink);
        }
    }

    /// <summary>One badge for heads that fall on one another in this view, such as the two front seats' from the side.</summary>
    private void PlaceTalkers()
    {
        var groups = new List<(SKPoint At, List<string> Ids)>();
        foreach (Talker talker in scene.Talkers)
        {
            SKPoint center = view.Point(TalkerPainter.MainHead(cabin, talker).Center);
            int same = groups.FindIndex(g => SKPoint.Distance(g.At, center) < view.Length(SeatedHead.RadiusM));
            if (same < 0)
            {
                groups.Add((center, [talker.Id]));
            }
            else
            {
                groups[same].Ids.Add(talker.Id);
            }
        }

        foreach ((SKPoint at, List<string> ids) in groups)
        {
            string text = Callouts.Numbers(scene, ids).Replace('+', ',');
            SKSize size = Callouts.BadgeSize(text);
            // A head keeps its own number even where other things crowd round it.
            SKRect box = SKRect.Create(at.X - (size.Width / 2), at.Y - (size.Height / 2), size.Width, size.Height);
            placer.Take(box);
            bool ring = DrawingFonts.Width(text, PictureSheet.TextPx, true) > 1.7 * view.Length(SeatedHead.RadiusM);
            labels.Add(() => Callouts.Talker(sheet, text, box, ring));
        }
    }

    private void PlaceCameras()
    {
        foreach (Shot shot in scene.Shots)
        {
            SKPoint eye = view.Point(shot.Position);
            (double right, double up) = view.Direction(new CameraView(shot).Axis);
            double angle = Math.Atan2(up, right);
            if (SheetLayout.Shows(view, shot.Position))
            {
                placer.Take(Square(MicrophonePainter.At(eye, angle, -20), 22));
                AddPlate(MicrophonePainter.At(eye, angle, -30), CameraPainter.LabelOf(shot), Callouts.CameraSeries, 24, Palette.Camera);
            }
            else
            {
                AddPlate(LabelPlacer.Nearest(view.Frame, eye), CameraPainter.LabelOf(shot) + ", far off", Callouts.CameraSeries, 4, Palette.Camera);
            }
        }
    }

    /// <summary>Panes on both sides fall on one another from the side; one label is enough there.</summary>
    private IEnumerable<WindowPane> OpenPanesSeen()
    {
        IEnumerable<WindowPane> open = CabinPainter.OpenPanes(cabin, scene);
        return view.View == OutlineView.Plan ? open : open.DistinctBy(p => p.Glass.Min.X);
    }

    private void AddPlate(SKPoint anchor, string text, string series, float nearest, SKColor edge) =>
        Add(anchor, Callouts.PlateSize(text), nearest, box => Callouts.Plate(sheet, text, box, series, edge));

    private void Add(SKPoint anchor, SKSize size, float nearest, Action<SKRect> draw)
    {
        SKRect box = placer.Place(anchor, size, nearest);
        labels.Insert(0, () => Callouts.Leader(sheet, anchor, box));
        labels.Add(() => draw(box));
    }

    private static SKRect Square(SKPoint center, float half) => new(center.X - half, center.Y - half, center.X + half, center.Y + half);

    private static SKPoint Middle(SKRect box) => new(box.MidX, box.MidY);
}
