namespace Quarterlight.Radio.Propagation;

/// <summary>A straight road tunnel as a wide waveguide with lossy walls.</summary>
/// <remarks>
/// Free space plus the attenuation of the lowest mode: for a wave lying between the side walls 4.343 λ² (K/(w³ sqrt(K-1)) + 1/(h³ sqrt(K-1))) dB/m;
/// upright with
/// w and h exchanged (form of Emslie, Lagace and Strong 1975, from memory; it follows from the Fresnel coefficient at each bounce of a ray at the
/// grazing angles λ/2w
/// and λ/2h). Free space on top is cautious: a tunnel that guides spreads less. Traffic, bends and lining are left out.
/// </remarks>
public static class Tunnel
{
    /// <summary>Width in metres. Judgement: two lanes and kerbs.</summary>
    public const double WidthM = 9;

    /// <summary>Height in metres. Judgement.</summary>
    public const double HeightM = 5.5;

    /// <summary>Relative permittivity of concrete walls, from memory.</summary>
    public const double WallPermittivity = 5;

    /// <summary>Attenuation of the lowest mode in dB per metre.</summary>
    public static double ModeDbPerM(double wavelengthM, Polarisation polarisation)
    {
        (double along, double across) = polarisation == Polarisation.Horizontal ? (WidthM, HeightM) : (HeightM, WidthM);
        double root = Math.Sqrt(WallPermittivity - 1);
        return 4.343 * wavelengthM * wavelengthM * ((WallPermittivity / (along * along * along * root)) + (1 / (across * across * across * root)));
    }

    /// <summary>Loss in dB between isotropic antennas.</summary>
    public static double LossDb(in PathInputs path, double distanceM) =>
        FreeSpace.LossDb(path.FrequencyMHz, distanceM) + (ModeDbPerM(path.WavelengthM, path.Polarisation) * distanceM);
}
