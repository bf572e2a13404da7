using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>
/// Traces a source to a microphone position through a box: image sources with directions, voice directivity at each image's
/// departure angle, screens on the direct sound and first reflections, and a diffuse tail above the last order.
/// </summary>
/// <remarks>
/// Higher orders pass unscreened: by then the sound has been round every obstacle, and the tail stands for it. All energies
/// are per unit of on-axis energy at 1 m. Model and limits: docs/models/sound-field.md.
/// </remarks>
public sealed class SoundTracer
{
    private const int CosineSteps = 1024;

    private static readonly Lazy<double[]> s_directivity = new(() => ByCosine(VoiceDirectivity.EnergyTable));

    private readonly ImageLattice _lattice;
    private readonly Screen[] _screens;
    private readonly BandVector _voiceTail;
    private readonly double[] _directivity;

    /// <summary>Makes a tracer for a room's images and the screens in it.</summary>
    public SoundTracer(ImageLattice lattice, IReadOnlyList<Screen> screens)
    {
        ArgumentNullException.ThrowIfNull(lattice);
        ArgumentNullException.ThrowIfNull(screens);
        _lattice = lattice;
        _screens = [.. screens];
        _directivity = s_directivity.Value;
        Span<double> inverse = stackalloc double[BandVector.Lanes];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            inverse[b] = 1 / VoiceDirectivity.DirectivityFactor(b);
        }

        // A talker's power is the on-axis energy over the directivity factor: that is what feeds the diffuse tail.
        _voiceTail = lattice.Tail * BandVector.Load(inverse);
    }

    /// <summary>The room's images.</summary>
    public ImageLattice Lattice => _lattice;

    /// <summary>
    /// Adds the source's arrivals to ten sums: paths up to <paramref name="earlyLimitM"/> longer than the direct one to the
    /// early set, the rest and the tail to the late set. The two sets may be the same span.
    /// </summary>
    public void Accumulate(in SoundSource source, Vector3D receiver, double earlyLimitM, Span<double> early, Span<double> late)
    {
        var earlySums = new TenSums(early);
        var lateSums = new TenSums(late);
        double earlyUpTo = source.Position.DistanceTo(receiver) + earlyLimitM;
        foreach (ref readonly ImageCell cell in _lattice.Cells)
        {
            Arrival arrival = Trace(cell, source, receiver);
            if (arrival.DistanceM <= earlyUpTo)
            {
                earlySums.Add(arrival.Direction, arrival.Energy);
            }
            else
            {
                lateSums.Add(arrival.Direction, arrival.Energy);
            }
        }

        lateSums.AddDiffuse(TailOf(source));
    }

    /// <summary>Writes all arrivals, direct sound first, into a span of at least <see cref="ImageLattice.Count"/>; returns how many.</summary>
    public int Trace(in SoundSource source, Vector3D receiver, Span<Arrival> arrivals)
    {
        int n = 0;
        foreach (ref readonly ImageCell cell in _lattice.Cells)
        {
            arrivals[n++] = Trace(cell, source, receiver);
        }

        return n;
    }

    /// <summary>Diffuse energy of the source above the last order.</summary>
    public BandVector TailOf(in SoundSource source) => source.IsVoice ? _voiceTail : _lattice.Tail;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Arrival Trace(in ImageCell cell, in SoundSource source, Vector3D receiver)
    {
        Vector3D s = source.Position;
        var image = new Vector3D((cell.SignX * s.X) + cell.OffsetX, (cell.SignY * s.Y) + cell.OffsetY, (cell.SignZ * s.Z) + cell.OffsetZ);
        Vector3D toImage = image - receiver;
        double r2 = toImage.LengthSquared + 1e-12;
        double r = Math.Sqrt(r2);
        Vector3D direction = (1 / r) * toImage;
        BandVector energy = (1 / (r2 + (source.ExtentM * source.ExtentM))) * cell.Kept;
        if (source.IsVoice)
        {
            // Sound leaves the real mouth in the mirrored direction: the image's axis is the axis mirrored alike.
            double cosine = -((cell.SignX * source.Axis.X * direction.X) + (cell.SignY * source.Axis.Y * direction.Y) + (cell.SignZ * source.Axis.Z * direction.Z));
            energy *= Directivity(cosine);
        }

        if (cell.Order <= 1 && _screens.Length > 0)
        {
            energy = Screened(cell, source, receiver, image, energy);
        }

        return new Arrival(direction, energy, r, cell.Order);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private BandVector Directivity(double cosine)
    {
        int at = (int)(((Math.Clamp(cosine, -1, 1) + 1) * (CosineSteps / 2)) + 0.5);
        return BandVector.LoadUnchecked(ref MemoryMarshal.GetArrayDataReference(_directivity), at * BandVector.Lanes);
    }

    // The table by degree, laid out by cosine so that no angle is computed per arrival: 1025 steps, under 0.1 dB off the table.
    private static double[] ByCosine(ReadOnlySpan<double> byDegree)
    {
        var table = new double[(CosineSteps + 1) * BandVector.Lanes];
        for (int i = 0; i <= CosineSteps; i++)
        {
            double deg = Math.Acos((2.0 * i / CosineSteps) - 1) * (180 / Math.PI);
            int from = Math.Min((int)deg, 179);
            double t = deg - from;
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                double low = byDegree[(from * BandVector.Lanes) + b], high = byDegree[((from + 1) * BandVector.Lanes) + b];
                table[(i * BandVector.Lanes) + b] = ((1 - t) * low) + (t * high);
            }
        }

        return table;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private BandVector Screened(in ImageCell cell, in SoundSource source, Vector3D receiver, Vector3D image, BandVector energy)
    {
        bool reflected = cell.Order == 1;
        Vector3D bounce = reflected ? BouncePoint(cell.FirstFace, image, receiver) : receiver;
        var outward = new ScreenRay(source.Position, bounce);
        ScreenRay inward = reflected ? new ScreenRay(bounce, receiver) : outward;
        foreach (ref readonly Screen screen in _screens.AsSpan())
        {
            if (screen.Owner >= 0 && screen.Owner == source.Owner)
            {
                continue;
            }

            if (screen.TryDetours(outward, out double a, out double b, out double c) || (reflected && screen.TryDetours(inward, out a, out b, out c)))
            {
                energy *= Screen.Passing(a, b, c, _lattice.Room.SpeedOfSoundMps);
            }
        }

        return energy;
    }

    private Vector3D BouncePoint(int face, Vector3D image, Vector3D receiver)
    {
        Box3D box = _lattice.Room.Box;
        (double plane, double from, double to) = face switch
        {
            0 => (box.Min.X, receiver.X, image.X),
            1 => (box.Max.X, receiver.X, image.X),
            2 => (box.Min.Y, receiver.Y, image.Y),
            3 => (box.Max.Y, receiver.Y, image.Y),
            4 => (box.Min.Z, receiver.Z, image.Z),
            _ => (box.Max.Z, receiver.Z, image.Z),
        };
        double t = Math.Abs(to - from) < 1e-12 ? 0 : Math.Clamp((plane - from) / (to - from), 0, 1);
        return receiver + (t * (image - receiver));
    }
}
