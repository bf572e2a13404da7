namespace Quarterlight.Radio.Propagation;

/// <summary>What a vehicle standing between the two antennas takes away: diffraction over a single edge.</summary>
/// <remarks>ITU-R P.526: J(ν) = 6.9 + 20 lg(sqrt((ν-0.1)² + 1) + ν - 0.1) for ν above -0.78, 0 below; ν = h sqrt(2 (1/d1 + 1/d2)/λ).</remarks>
public static class KnifeEdge
{
    /// <summary>Extra loss in dB.</summary>
    /// <param name="wavelengthM">Wavelength in metres.</param>
    /// <param name="distance1M">Distance from one antenna to the edge in metres, above 0.</param>
    /// <param name="distance2M">Distance from the other antenna in metres, above 0.</param>
    /// <param name="heightM">Height of the edge above the line between the antennas in metres; negative below it.</param>
    public static double LossDb(double wavelengthM, double distance1M, double distance2M, double heightM) =>
        LossDb(heightM * Math.Sqrt(2 * ((1 / distance1M) + (1 / distance2M)) / wavelengthM));

    /// <summary>Extra loss in dB for the parameter ν.</summary>
    public static double LossDb(double nu)
    {
        double x = nu - 0.1;
        return nu <= -0.78 ? 0 : 6.9 + (20 * Math.Log10(Math.Sqrt((x * x) + 1) + x));
    }
}
