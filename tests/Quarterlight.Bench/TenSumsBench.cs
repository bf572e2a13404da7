using BenchmarkDotNet.Attributes;
using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Bench;

/// <summary>Energy through the five directional patterns at all thousand aims, as a spot is searched: ten sums against the direct sum, tracing included in both.</summary>
[MemoryDiagnoser]
public class TenSumsBench
{
    private static readonly PolarPattern[] s_patterns =
        [PolarPattern.Subcardioid, PolarPattern.Cardioid, PolarPattern.Supercardioid, PolarPattern.Hypercardioid, PolarPattern.FigureEight];

    private readonly double[] _sums = new double[TenSums.Length];
    private SpotFields _fields = null!;
    private SoundSource[] _sources = null!;
    private Arrival[] _arrivals = null!;
    private Vector3D _capsule;
    private int _count;

    [GlobalSetup]
    public void Setup()
    {
        PlacementTask task = BenchScene.FiveTalkers();
        _fields = new SpotFields(task, PlacementOptions.Default);
        _sources = [.. _fields.Voices.Select(v => v.Source), .. _fields.Noises.Select(n => n.Source)];
        _capsule = MountSpot.All(task, PlacementOptions.Default)[40].Capsule;
        _arrivals = new Arrival[_fields.Tracer.Lattice.Count * (_fields.Voices.Length + _fields.Noises.Length)];
        double fast = FirstBandOfTenSums(), direct = FirstBandOfDirectSum();
        if (Math.Abs(fast - direct) > 1e-9 * direct)
        {
            throw new InvalidOperationException($"The two ways differ: {fast} and {direct}.");
        }
    }

    [Benchmark(Baseline = true)]
    public double DirectSum()
    {
        TraceArrivals();
        double total = 0;
        foreach (PolarPattern pattern in s_patterns)
        {
            foreach (Vector3D aim in AimGrid.Directions)
            {
                total += Direct(pattern, aim).Sum();
            }
        }

        return total;
    }

    [Benchmark]
    public double TenSumsPath()
    {
        Accumulate();
        double total = 0;
        foreach (PolarPattern pattern in s_patterns)
        {
            foreach (Vector3D aim in AimGrid.Directions)
            {
                total += TenSums.Received(_sums, new AimCoefficients(pattern.A, pattern.B, aim)).Sum();
            }
        }

        return total;
    }

    private double FirstBandOfTenSums()
    {
        Accumulate();
        return TenSums.Received(_sums, new AimCoefficients(PolarPattern.Supercardioid.A, PolarPattern.Supercardioid.B, AimGrid.Directions[7]))[0];
    }

    private double FirstBandOfDirectSum()
    {
        TraceArrivals();
        return Direct(PolarPattern.Supercardioid, AimGrid.Directions[7])[0];
    }

    private void Accumulate()
    {
        Array.Clear(_sums);
        foreach (SoundSource source in _sources)
        {
            _fields.Tracer.Accumulate(source, _capsule, 0, _sums, _sums);
        }
    }

    private void TraceArrivals()
    {
        _count = 0;
        foreach (SoundSource source in _sources)
        {
            _count += _fields.Tracer.Trace(source, _capsule, _arrivals.AsSpan(_count));
        }
    }

    private BandVector Direct(PolarPattern pattern, Vector3D aim)
    {
        BandVector energy = BandVector.Zero;
        foreach (ref readonly Arrival arrival in _arrivals.AsSpan(0, _count))
        {
            double response = pattern.A + (pattern.B * aim.Dot(arrival.Direction));
            energy = energy.PlusProduct(response * response, arrival.Energy);
        }

        double diffuse = (pattern.A * pattern.A) + (pattern.B * pattern.B / 3);
        foreach (SoundSource source in _sources)
        {
            energy = energy.PlusProduct(diffuse, _fields.Tracer.TailOf(source));
        }

        return energy;
    }
}
