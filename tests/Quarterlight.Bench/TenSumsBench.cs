using BenchmarkDotNet.Attributes;
using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Bench;

/// <summary>Energy through a supercardioid at all thousand aims: ten sums (tracing included) against the direct sum over arrivals.</summary>
[MemoryDiagnoser]
public class TenSumsBench
{
    private readonly double[] _sums = new double[TenSums.Length];
    private SpotFields _fields = null!;
    private Arrival[] _arrivals = null!;
    private Vector3D _capsule;
    private int _count;

    [GlobalSetup]
    public void Setup()
    {
        PlacementTask task = BenchScene.FiveTalkers();
        _fields = new SpotFields(task, PlacementOptions.Default);
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
        foreach (Vector3D aim in AimGrid.Directions)
        {
            total += Direct(aim).Sum();
        }

        return total;
    }

    [Benchmark]
    public double TenSumsPath()
    {
        Accumulate();
        double total = 0;
        foreach (Vector3D aim in AimGrid.Directions)
        {
            total += TenSums.Received(_sums, new AimCoefficients(PolarPattern.Supercardioid.A, PolarPattern.Supercardioid.B, aim)).Sum();
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
        return Direct(AimGrid.Directions[7])[0];
    }

    private void Accumulate()
    {
        Array.Clear(_sums);
        foreach (SoundSource source in Sources())
        {
            _fields.Tracer.Accumulate(source, _capsule, 0, _sums, _sums);
        }
    }

    private void TraceArrivals()
    {
        _count = 0;
        foreach (SoundSource source in Sources())
        {
            _count += _fields.Tracer.Trace(source, _capsule, _arrivals.AsSpan(_count));
        }
    }

    private BandVector Direct(Vector3D aim)
    {
        PolarPattern pattern = PolarPattern.Supercardioid;
        BandVector energy = BandVector.Zero;
        foreach (ref readonly Arrival arrival in _arrivals.AsSpan(0, _count))
        {
            double response = pattern.A + (pattern.B * aim.Dot(arrival.Direction));
            energy = energy.PlusProduct(response * response, arrival.Energy);
        }

        double diffuse = (pattern.A * pattern.A) + (pattern.B * pattern.B / 3);
        foreach (SoundSource source in Sources())
        {
            energy = energy.PlusProduct(diffuse, _fields.Tracer.TailOf(source));
        }

        return energy;
    }

    private IEnumerable<SoundSource> Sources() => _fields.Voices.Select(v => v.Source).Concat(_fields.Noises.Select(n => n.Source));
}
