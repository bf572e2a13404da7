using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>
/// Patterns that ten sums cannot hold (interference tubes): the direct sum over every arrival and band at one aim.
/// </summary>
internal sealed class TubeScore
{
    private readonly SpotFields _fields;
    private readonly PlacementOptions _options;
    private readonly Arrival[] _arrivals;

    public TubeScore(SpotFields fields, PlacementOptions options)
    {
        _fields = fields;
        _options = options;
        _arrivals = new Arrival[fields.Tracer.Lattice.Count];
    }

    /// <summary>Score in dB of a talker at a spot through a pattern at an aim, as <see cref="AimScore.Of"/> defines it.</summary>
    public double Of(MountSpot spot, int talker, PolarPattern pattern, Vector3D aim, BandVector selfNoise)
    {
        BandVector floor = selfNoise + AimScore.Floor;
        BandVector noise = BandVector.Zero;
        foreach (NoiseVoice source in _fields.Noises)
        {
            (BandVector early, BandVector late) = Received(source.Source, spot.Capsule, 0, pattern, aim);
            noise += source.Energy * (early + late);
        }

        var voices = new (BandVector Useful, BandVector Late)[_fields.Voices.Length];
        for (int p = 0; p < voices.Length; p++)
        {
            Voice voice = _fields.Voices[p];
            (BandVector useful, BandVector late) = Received(voice.Source, SpotFields.CapsuleFor(spot, voice), _options.EarlyPathExcessM, pattern, aim);
            BandVector energy = _fields.VoiceEnergy[voice.Talker];
            voices[p] = (energy * useful, energy * late);
            if (voice.Talker != talker)
            {
                noise += _options.OverlapFraction * voice.Share * (energy * (useful + late));
            }
        }

        double mean = 0, worst = double.PositiveInfinity;
        for (int p = _fields.FirstVoice[talker]; p < _fields.FirstVoice[talker + 1]; p++)
        {
            double ratio = AimScore.WeightedDb(voices[p].Useful + AimScore.Floor, voices[p].Late + noise + floor);
            mean += _fields.Voices[p].Share * ratio;
            worst = Math.Min(worst, ratio);
        }

        return ((1 - _options.WorstPosePull) * mean) + (_options.WorstPosePull * worst);
    }

    /// <summary>Early and late energy per band, unit source, through any pattern: the definition that ten sums rearrange.</summary>
    public (BandVector Early, BandVector Late) Received(in SoundSource source, Vector3D capsule, double earlyExcessM, PolarPattern pattern, Vector3D aim)
    {
        int count = _fields.Tracer.Trace(source, capsule, _arrivals);
        double limit = source.Position.DistanceTo(capsule) + earlyExcessM;
        BandVector early = BandVector.Zero, late = DiffuseResponse(pattern) * _fields.Tracer.TailOf(source);
        foreach (ref readonly Arrival arrival in _arrivals.AsSpan(0, count))
        {
            BandVector energy = ResponseEnergy(pattern, aim.Dot(arrival.Direction)) * arrival.Energy;
            if (arrival.DistanceM <= limit)
            {
                early += energy;
            }
            else
            {
                late += energy;
            }
        }

        return (early, late);
    }

    private static BandVector ResponseEnergy(PolarPattern pattern, double cosine)
    {
        if (pattern.IsFirstOrder)
        {
            double capsule = pattern.A + (pattern.B * cosine);
            return BandVector.Splat(capsule * capsule);
        }

        double angle = Math.Acos(Math.Clamp(cosine, -1, 1));
        Span<double> lanes = stackalloc double[BandVector.Lanes];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            double response = PolarPatternMeasures.ResponseAt(pattern, angle, OctaveBands.CentresHz[b]);
            lanes[b] = response * response;
        }

        return BandVector.Load(lanes);
    }

    // Mean of the squared response over the sphere, by Gauss-like midpoint sums in the cosine; exact enough at 64 steps.
    private static BandVector DiffuseResponse(PolarPattern pattern)
    {
        if (pattern.IsFirstOrder)
        {
            return BandVector.Splat((pattern.A * pattern.A) + (pattern.B * pattern.B / 3));
        }

        const int Steps = 64;
        BandVector sum = BandVector.Zero;
        for (int i = 0; i < Steps; i++)
        {
            sum += (1.0 / Steps) * ResponseEnergy(pattern, -1 + ((2 * i) + 1.0) / Steps);
        }

        return sum;
    }
}
