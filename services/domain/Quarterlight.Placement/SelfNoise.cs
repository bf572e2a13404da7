using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>A microphone's self-noise as band energies: white noise (3 dB more per octave) with the stated A-weighted level.</summary>
internal static class SelfNoise
{
    private static readonly BandVector s_perUnit = MakePerUnit();

    /// <summary>Band energies re 20 µPa squared for a self-noise in dB(A).</summary>
    public static BandVector Energy(double selfNoiseDba) => Math.Pow(10, selfNoiseDba / 10) * s_perUnit;

    private static BandVector MakePerUnit()
    {
        var white = BandLevels.Create(b => 3.0103 * b);
        return BandVector.FromDb(white.Shifted(-white.AWeightedDb()));
    }
}
