using Quarterlight.Clips.Tagging;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The fills and marks of a clip's picture; each differs from the others without color.</summary>
internal static class ClipSymbols
{
    public const float ClippingPx = 30, DropoutPx = 26;

    public static Hatch HatchOf(ClipTag tag) => tag switch
    {
        ClipTag.Engine => Hatch.Rising,
        ClipTag.Wind => Hatch.Falling,
        ClipTag.AirConditioning => Hatch.Dotted,
        _ => Hatch.Upright,
    };

    public static SKColor ColorOf(ClipTag tag) => tag switch
    {
        ClipTag.Engine => Palette.Engine,
        ClipTag.Wind => Palette.OpenWindow,
        ClipTag.AirConditioning => Palette.Gaze,
        _ => Palette.Usable,
    };

    /// <summary>The area under an outline: colored and hatched when the tag holds, hatched with a broken edge when unsure, else plain grey.</summary>
    public static void Tag(PictureSheet sheet, ClipTag tag, TagState state, SKRect row, IReadOnlyList<SKPoint> outline)
    {
        using SKPaint grey = PictureSheet.Brush(Palette.Unheard);
        using SKPaint edge = state switch
        {
            TagState.Present => PictureSheet.Pen(Palette.Ink, 3),
            TagState.Unsure => PictureSheet.Pen(Palette.Ink, 3, 7, 6),
            _ => PictureSheet.Pen(Palette.CarLine, 1.5f),
        };
        if (state == TagState.Absent)
        {
            sheet.Shape(outline, true, grey);
        }
        else
        {
            using var builder = new SKPathBuilder();
            builder.AddPoly([.. outline], true);
            using SKPath path = builder.Detach();
            sheet.Canvas.Save();
            sheet.Canvas.ClipPath(path, antialias: true);
            Hatching.Fill(sheet, row, HatchOf(tag), state == TagState.Present ? ColorOf(tag) : Palette.Paper, Palette.Ink, state == TagState.Present ? 14 : 10, state == TagState.Present ? 2.5f : 1.5f);
            sheet.Canvas.Restore();
        }

        sheet.Shape(outline, false, edge);
    }

    /// <summary>Clipping: a solid triangle with its point on the line of full scale.</summary>
    public static void Clipping(PictureSheet sheet, SKPoint point)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Demand), edge = PictureSheet.Pen(Palette.Ink, 2);
        SKPoint[] triangle = [point, new(point.X - (ClippingPx / 2), point.Y - ClippingPx), new(point.X + (ClippingPx / 2), point.Y - ClippingPx)];
        sheet.Shape(triangle, true, fill);
        sheet.Shape(triangle, true, edge);
    }

    /// <summary>A dropout: two brackets with nothing between them.</summary>
    public static void Dropout(PictureSheet sheet, SKPoint at)
    {
        using SKPaint pen = PictureSheet.Pen(Palette.Ink, 4);
        foreach (int side in new[] { -1, 1 })
        {
            float near = at.X + (side * 5), far = at.X + (side * DropoutPx / 2);
            sheet.Shape([new(far, at.Y - 13), new(near, at.Y - 13), new(near, at.Y + 13), new(far, at.Y + 13)], false, pen);
        }
    }

    /// <summary>Speech: a solid bar with an edge.</summary>
    public static void Speech(PictureSheet sheet, SKRect bar)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Speech), edge = PictureSheet.Pen(Palette.Ink, 2);
        sheet.Canvas.DrawRect(bar, fill);
        // An edge round a sliver would hide it.
        if (bar.Width > 8)
        {
            sheet.Canvas.DrawRect(bar, edge);
        }
    }

    /// <summary>A bar of the octave panel: speech is striped, noise dotted; measured has a solid ground, forecast only an outline.</summary>
    public static void Octave(PictureSheet sheet, OctaveSeries series, SKRect bar)
    {
        bool forecast = series is OctaveSeries.ForecastSpeech or OctaveSeries.ForecastNoise, speech = series is OctaveSeries.ForecastSpeech or OctaveSeries.MeasuredSpeech;
        SKColor color = series == OctaveSeries.Whole ? Palette.CarFill : speech ? Palette.Speech : Palette.Noise;
        Hatch hatch = series == OctaveSeries.Whole ? Hatch.Crossed : speech ? Hatch.Rising : Hatch.Dotted;
        SKColor lines = series == OctaveSeries.MeasuredSpeech ? Palette.Paper : forecast && speech ? Palette.Speech : Palette.Ink;
        Hatching.Fill(sheet, bar, hatch, forecast ? Palette.Paper : color, lines, 14, speech ? 2.5f : 1.5f);
        using SKPaint edge = PictureSheet.Pen(Palette.Ink, 2.5f);
        sheet.Canvas.DrawRect(bar, edge);
    }
}
