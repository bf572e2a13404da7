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
        string front = "front →";
        sheet.Words(front, view.Frame.Right - DrawingFonts.Width(front, PictureSheet.TextPx, true), view.Frame.Top - 15, true);
        sheet.Canvas.Save();
        sheet.Canvas.ClipRect(view.Frame);
        DrawToScale();
        sheet.Canvas.Restore();
        using SKPaint edge = PictureSheet.Pen(Palette.CarLine, 1.5f);
        sheet.Canvas.DrawRect(view.Frame, edge);
        PlaceLabels();
        labels.ForEach(draw => draw());
    }

    private void DrawToScale()
    {
        CabinPainter.DrawCar(sheet, view, cabin);
        for (int i = 0; i < scene.Shots.Count; i++)
        {
            CameraPainter.DrawFan(sheet, view, scene.Shots[i], i);
        }

        CabinPainter.DrawOpenWindows(sheet, view, cabin, scene);
        if (CabinPainter.Engine(cabin) is { } engine)
        {
            CabinPainter.DrawEngine(sheet, view.Point(engine.Position), scene.Drive.Engine == EngineState.Running);
        }

        foreach (string seatId in scene.SilentSeatIds)
        {
            TalkerPainter.DrawSilent(sheet, view, cabin, seatId);
        }

        foreach (Talker talker in scene.Talkers)
        {
            TalkerPainter.Draw(sheet, view, cabin, talker);
        }

        foreach (IGrouping<int, TalkerPlacement> shared in ByInput())
        {
            TalkerPlacement placement = shared.First();
            if (kit.Microphones.FirstOrDefault(m => m.Id == placement.MicrophoneId) is { } microphone)
            {
                MicrophonePainter.Draw(sheet, view, placement, microphone.Pattern);
            }
        }

        foreach (Shot shot in scene.Shots)
        {
            CameraPainter.DrawBody(sheet, view, shot);
        }
    }

    private IEnumerable<IGrouping<int, TalkerPlacement>> ByInput() => option.Placements.GroupBy(p => p.RecorderInput);

    private void PlaceLabels()
    {
        float head = view.Length(SeatedHead.RadiusM);
        foreach (Talker talker in scene.Talkers)
        {
            placer.Avoid(Square(view.Point(TalkerPainter.MainHead(cabin, talker).Center), head), 120);
        }

        foreach (TalkerPlacement placement in option.Placements)
        {
            SKPoint capsule = view.Point(placement.Capsule);
            (double right, double up) = view.Direction(placement.Aim);
            placer.Take(Square(capsule, 12));
            placer.Avoid(Square(capsule, MicrophonePainter.PatternPx), 60);
            placer.Avoid(Square(MicrophonePainter.At(capsule, Math.Atan2(up, right), 80), 26), 60);
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
            string words = scene.Drive.Engine == EngineState.Running ? "engine" : "engine off";
            AddPlate(view.Point(engine.Position), words, Callouts.PlateSeries, 26, Palette.Ink);
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
            string text = Callouts.Numbers(scene, ids).Replace('+', ' ');
            SKSize size = Callouts.BadgeSize(text);
            // A head keeps its own number even where other things crowd round it.
            SKRect box = SKRect.Create(at.X - (size.Width / 2), at.Y - (size.Height / 2), size.Width, size.Height);
            placer.Take(box);
            labels.Add(() => Callouts.Talker(sheet, text, box));
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
                AddPlate(LabelPlacer.Nearest(view.Frame, eye), CameraPainter.LabelOf(shot) + " (further off)", Callouts.CameraSeries, 4, Palette.Camera);
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
