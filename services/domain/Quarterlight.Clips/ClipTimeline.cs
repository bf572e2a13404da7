namespace Quarterlight.Clips;

/// <summary>Level and spectrum along the time, coarse enough to draw and bounded whatever the length of the clip.</summary>
public sealed record ClipTimeline
{
    /// <summary>Most columns.</summary>
    public const int MostColumns = 2048;

    /// <summary>Time from one column to the next, in seconds; a power of two times the time between two frames.</summary>
    public required double ColumnSeconds { get; init; }

    /// <summary>Centre of each band in Hz, rising, evenly spaced on a logarithmic scale from 50 Hz to 16 kHz or what the rate allows.</summary>
    public required IReadOnlyList<double> BandCentresHz { get; init; }

    /// <summary>Mean level of a band in a column, dBFS (AES17): column by column, band after band, <see cref="BandCentresHz"/>.Count values a column.</summary>
    public required ReadOnlyMemory<float> BandLevelsDb { get; init; }

    /// <summary>Root mean square of each column, dBFS (AES17).</summary>
    public required ReadOnlyMemory<float> RmsDb { get; init; }

    /// <summary>Highest sample of each column in dB re full scale.</summary>
    public required ReadOnlyMemory<float> PeakDb { get; init; }

    /// <summary>Number of columns.</summary>
    public int ColumnCount => RmsDb.Length;
}
