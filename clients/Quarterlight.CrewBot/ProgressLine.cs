using System.Globalization;
using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>One line at a terminal that says how far a clip is read, and is gone afterwards.</summary>
public sealed class ProgressLine : IProgress<CrewClipProgress>
{
    private readonly Lock gate = new();
    private readonly TextWriter output;
    private string shown = "";

    /// <summary>A line on that terminal.</summary>
    public ProgressLine(TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(output);
        this.output = output;
    }

    /// <inheritdoc/>
    public void Report(CrewClipProgress value)
    {
        ArgumentNullException.ThrowIfNull(value);
        Show(value.Fraction is { } fraction
            ? string.Create(CultureInfo.InvariantCulture, $"reading... {Math.Clamp(fraction, 0, 1) * 100:0} %")
            : string.Create(CultureInfo.InvariantCulture, $"reading... {value.JudgedSeconds:0} s"));
    }

    /// <summary>Takes the line away.</summary>
    public void Clear() => Show("");

    private void Show(string text)
    {
        lock (gate)
        {
            if (text == shown)
            {
                return;
            }

            output.Write($"\r{text.PadRight(shown.Length)}{(text.Length == 0 ? "\r" : "")}");
            output.Flush();
            shown = text;
        }
    }
}
