namespace Quarterlight.Clips.Spectrum;

/// <summary>The last frames' powers in a few bands, found again by frame number.</summary>
internal sealed class FrameRing(int frames, int bands)
{
    private readonly double[] _values = new double[frames * bands];

    public Span<double> this[long frame] => _values.AsSpan((int)(frame % frames) * bands, bands);
}
