using System.Runtime.CompilerServices;
using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>
/// The score before penalties: per band 10 lg(useful / detrimental), weighted by the octave importance of ANSI S3.5-1997,
/// averaged over head poses by share and pulled toward the worst pose.
/// </summary>
internal sealed class AimScore
{
    private static readonly BandVector s_weights = MakeWeights();

    // Keeps logarithms finite in a perfect null and the idle lane quiet.
    private static readonly BandVector s_floor = BandVector.Load([1e-12, 1e-12, 1e-12, 1e-12, 1e-12, 1e-12, 1e-12, 1]);

    private readonly SpotFields _fields;
    private readonly SpotSums _sums;
    private readonly double _worstPull;

    public AimScore(SpotFields fields, SpotSums sums, PlacementOptions options)
    {
        _fields = fields;
        _sums = sums;
        _worstPull = options.WorstPosePull;
    }

    /// <summary>Score in dB of a talker at a spot through a first-order pattern at an aim.</summary>
    public double Of(int spot, int talker, in AimCoefficients aim, BandVector selfNoise)
    {
        BandVector floor = selfNoise + s_floor;
        double mean = 0, worst = double.PositiveInfinity;
        for (int p = _fields.FirstVoice[talker]; p < _fields.FirstVoice[talker + 1]; p++)
        {
            BandVector useful = TenSums.Received(_sums.Useful(spot, p), aim) + s_floor;
            BandVector detrimental = TenSums.Received(_sums.Detrimental(spot, p), aim) + floor;
            double ratioDb = WeightedDb(useful, detrimental);
            mean += _fields.Voices[p].Share * ratioDb;
            worst = Math.Min(worst, ratioDb);
        }

        return ((1 - _worstPull) * mean) + (_worstPull * worst);
    }

    /// <summary>Importance-weighted mean of 10 lg(useful/detrimental) in dB; both with their idle lanes above 0.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double WeightedDb(BandVector useful, BandVector detrimental) => (useful / detrimental).Log2().Dot(s_weights);

    /// <summary>The floor to add to energies before <see cref="WeightedDb"/>.</summary>
    public static BandVector Floor => s_floor;

    private static BandVector MakeWeights()
    {
        Span<double> lanes = stackalloc double[BandVector.Lanes];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            lanes[b] = SpeechIntelligibility.OctaveImportance[b] * 10 * Math.Log10(2);
        }

        return BandVector.Load(lanes);
    }
}
