using System.Numerics;

namespace Quarterlight.Radio.Propagation;

/// <summary>Direct ray and ground ray over flat ground, with the Fresnel reflection coefficient of the real ground.</summary>
/// <remarks>
/// Textbook plane earth: loss = -20 lg |e^(-jk r1)/r1 + Γ e^(-jk r2)/r2| λ/4π. Γ after Fresnel with the complex permittivity ε - j 60 σ λ. No surface
/// wave:
/// below about 300 MHz with antennas near the ground use <see cref="NearGround"/>.
/// </remarks>
public static class TwoRay
{
    /// <summary>Half width of the stretch of road the local mean is taken over, as a fraction of the distance.</summary>
    /// <remarks>Judgement: the gap between two moving cars wobbles by about this much, and so fills the narrow nulls.</remarks>
    public const double AveragingFraction = 0.15;

    /// <summary>Loss in dB between isotropic antennas at one exact distance, nulls and all.</summary>
    public static double LossDb(in PathInputs path, double distanceM)
    {
        Rays rays = Trace(path, distanceM);
        return rays.LossDb(1);
    }

    /// <summary>
    /// Loss in dB of the mean power over <see cref="AveragingFraction"/> of the distance each way: the interference term fades out where it
    /// alternates within that stretch.
    /// </summary>
    public static double LocalMeanLossDb(in PathInputs path, double distanceM)
    {
        Rays rays = Trace(path, distanceM);

        // Mean of cos(φ + φ' u) over |u| <= w, with φ' the slope of the phase against ln d, is cos φ · sin(wφ')/(wφ').
        double swing = AveragingFraction * Math.Abs(rays.PhaseSlope);
        return rays.LossDb(swing < 1e-6 ? 1 : Math.Sin(swing) / swing);
    }

    /// <summary>Beyond the breakpoint: 40 lg d - 20 lg(h1 h2), whatever the frequency.</summary>
    public static double AsymptoteDb(double distanceM, double height1M, double height2M) =>
        (40 * Math.Log10(distanceM)) - (20 * Math.Log10(height1M * height2M));

    /// <summary>Fresnel reflection coefficient of a plane surface.</summary>
    /// <param name="permittivity">Complex relative permittivity, imaginary part negative or 0.</param>
    /// <param name="grazingRad">Grazing angle in radians, 0 to π/2.</param>
    /// <param name="polarisation">Vertical: the field stands in the plane of incidence.</param>
    public static Complex Reflection(Complex permittivity, double grazingRad, Polarisation polarisation)
    {
        (double sin, double cos) = Math.SinCos(grazingRad);
        Complex root = Complex.Sqrt(permittivity - (cos * cos));
        return polarisation == Polarisation.Vertical
            ? ((permittivity * sin) - root) / ((permittivity * sin) + root)
            : (sin - root) / (sin + root);
    }

    /// <summary>Complex relative permittivity of a ground: ε - j 60 σ λ.</summary>
    public static Complex Permittivity(GroundProperties ground, double wavelengthM)
    {
        ArgumentNullException.ThrowIfNull(ground);
        return new Complex(ground.RelativePermittivity, -60 * ground.ConductivitySPerM * wavelengthM);
    }

    private static Rays Trace(in PathInputs path, double distanceM)
    {
        double wavelength = path.WavelengthM, sum = path.TransmitHeightM + path.ReceiveHeightM, difference = path.TransmitHeightM - path.ReceiveHeightM;
        double direct = Math.Sqrt((distanceM * distanceM) + (difference * difference));
        double reflected = Math.Sqrt((distanceM * distanceM) + (sum * sum));
        Complex gamma = Reflection(Permittivity(path.Ground, wavelength), Math.Atan2(sum, distanceM), path.Polarisation);
        double wavenumber = 2 * Math.PI / wavelength;

        // The difference written without cancellation: r2 - r1 = 4 h1 h2/(r1 + r2).
        double phase = (wavenumber * 4 * path.TransmitHeightM * path.ReceiveHeightM / (direct + reflected)) - gamma.Phase;
        double slope = wavenumber * distanceM * ((distanceM / reflected) - (distanceM / direct));
        return new Rays(1 / direct, gamma.Magnitude / reflected, phase, slope, wavelength);
    }

    private readonly record struct Rays(double Direct, double Reflected, double PhaseRad, double PhaseSlope, double WavelengthM)
    {
        public double LossDb(double coherence)
        {
            double power = (Direct * Direct) + (Reflected * Reflected) + (2 * Direct * Reflected * Math.Cos(PhaseRad) * coherence);
            return -10 * Math.Log10(Math.Max(power, 1e-18) * WavelengthM * WavelengthM / (16 * Math.PI * Math.PI));
        }
    }
}
