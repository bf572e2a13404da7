using Quarterlight.Quantities;

namespace Quarterlight.Radio.Reception;

/// <summary>How far a wanted FM signal must stand over another station, by the distance of their channels.</summary>
/// <remarks>
/// ITU-R BS.412-9 Table 3, 75 kHz deviation, steady interference, linear in between. <b>All figures are from memory</b>: they serve the crew as a
/// guide and no test
/// as an oracle. The regulator's own figures in 47 CFR 74.1204(a)(1) ask for less: 20, 6 and -40 dB at 0, 200 and 400 kHz.
/// </remarks>
public static class BroadcastProtection
{
    /// <summary>Channels farther apart than this do not disturb each other here.</summary>
    public const double FarthestKHz = 400;

    private const double StepKHz = 25;

    private static readonly double[] s_mono = [36, 31, 24, 16, 12, 9.5, 8, 7, 6, 4.5, 2, -2, -7, -11.5, -15, -17.5, -20];
    private static readonly double[] s_stereo = [45, 51, 51, 45, 33, 24.5, 18, 11, 7, 4.5, 2, -2, -7, -11.5, -15, -17.5, -20];

    /// <summary>Where the figures come from.</summary>
    public static Provenance Provenance { get; } = new("ITU-R BS.412-9 (12/1998) Table 3", Trust.FromMemory);

    /// <summary>Protection ratio in dB; null beyond <see cref="FarthestKHz"/>.</summary>
    public static double? RatioDb(double spacingKHz, bool stereo)
    {
        double at = Math.Abs(spacingKHz) / StepKHz;
        if (!(at <= FarthestKHz / StepKHz))
        {
            return null;
        }

        double[] table = stereo ? s_stereo : s_mono;
        int i = Math.Min((int)at, table.Length - 2);
        return table[i] + ((at - i) * (table[i + 1] - table[i]));
    }

    /// <summary>
    /// How far a station must stand over another transmitter for its listeners, in dB, as one regulator has it; null beyond 650 kHz. For what this
    /// link does to others.
    /// </summary>
    /// <remarks>47 CFR 74.1204(a)(1), class B: 54 dBu protected against 34 on the channel, 48 one channel (200 kHz) and 94 two or three channels
    /// away.</remarks>
    public static double? ListenerRatioDb(double spacingKHz) => Math.Abs(spacingKHz) switch
    {
        <= 100 => 54 - 34,
        <= 300 => 54 - 48,
        <= 650 => 54 - 94,
        _ => null,
    };

    /// <summary>
    /// Least field in dB over a microvolt per metre that planners protect in the country, at 10 m height: a station above it is somebody's service
    /// here.
    /// </summary>
    /// <remarks>ITU-R BS.412, stereo, rural 54 dB (as quoted by a low-power radio association); mono 48 dB from memory.</remarks>
    public static double LeastPlannedFieldDbuvPerM(bool stereo) => stereo ? 54 : 48;
}
