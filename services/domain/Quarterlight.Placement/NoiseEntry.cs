using Quarterlight.Acoustics.SoundField;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>The ports a kind of noise enters a cabin through, and what they give the driver's ear together.</summary>
/// <param name="Ports">The ports as sources of equal power.</param>
/// <param name="AtDriverEar">Energy per band at the driver's ear when each port sends out a unit; never 0, its idle lane 1.</param>
internal sealed record NoiseEntry(SoundSource[] Ports, BandVector AtDriverEar)
{
    // Noise enters through surfaces, not points: radius over which each kind is spread, metres (judgement).
    private const double ExtentM = 0.25;

    /// <summary>Finds and traces the ports of a kind, or of one pane; null when the cabin has none.</summary>
    public static NoiseEntry? Trace(CabinGeometry cabin, SoundTracer tracer, string portKind, string? paneId)
    {
        Box3D inside = tracer.Lattice.Room.Box.Grown(-SpotFields.WallGapM);
        SoundSource[] ports =
        [
            .. cabin.NoisePorts
                .Where(p => KindOf(p.Kind) == portKind && (paneId is null || p.Id == "window-" + paneId))
                .Select(p => new SoundSource(inside.Clamp(p.Position), Vector3D.Up, false, ExtentM, -1)),
        ];
        if (ports.Length == 0)
        {
            return null;
        }

        Span<double> sums = stackalloc double[TenSums.Length];
        sums.Clear();
        Vector3D ear = inside.Clamp(cabin.DriverEye);
        foreach (SoundSource port in ports)
        {
            tracer.Accumulate(port, ear, 0, sums, sums);
        }

        // The idle lane of the reference is 0; 0/0 there must not travel on.
        return new NoiseEntry(ports, BandVector.Max(TenSums.Total(sums), BandVector.Load([1e-30, 1e-30, 1e-30, 1e-30, 1e-30, 1e-30, 1e-30, 1])));
    }

    private static string KindOf(NoisePortKind kind) => kind switch
    {
        NoisePortKind.Engine => "engine",
        NoisePortKind.Tyre => "tyre",
        NoisePortKind.Wind => "wind",
        NoisePortKind.Window => "window",
        NoisePortKind.Vent => "vent",
        _ => "roof",
    };
}
