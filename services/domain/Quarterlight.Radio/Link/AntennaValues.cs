using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Link;

/// <summary>Planning values of antennas and of the cars they are in.</summary>
public static class AntennaValues
{
    /// <summary>What is lost between antennas that stand crosswise, in dB.</summary>
    /// <remarks>From memory: 20 dB and more in free space, far less in a car full of metal.</remarks>
    public const double CrosswiseLossDb = 10;

    /// <summary>Where the gains come from: the dipole's is derived, the rest from memory.</summary>
    public static Provenance GainProvenance { get; } = new("Half-wave dipole 1.641; others as rigged on cars, from memory", Trust.FromMemory);

    /// <summary>Gain in dBi toward the other car, cable and shielding aside.</summary>
    public static double GainDbi(Antenna antenna)
    {
        ArgumentNullException.ThrowIfNull(antenna);
        return antenna.Kind switch
        {
            // Over a roof smaller than a wave the lobe tilts up: no more than a dipole toward the horizon.
            AntennaKind.QuarterWaveWhip => 0,
            AntennaKind.HalfWaveDipole => FreeSpace.DipoleGainDbi,
            AntennaKind.ShortWhip => -5,
            AntennaKind.HiddenWire => -8,
            AntennaKind.GlassFilm => -3,
            AntennaKind.Directional => 6,
            _ => antenna.StatedGainDbi ?? throw new ArgumentException("A stated gain is missing.", nameof(antenna)),
        };
    }

    /// <summary>What the car round the antenna takes away in dB: stated, or a planning value for place and band.</summary>
    /// <remarks>
    /// In the cabin below 300 MHz 15 dB (from memory: no measurement was found for the FM band; 25 dB with a body or a seat on it); above, 13.5 dB,
    /// the middle of the means of 3.2 to
    /// 23.8 dB measured into a car from 600 to 2400 MHz (Tanghe and others 2008, IEEE Trans. Vehicular Technology, abstract). On glass half of it
    /// (judgement).
    /// </remarks>
    public static double ShieldingDb(Antenna antenna, double frequencyMHz)
    {
        ArgumentNullException.ThrowIfNull(antenna);
        double cabin = frequencyMHz < 300 ? 15 : 13.5;
        return antenna.StatedShieldingDb ?? antenna.Place switch
        {
            AntennaPlace.InCabin => cabin,
            AntennaPlace.OnGlass => cabin / 2,
            _ => 0,
        };
    }

    /// <summary>How far the shielding may be off in dB, both ways.</summary>
    /// <remarks>3GPP TR 38.901 gives a standard deviation of 5 dB for car penetration (from memory); more when the planning value stands in for a
    /// measurement.</remarks>
    public static double ShieldingUncertaintyDb(Antenna antenna)
    {
        ArgumentNullException.ThrowIfNull(antenna);
        return !antenna.IsInside ? 0 : antenna.StatedShieldingDb is null ? 8 : 5;
    }
}
