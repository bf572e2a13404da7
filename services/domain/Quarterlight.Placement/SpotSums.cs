using System.Buffers;
using Quarterlight.Acoustics.SoundField;

namespace Quarterlight.Placement;

/// <summary>
/// The traced spots, as ten sums in one block: per spot and head pose what is useful and what is not, and per talker all
/// there is of the voice.
/// </summary>
internal sealed class SpotSums : IDisposable
{
    private readonly double[] _useful;
    private readonly double[] _detrimental;
    private readonly double[] _voice;
    private readonly int _poses;
    private readonly int _talkers;

    public SpotSums(SpotFields fields, IReadOnlyList<MountSpot> spots, PlacementOptions options)
    {
        _poses = fields.Voices.Length;
        _talkers = fields.TalkerCount;
        _useful = Rent(spots.Count * _poses);
        _detrimental = Rent(spots.Count * _poses);
        _voice = Rent(spots.Count * _talkers);
        Span<double> scratch = stackalloc double[2 * TenSums.Length];
        Span<double> noise = stackalloc double[TenSums.Length];
        BandVector one = BandVector.Splat(1);
        BandVector overlap = BandVector.Splat(options.OverlapFraction);
        for (int s = 0; s < spots.Count; s++)
        {
            noise.Clear();
            fields.TraceNoise(spots[s], noise, scratch[..TenSums.Length]);
            for (int p = 0; p < _poses; p++)
            {
                ref readonly Voice voice = ref fields.Voices[p];
                Span<double> useful = Slot(_useful, s, p, _poses), late = Slot(_detrimental, s, p, _poses);
                fields.TraceVoice(spots[s], voice, useful, late, scratch);
                var whole = new TenSums(Slot(_voice, s, voice.Talker, _talkers));
                BandVector share = BandVector.Splat(voice.Share);
                whole.AddScaled(useful, share);
                whole.AddScaled(late, share);
            }

            for (int p = 0; p < _poses; p++)
            {
                var detrimental = new TenSums(Slot(_detrimental, s, p, _poses));
                detrimental.AddScaled(noise, one);
                for (int t = 0; t < _talkers; t++)
                {
                    if (t != fields.Voices[p].Talker)
                    {
                        detrimental.AddScaled(Slot(_voice, s, t, _talkers), overlap);
                    }
                }
            }
        }
    }

    /// <summary>Direct and very early speech of a pose.</summary>
    public ReadOnlySpan<double> Useful(int spot, int pose) => Slot(_useful, spot, pose, _poses);

    /// <summary>Late speech of a pose, all noise, and the other talkers by their overlap.</summary>
    public ReadOnlySpan<double> Detrimental(int spot, int pose) => Slot(_detrimental, spot, pose, _poses);

    /// <summary>All speech of a talker, averaged over poses by share.</summary>
    public ReadOnlySpan<double> Voice(int spot, int talker) => Slot(_voice, spot, talker, _talkers);

    /// <summary>Gives the blocks back: a run takes about a megabyte, and the next one takes the same.</summary>
    public void Dispose()
    {
        ArrayPool<double>.Shared.Return(_useful);
        ArrayPool<double>.Shared.Return(_detrimental);
        ArrayPool<double>.Shared.Return(_voice);
    }

    private static double[] Rent(int sets)
    {
        double[] block = ArrayPool<double>.Shared.Rent(sets * TenSums.Length);
        Array.Clear(block);
        return block;
    }

    private static Span<double> Slot(double[] block, int spot, int item, int items) =>
        block.AsSpan(((spot * items) + item) * TenSums.Length, TenSums.Length);
}
