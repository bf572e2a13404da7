using Quarterlight.Clips.Tagging;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>A row for each tag along the time: the fill is as high as the tag is likely; how it is filled says whether the tag holds for the clip.</summary>
internal sealed class TagRibbon(PictureSheet sheet, ClipLayout layout, ClipFacts facts)
{
    public const string Series = "tag", NoneSeries = "no tags";

    // Narrow enough for a second of a minute, wide enough to be seen in half an hour.
    private const float CellPx = 4;
    private const float InsetPx = 4;

    public void Draw()
    {
        SKRect frame = layout.Ribbon;
        if (facts.Channel.Tags is not { } tags)
        {
            SKRect caption = TimeAxis.Caption(sheet, frame, "Heard:");
            sheet.LabelFrom(facts.Channel.IsSilent ? "digital silence" : "not listened for", caption.Right + 12, caption.MidY, NoneSeries);
            return;
        }

        TimeAxis.Caption(sheet, frame, "Heard: the higher, the likelier");
        TimeAxis.Grid(sheet, frame, layout.Time);
        using SKPaint baseline = PictureSheet.Pen(Palette.CarLine, 1.5f);
        for (int i = 0; i < ClipWords.Tags.Count; i++)
        {
            ClipTag tag = ClipWords.Tags[i];
            TagState state = tags.States.GetValueOrDefault(tag);
            var row = SKRect.Create(frame.Left, frame.Top + (i * ClipLayout.TagRowPx), frame.Width, ClipLayout.TagRowPx);
            ClipSymbols.Tag(sheet, tag, state, row, Outline(tags, tag, row));
            sheet.Line(new(row.Left, row.Bottom), new(row.Right, row.Bottom), baseline);
            string words = ClipWords.Of(tag) + (state == TagState.Unsure ? " ?" : "");
            bool bold = state == TagState.Present;
            sheet.LabelFrom(words, frame.Left - 14 - DrawingFonts.Width(words, PictureSheet.TextPx, bold), row.MidY + 2, Series, bold);
        }

        PlotPainter.Frame(sheet, frame);
    }

    /// <summary>Steps as high as the tag is likely, each cell by its likeliest second.</summary>
    private List<SKPoint> Outline(TagReport tags, ClipTag tag, SKRect row)
    {
        int cells = (int)Math.Ceiling(row.Width / CellPx);
        float[] heights = new float[cells];
        foreach (TaggedSecond second in tags.Seconds)
        {
            float likely = (float)Math.Clamp(second.Probabilities[tag], 0, 1);
            int last = (int)Math.Ceiling((layout.Time.Within(second.EndSeconds) - row.Left) / CellPx) - 1;
            for (int c = (int)((layout.Time.Within(second.StartSeconds) - row.Left) / CellPx); c <= Math.Min(last, cells - 1); c++)
            {
                heights[c] = Math.Max(heights[c], float.IsNaN(likely) ? 0 : likely);
            }
        }

        List<SKPoint> outline = [new(row.Left, row.Bottom)];
        for (int c = 0; c < cells; c++)
        {
            float y = row.Bottom - (heights[c] * (row.Height - InsetPx));
            outline.Add(new(row.Left + (c * CellPx), y));
            outline.Add(new(Math.Min(row.Left + ((c + 1) * CellPx), row.Right), y));
        }

        outline.Add(new(row.Right, row.Bottom));
        return outline;
    }
}
