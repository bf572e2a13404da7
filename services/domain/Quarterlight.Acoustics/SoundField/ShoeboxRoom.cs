using Quarterlight.Quantities;

namespace Quarterlight.Acoustics.SoundField;

/// <summary>Absorption of one face of the box by octave band, energy share 0 to 1.</summary>
/// <param name="Bands">Seven energy absorption coefficients.</param>
public sealed record FaceAbsorption(IReadOnlyList<double> Bands);

/// <summary>
/// The box that stands for a cabin's air space, with the absorption of its six faces.
/// </summary>
/// <remarks>
/// Faces in the order -x (rear), +x (front), -y (right), +y (left), -z (floor), +z (roof). Tail formula: energy of all
/// reflections of order n and above in a box with mean absorption a and surface S is 16 pi (1-a)^n / (S a) relative to the
/// direct sound at 1 m, the geometric series behind the classical room-constant formula.
/// </remarks>
public sealed class ShoeboxRoom
{
    private readonly double[] _absorption; // [face * 8 + band]

    /// <summary>Makes a room.</summary>
    /// <param name="box">Extent in metres; every edge at least 0.2 m.</param>
    /// <param name="faces">Six faces in the order of the remarks.</param>
    /// <param name="speedOfSoundMps">Speed of sound in m/s.</param>
    /// <param name="airVolumeM3">Air in the cabin in cubic metres, below the box's own where seats and dash fill it; null takes the box's.</param>
    /// <exception cref="ArgumentException">An edge is too short, the faces are not six, or a coefficient is outside 0 to 1.</exception>
    public ShoeboxRoom(Box3D box, IReadOnlyList<FaceAbsorption> faces, double speedOfSoundMps = 343, double? airVolumeM3 = null)
    {
        ArgumentNullException.ThrowIfNull(faces);
        Vector3D size = box.Size;
        if (!(size.X >= 0.2 && size.Y >= 0.2 && size.Z >= 0.2))
        {
            throw new ArgumentException("Every edge of a room is at least 0.2 m.", nameof(box));
        }

        if (faces.Count != 6 || faces.Any(f => f.Bands.Count != OctaveBands.Count || f.Bands.Any(a => !(a >= 0 && a <= 1))))
        {
            throw new ArgumentException("A room has six faces with seven coefficients from 0 to 1 each.", nameof(faces));
        }

        Box = box;
        SpeedOfSoundMps = speedOfSoundMps;
        AirVolumeM3 = airVolumeM3 ?? box.VolumeM3;
        _absorption = new double[6 * BandVector.Lanes];
        double[] areas = [size.Y * size.Z, size.Y * size.Z, size.X * size.Z, size.X * size.Z, size.X * size.Y, size.X * size.Y];
        SurfaceM2 = areas.Sum();
        MeanAbsorption = new double[OctaveBands.Count];
        for (int f = 0; f < 6; f++)
        {
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                _absorption[(f * BandVector.Lanes) + b] = faces[f].Bands[b];
                MeanAbsorption[b] += faces[f].Bands[b] * areas[f] / SurfaceM2;
            }
        }
    }

    /// <summary>Extent in metres.</summary>
    public Box3D Box { get; }

    /// <summary>Speed of sound in m/s.</summary>
    public double SpeedOfSoundMps { get; }

    /// <summary>Air in cubic metres.</summary>
    public double AirVolumeM3 { get; }

    /// <summary>Inner surface in square metres.</summary>
    public double SurfaceM2 { get; }

    internal double[] MeanAbsorption { get; }

    /// <summary>Area-weighted mean absorption of a band, 0 to 1.</summary>
    public double MeanAbsorptionAt(int band) => MeanAbsorption[band];

    /// <summary>Absorption of a face in a band, 0 to 1.</summary>
    public double AbsorptionAt(int face, int band) => _absorption[(face * BandVector.Lanes) + band];

    /// <summary>Reverberation time in seconds by Eyring's formula for a band.</summary>
    public double EyringTimeS(int band) =>
        24 * Math.Log(10) * AirVolumeM3 / (SpeedOfSoundMps * -SurfaceM2 * Math.Log(1 - Math.Min(MeanAbsorption[band], 0.999)));

    /// <summary>Energy of all reflections of an order and above, relative to an omnidirectional source's direct sound at 1 m.</summary>
    public BandVector TailEnergy(int fromOrder)
    {
        Span<double> lanes = stackalloc double[BandVector.Lanes];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            double a = Math.Max(MeanAbsorption[b], 1e-3);
            lanes[b] = 16 * Math.PI * Math.Pow(1 - a, fromOrder) / (SurfaceM2 * a);
        }

        return BandVector.Load(lanes);
    }
}
