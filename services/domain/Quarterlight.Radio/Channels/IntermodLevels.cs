using Quarterlight.Quantities;
using Quarterlight.Radio.Propagation;

namespace Quarterlight.Radio.Channels;

/// <summary>
/// Levels of third-order products made in an output stage of cubic law. For equal signals the level is 3 P - 2 OIP3, the definition of
/// the intercept point; for unequal ones the amplitude of 2A-B goes with a²b and that of A+B-C with 2abc (expand the cube), so the
/// latter stands 20 log 2 = 6 dB above (Hausman, "Carrier Triple Beats", Microwave Journal: 6 dB). Levels of fifth order need a
/// fifth-order intercept point and are not given.
/// </summary>
public static class IntermodLevels
{
    /// <summary>Level of A+B-C above the two-signal law in dB: 20 log 2, from the cubic expansion.</summary>
    public static readonly double ThreeSignalRiseDb = 20 * Math.Log10(2);

    /// <summary>Distance between two transmitters for which the coupling is computed, in metres; a judgement: nearer than 0.1 m antennas are
    /// one.</summary>
    public static ValidRange DistanceM { get; } = new(0.1, 10_000, "m");

    /// <summary>Frequency for which the coupling is computed, in MHz.</summary>
    public static ValidRange FrequencyMHz { get; } = new(1, 6000, "MHz");

    /// <summary>
    /// Level of 2A-B at the output of the stage that makes it, in dBm: 2 P_A + P_B - 2 OIP3. For a product made in transmitter A, P_B is
    /// what arrives there: B's power less the coupling loss.
    /// </summary>
    /// <param name="powerADbm">Level of A at that output in dBm.</param>
    /// <param name="powerBDbm">Level of B at that output in dBm.</param>
    /// <param name="oip3Dbm">Output third-order intercept point in dBm. One measured forwards only estimates what a signal coming in backwards
    /// does.</param>
    public static double TwoSignalDbm(double powerADbm, double powerBDbm, double oip3Dbm) => (2 * powerADbm) + powerBDbm - (2 * oip3Dbm);

    /// <summary>Level of A+B-C at the output of the stage that makes it, in dBm: P_A + P_B + P_C - 2 OIP3 + 6.02.</summary>
    /// <param name="powerADbm">Level of A at that output in dBm.</param>
    /// <param name="powerBDbm">Level of B at that output in dBm.</param>
    /// <param name="powerCDbm">Level of C at that output in dBm.</param>
    /// <param name="oip3Dbm">Output third-order intercept point in dBm.</param>
    public static double ThreeSignalDbm(double powerADbm, double powerBDbm, double powerCDbm, double oip3Dbm) =>
        powerADbm + powerBDbm + powerCDbm - (2 * oip3Dbm) + ThreeSignalRiseDb;

    /// <summary>
    /// Loss between two transmitters in dB: free space between isotropic antennas, 20 log(4 pi d / lambda) (ITU-R P.525), not below 0, plus an extra
    /// loss. Within about a wavelength this is an estimate only: antennas there couple by their
    /// near fields.
    /// </summary>
    /// <param name="frequencyMHz">Frequency in MHz, within <see cref="FrequencyMHz"/>.</param>
    /// <param name="distanceM">Distance in metres, within <see cref="DistanceM"/>.</param>
    /// <param name="extraLossDb">Further loss in dB, such as bodies or an isolator; 0 for none.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public static double CouplingLossDb(double frequencyMHz, double distanceM, double extraLossDb = 0)
    {
        if (!FrequencyMHz.Contains(frequencyMHz))
        {
            throw new ArgumentOutOfRangeException(nameof(frequencyMHz));
        }

        if (!DistanceM.Contains(distanceM))
        {
            throw new ArgumentOutOfRangeException(nameof(distanceM));
        }

        return Math.Max(0, FreeSpace.LossDb(frequencyMHz, distanceM)) + extraLossDb;
    }
}
