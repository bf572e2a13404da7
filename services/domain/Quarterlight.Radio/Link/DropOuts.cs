using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Link;

/// <summary>How fast the fast fading runs.</summary>
public static class DropOuts
{
    /// <summary>Doppler spread in Hz that counts for level crossings when both cars drive at one speed past things that stand: √2 v/λ.</summary>
    /// <remarks>Two moving ends add as squares (Akki and Haber 1986, from memory; checked by simulation in the tests).</remarks>
    public static double DopplerHz(double speedKmPerHour, double frequencyMHz) =>
        Math.Sqrt(2) * speedKmPerHour / 3.6 / FreeSpace.WavelengthM(frequencyMHz);
}
