using MathNet.Numerics;

namespace Quarterlight.Radio.Reception;

/// <summary>Audio signal over noise of an analogue FM receiver.</summary>
/// <remarks>
/// Textbook FM: above threshold noise is parabolic, SNR = C/N + 10 lg(B/W) + 10 lg(1.5 (Δf/W)²) + de-emphasis, for a sine at full deviation. Near
/// threshold clicks are added
/// after Rice 1963: B/(2√3) erfc(√ρ) a second for the bare carrier and (2/π) Δf e^(-ρ) more for a sine at full deviation, each of 2π, so a flat
/// noise; the parabolic part
/// and the sound itself fall by (1 - e^(-ρ))². Stereo adds the difference channel's noise round 38 kHz (ITU-R BS.450 pilot-tone system) and gives a
/// tenth of the deviation to the pilot.
/// Speech deviates less than full most of the time, so clicks are somewhat rarer than said here.
/// </remarks>
public static class FmReception
{
    private const double SubcarrierHz = 38_000;

    /// <summary>Share of the deviation that is left for sound beside the pilot of 9 to 10 % (from memory).</summary>
    private const double StereoShare = 0.9;

    /// <summary>Carrier over noise in dB below which clicks take over; about 10 to 12 dB, from memory.</summary>
    public const double ThresholdCnDb = 12;

    /// <summary>Audio signal over noise in dB that a receiver reaches on the strongest signal: the data sheet of one car receiver, not a
    /// population.</summary>
    public const double CeilingSnrDb = 65;

    /// <summary>The same with the receiver's own ceiling: what comes out of a real one.</summary>
    public static double SnrAtReceiverDb(double carrierToNoiseDb, AnalogueFm fm) =>
        -10 * Math.Log10(Math.Pow(10, -SnrDb(carrierToNoiseDb, fm) / 10) + Math.Pow(10, -CeilingSnrDb / 10));

    /// <summary>Audio signal over noise in dB of an ideal receiver.</summary>
    /// <param name="carrierToNoiseDb">Carrier over noise in the receiver's filter, dB.</param>
    /// <param name="fm">The system.</param>
    public static double SnrDb(double carrierToNoiseDb, AnalogueFm fm)
    {
        ArgumentNullException.ThrowIfNull(fm);
        double ratio = Math.Pow(10, carrierToNoiseDb / 10);
        double filter = fm.FilterBandwidthKHz * 1e3, audio = fm.AudioBandwidthKHz * 1e3;
        double deviation = fm.DeviationKHz * 1e3 * (fm.Stereo ? StereoShare : 1);
        double tau = fm.DeEmphasisMicroseconds * 1e-6;

        // All in Hz² of frequency deviation.
        double quiet = -SpecialFunctions.Expm1(-ratio);
        double parabolic = audio * audio * audio / (3 * filter * ratio) * quiet * quiet * ParabolicShare(audio, tau) * (fm.Stereo ? StereoParabolic(audio, tau) : 1);
        double clicks = (filter / (2 * Math.Sqrt(3)) * SpecialFunctions.Erfc(Math.Sqrt(ratio))) + (2 / Math.PI * deviation * Math.Exp(-ratio));
        double flat = 2 * audio * clicks * FlatShare(audio, tau) * (fm.Stereo ? 3 : 1);
        return 10 * Math.Log10(deviation * deviation / 2 * quiet * quiet / (parabolic + flat));
    }

    /// <summary>Carrier over noise in dB at which the audio reaches a signal over noise, but never less than <see cref="ThresholdCnDb"/>.</summary>
    /// <remarks>Below the threshold a link crackles even where the mean ratio would do.</remarks>
    public static double NeededCnDb(AnalogueFm fm)
    {
        ArgumentNullException.ThrowIfNull(fm);
        double low = ThresholdCnDb, high = 120;
        if (SnrAtReceiverDb(low, fm) >= fm.TargetSnrDb)
        {
            return low;
        }

        // Above the threshold one dB of carrier is one dB of sound of the ideal receiver, which has to reach more than asked by what the ceiling
        // takes.
        double ideal = -10 * Math.Log10(Math.Pow(10, -fm.TargetSnrDb / 10) - Math.Pow(10, -CeilingSnrDb / 10)), at = low;
        for (int i = 0; i < 6; i++)
        {
            at = Math.Clamp(at + ideal - SnrDb(at, fm), low, high);
        }

        return at;
    }

    /// <summary>What de-emphasis takes off parabolic noise, in dB: 10 lg(x³/(3 (x - atan x))), x = 2πWτ.</summary>
    public static double DeEmphasisGainDb(double deEmphasisMicroseconds, double audioBandwidthKHz = 15) =>
        -10 * Math.Log10(ParabolicShare(audioBandwidthKHz * 1e3, deEmphasisMicroseconds * 1e-6));

    /// <summary>How much noisier stereo is than mono at the same carrier in dB, the pilot's share of the deviation aside.</summary>
    public static double StereoPenaltyDb(double deEmphasisMicroseconds, double audioBandwidthKHz = 15) =>
        10 * Math.Log10(StereoParabolic(audioBandwidthKHz * 1e3, deEmphasisMicroseconds * 1e-6));

    // Share of parabolic noise that de-emphasis leaves: mean of f²/(1 + (2πfτ)²) over mean of f².
    private static double ParabolicShare(double audioHz, double tau)
    {
        double x = 2 * Math.PI * audioHz * tau;
        return x < 1e-3 ? 1 : 3 * (x - Math.Atan(x)) / (x * x * x);
    }

    // The same for flat noise.
    private static double FlatShare(double audioHz, double tau)
    {
        double x = 2 * Math.PI * audioHz * tau;
        return x < 1e-3 ? 1 : Math.Atan(x) / x;
    }

    // Noise of one side over mono's: sum and difference channel, (38k - f)² + (38k + f)² beside f².
    private static double StereoParabolic(double audioHz, double tau) =>
        3 + (6 * SubcarrierHz * SubcarrierHz / (audioHz * audioHz) * FlatShare(audioHz, tau) / ParabolicShare(audioHz, tau));
}
