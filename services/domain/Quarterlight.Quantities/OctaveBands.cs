namespace Quarterlight.Quantities;

/// <summary>The seven octave bands 125 Hz to 8 kHz that every spectrum of this project has, lowest first.</summary>
public static class OctaveBands
{
    /// <summary>Number of bands.</summary>
    public const int Count = 7;

    /// <summary>Nominal centre frequencies in Hz (ISO 266).</summary>
    public static ReadOnlySpan<double> CentresHz => [125, 250, 500, 1000, 2000, 4000, 8000];

    /// <summary>A-weighting in dB at the nominal centres (IEC 61672-1:2013, Table 3).</summary>
    public static ReadOnlySpan<double> AWeightingDb => [-16.1, -8.6, -3.2, 0, 1.2, 1.0, -1.1];
}
