using Quarterlight.Cabin;
using Quarterlight.Placement;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>Draws people: a circle a head, and a wedge where the face points, longer the larger the pose's share.</summary>
internal static class TalkerPainter
{
    private const double ShortestWedgeM = 0.06;
    private const double WedgePerShareM = 0.24;
    private const double HalfWedgeRad = 0.3;

    /// <summary>The head a talker's number stands on: the pose with the largest share.</summary>
    public static SeatedHead MainHead(CabinGeometry cabin, Talker talker) =>
        SeatedHead.In(SeatOf(cabin, talker), talker.HeadPoses.MaxBy(p => p.ShareFraction)!);

    public static void Draw(PictureSheet sheet, ViewProjection view, CabinGeometry cabin, Talker talker)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Paper), edge = PictureSheet.Pen(Palette.Ink, 4);
        Seat seat = SeatOf(cabin, talker);
        foreach (HeadPose pose in talker.HeadPoses)
        {
            DrawGaze(sheet, view, SeatedHead.In(seat, pose), pose.ShareFraction);
        }

        foreach (HeadPose pose in talker.HeadPoses.OrderBy(p => p.ShareFraction))
        {
            SKPoint center = view.Point(SeatedHead.In(seat, pose).Center);
            sheet.Canvas.DrawCircle(center, view.Length(SeatedHead.RadiusM), fill);
            sheet.Canvas.DrawCircle(center, view.Length(SeatedHead.RadiusM), edge);
        }
    }

    /// <summary>Someone who does not talk: a grey head without number.</summary>
    public static void DrawSilent(PictureSheet sheet, ViewProjection view, CabinGeometry cabin, string seatId)
    {
        if (cabin.FindSeat(seatId) is { } seat)
        {
            SKPoint center = view.Point(SeatedHead.In(seat, new HeadPose()).Center);
            using SKPaint fill = PictureSheet.Brush(Palette.CarFill), edge = PictureSheet.Pen(Palette.CarLine, 3, 6, 5);
            sheet.Canvas.DrawCircle(center, view.Length(SeatedHead.RadiusM), fill);
            sheet.Canvas.DrawCircle(center, view.Length(SeatedHead.RadiusM), edge);
        }
    }

    /// <summary>The symbol for the key.</summary>
    public static void DrawSymbol(PictureSheet sheet, SKPoint at)
    {
        var center = new SKPoint(at.X - 14, at.Y);
        Wedge(sheet, center, 0, 52);
        using SKPaint fill = PictureSheet.Brush(Palette.Paper), edge = PictureSheet.Pen(Palette.Ink, 4);
        sheet.Canvas.DrawCircle(center, 20, fill);
        sheet.Canvas.DrawCircle(center, 20, edge);
    }

    private static void DrawGaze(PictureSheet sheet, ViewProjection view, SeatedHead head, double shareFraction)
    {
        (double right, double up) = view.Direction(head.FaceDirection);
        double seen = Math.Sqrt((right * right) + (up * up));
        double angle = seen > 0 ? Math.Atan2(up, right) : 0;
        Wedge(sheet, view.Point(head.Center), angle, view.Length(SeatedHead.RadiusM + ((ShortestWedgeM + (WedgePerShareM * shareFraction)) * seen)));
    }

    private static void Wedge(PictureSheet sheet, SKPoint center, double angleRad, float radiusPx)
    {
        const int Steps = 8;
        SKPoint[] wedge = [center, .. Enumerable.Range(0, Steps + 1).Select(i => MicrophonePainter.At(center, angleRad - HalfWedgeRad + (2 * HalfWedgeRad * i / Steps), radiusPx))];
        using SKPaint fill = PictureSheet.Brush(Palette.Gaze), edge = PictureSheet.Pen(Palette.Ink, 2);
        sheet.Shape(wedge, true, fill);
        sheet.Shape(wedge, true, edge);
    }

    private static Seat SeatOf(CabinGeometry cabin, Talker talker) =>
        cabin.FindSeat(talker.SeatId) ?? throw new ArgumentException($"The cabin has no seat {talker.SeatId}.", nameof(talker));
}
