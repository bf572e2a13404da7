using Quarterlight.Clips;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Drawing;

/// <summary>A clip's timeline brought to the picture's own columns: peaks by the highest, levels by mean power.</summary>
internal sealed class ClipColumns
{
    /// <summary>Width of a column in pixels: half the picture's, so that the file stays small.</summary>
    public const int WidthPx = 2;

    private readonly ClipTimeline timeline;
    private readonly (int From, int To)[] spans;

    public ClipColumns(ClipTimeline timeline, double durationSeconds, int count)
    {
        this.timeline = timeline;
        int last = timeline.ColumnCount - 1;
        // Nothing to draw without columns; a column shorter than the picture's repeats over several of them.
        spans = last < 0 ? [] : new (int, int)[count];
        for (int i = 0; i < spans.Length; i++)
        {
            int from = Math.Clamp((int)(i * durationSeconds / count / timeline.ColumnSeconds), 0, last);
            int to = Math.Clamp((int)Math.Ceiling((i + 1) * durationSeconds / count / timeline.ColumnSeconds) - 1, from, last);
            spans[i] = (from, to);
        }
    }

    public int Count => spans.Length;

    /// <summary>Highest sample in dB re full scale.</summary>
    public double PeakDb(int column)
    {
        double highest = FullScale.SilenceDb;
        foreach (float db in timeline.PeakDb.Span[spans[column].From..(spans[column].To + 1)])
        {
            highest = Math.Max(highest, Told(db));
        }

        return highest;
    }

    /// <summary>Root mean square in dBFS.</summary>
    public double RmsDb(int column) => MeanDb(timeline.RmsDb.Span, spans[column], 0, 1);

    /// <summary>Level of a band in dBFS.</summary>
    public double BandDb(int column, int band) => MeanDb(timeline.BandLevelsDb.Span, spans[column], band, timeline.BandCentresHz.Count);

    private static double MeanDb(ReadOnlySpan<float> levels, (int From, int To) span, int offset, int stride)
    {
        if (span.From == span.To)
        {
            return Told(levels[(span.From * stride) + offset]);
        }

        double sum = 0;
        for (int c = span.From; c <= span.To; c++)
        {
            sum += Math.Pow(10, Told(levels[(c * stride) + offset]) / 10);
        }

        return Math.Max(FullScale.SilenceDb, 10 * Math.Log10(sum / (span.To - span.From + 1)));
    }

    private static double Told(float db) => float.IsNaN(db) ? FullScale.SilenceDb : Math.Clamp(db, FullScale.SilenceDb, 40);
}
