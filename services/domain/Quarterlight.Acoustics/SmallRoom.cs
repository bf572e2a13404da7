namespace Quarterlight.Acoustics;

/// <summary>Closed forms of room and free-field acoustics that the models are checked against and the docs refer to.</summary>
public static class SmallRoom
{
    /// <summary>Speed of sound in m/s at an air temperature: 343.2 sqrt((273.15 + t)/293.15), the form of ISO 9613-1.</summary>
    public static double SpeedOfSoundMps(double airTemperatureC) => 343.2 * Math.Sqrt((273.15 + airTemperatureC) / 293.15);

    /// <summary>Reverberation time in seconds by Sabine.</summary>
    public static double SabineTimeS(double volumeM3, double surfaceM2, double meanAbsorption, double speedOfSoundMps = 343) =>
        24 * Math.Log(10) * volumeM3 / (speedOfSoundMps * surfaceM2 * meanAbsorption);

    /// <summary>Reverberation time in seconds by Eyring.</summary>
    public static double EyringTimeS(double volumeM3, double surfaceM2, double meanAbsorption, double speedOfSoundMps = 343) =>
        24 * Math.Log(10) * volumeM3 / (speedOfSoundMps * -surfaceM2 * Math.Log(1 - meanAbsorption));

    /// <summary>Distance in metres at which direct and reverberant sound are equal: sqrt(Q A / 16 pi) with A from Sabine.</summary>
    public static double CriticalDistanceM(double volumeM3, double reverberationTimeS, double directivityFactor = 1, double speedOfSoundMps = 343) =>
        Math.Sqrt(directivityFactor * 24 * Math.Log(10) * volumeM3 / (speedOfSoundMps * reverberationTimeS) / (16 * Math.PI));

    /// <summary>Frequency in Hz above which a room's modes overlap: 2000 sqrt(T/V) (Kuttruff, Room Acoustics).</summary>
    public static double SchroederFrequencyHz(double volumeM3, double reverberationTimeS) => 2000 * Math.Sqrt(reverberationTimeS / volumeM3);

    /// <summary>Ripple in dB of two open microphones when the second hears a talker so many dB below the first: peak and dip.</summary>
    public static (double PeakDb, double DipDb) CombRippleDb(double leadDb)
    {
        double g = Math.Pow(10, -leadDb / 20);
        return (20 * Math.Log10(1 + g), 20 * Math.Log10(1 - g));
    }

    /// <summary>Frequency in Hz of notch number n (0 first) of two paths whose lengths differ: (2n+1) c/(2 d).</summary>
    public static double CombNotchHz(int n, double pathDifferenceM, double speedOfSoundMps = 343) => ((2 * n) + 1) * speedOfSoundMps / (2 * pathDifferenceM);

    /// <summary>A-weighting in dB at a frequency in Hz (IEC 61672-1:2013, Annex E poles).</summary>
    public static double AWeightingDb(double frequencyHz)
    {
        double f2 = frequencyHz * frequencyHz;
        double Response(double g2) => Math.Pow(12194.217, 2) * g2 * g2
            / ((g2 + Math.Pow(20.598997, 2)) * Math.Sqrt((g2 + Math.Pow(107.65265, 2)) * (g2 + Math.Pow(737.86223, 2))) * (g2 + Math.Pow(12194.217, 2)));
        return 20 * Math.Log10(Response(f2) / Response(1e6));
    }
}
