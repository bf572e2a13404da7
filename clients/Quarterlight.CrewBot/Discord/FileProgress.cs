namespace Quarterlight.CrewBot.Discord;

/// <summary>The share of a file read so far.</summary>
internal sealed class FileProgress : IProgress<double>
{
    private double share;

    /// <summary>0 to 1.</summary>
    public double Share => Volatile.Read(ref share);

    /// <inheritdoc/>
    public void Report(double value) => Volatile.Write(ref share, value);
}
