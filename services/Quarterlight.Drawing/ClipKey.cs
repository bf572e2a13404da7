using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Tagging;

using SkiaSharp;

namespace Quarterlight.Drawing;

/// <summary>The words under a clip's picture: what the fills and marks mean.</summary>
internal sealed class ClipKey
{
    private readonly SymbolLegend legend = new();

    public ClipKey(ClipFacts facts)
    {
        static SKRect Box(SKPoint at) => new(at.X - 26, at.Y - 18, at.X + 26, at.Y + 18);
        if (facts.Channel.Tags is { } tags)
        {
            State(tags, TagState.Present, "heard");
            State(tags, TagState.Unsure, "unsure: listen");
            State(tags, TagState.Absent, "not heard");
        }

        bool trace = facts.Channel.Timeline.ColumnCount > 0 && !facts.Channel.IsSilent;
        legend.Add(trace, "level (rms)", (s, p) => Ground(s, Box(p)));
        legend.Add(trace, "peak", (s, p) => Peak(s, Box(p)));
        legend.Add(facts.Channel.Speech.Count > 0, "speech", (s, p) => ClipSymbols.Speech(s, new(p.X - 26, p.Y - 13, p.X + 26, p.Y + 13)));
        legend.Add(facts.Clipping.Count > 0, $"clipping, {Times(facts.Clipping)}", (s, p) => ClipSymbols.Clipping(s, new(p.X, p.Y + (ClipSymbols.ClippingPx / 2))));
        legend.Add(facts.Dropouts.Count > 0, $"dropout, {Times(facts.Dropouts)}", ClipSymbols.Dropout);
        foreach (OctaveSeries series in facts.Octaves.Series)
        {
            legend.Add(true, Words(series), (s, p) => ClipSymbols.Octave(s, series, Box(p)));
        }
    }

    public float HeightPx => legend.HeightPx;

    public void Draw(PictureSheet sheet, float top) => legend.Draw(sheet, top);

    // Only the first places are known; without saying so a clean end of the trace would be read as sound.
    private static string Times(Stretches stretches) => stretches.First.Count < stretches.Count ? $"first {stretches.First.Count} of {FigureWords.Number(stretches.Count)}"
        : stretches.Count == 1 ? "once" : $"{FigureWords.Number(stretches.Count)} times";

    private static string Words(OctaveSeries series) => series switch
    {
        OctaveSeries.ForecastSpeech => "speech, forecast",
        OctaveSeries.MeasuredSpeech => "speech, measured",
        OctaveSeries.ForecastNoise => "noise, forecast",
        OctaveSeries.MeasuredNoise => "noise, measured",
        _ => "all sound",
    };

    private static void Ground(PictureSheet sheet, SKRect box)
    {
        using SKPaint fill = PictureSheet.Brush(Palette.Mean);
        sheet.Canvas.DrawRect(box, fill);
    }

    private static void Peak(PictureSheet sheet, SKRect box)
    {
        using SKPaint line = PictureSheet.Pen(Palette.Ink, 2);
        sheet.Shape([new(box.Left, box.MidY + 6), new(box.Left + 12, box.Top + 6), new(box.MidX, box.MidY + 10), new(box.MidX + 14, box.Top), new(box.Right, box.MidY)], false, line);
    }

    /// <summary>An entry for a state, drawn with the first tag that is in it.</summary>
    private void State(TagReport tags, TagState state, string words)
    {
        ClipTag[] alike = [.. ClipWords.Tags.Where(t => tags.States.GetValueOrDefault(t) == state)];
        legend.Add(alike.Length > 0, words, (sheet, p) =>
        {
            var box = new SKRect(p.X - 26, p.Y - 18, p.X + 26, p.Y + 18);
            ClipSymbols.Tag(sheet, alike[0], state, box, [new(box.Left, box.Bottom), new(box.Left, box.MidY), new(box.MidX, box.MidY), new(box.MidX, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom)]);
        });
    }
}
