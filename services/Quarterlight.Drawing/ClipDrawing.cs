namespace Quarterlight.Drawing;

/// <summary>
/// Draws one channel of a judged clip: what may be done with it and why, what was heard second by second, its spectrum and level along the time with
/// speech, clipping and dropouts, and speech and noise by octave, beside the forecast when there is one.
/// </summary>
public static class ClipDrawing
{
    /// <summary>Draws a channel of a clip.</summary>
    /// <param name="view">What to show.</param>
    /// <returns>A picture 1200 pixels wide; its height depends on how much there is to show.</returns>
    /// <exception cref="ArgumentException">The clip has no such channel, or no length.</exception>
    public static DrawnPicture Draw(ClipView view) => DrawWithLabels(view).Picture;

    /// <summary>The same, with every label as drawn.</summary>
    internal static (DrawnPicture Picture, IReadOnlyList<DrawnLabel> Labels) DrawWithLabels(ClipView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (view.Channel < 0 || view.Channel >= view.Measures.Channels.Count)
        {
            throw new ArgumentException($"The clip has no channel {view.Channel}; it has {view.Measures.Channels.Count}.", nameof(view));
        }

        if (!(view.Measures.DurationSeconds > 0) || !double.IsFinite(view.Measures.DurationSeconds))
        {
            throw new ArgumentException("A clip to draw needs a length above 0 s.", nameof(view));
        }

        var facts = new ClipFacts(view);
        var key = new ClipKey(facts);
        var layout = ClipLayout.For(facts, key.HeightPx);
        using var sheet = new PictureSheet(SheetLayout.WidthPx, layout.HeightPx);
        ClipHead.Draw(sheet, layout.Head, facts);
        new TagRibbon(sheet, layout, facts).Draw();
        new SpectrogramPanel(sheet, layout, facts).Draw();
        new ClipLevelPanel(sheet, layout, facts).Draw();
        OctavePanel.Draw(sheet, layout, facts);
        key.Draw(sheet, layout.KeyTop);
        return (new(sheet.ToPng(), ClipText.Of(facts), SheetLayout.WidthPx, layout.HeightPx), sheet.Labels);
    }
}
