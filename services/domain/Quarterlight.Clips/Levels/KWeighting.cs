namespace Quarterlight.Clips.Levels;

/// <summary>A second-order filter section: y = b0 x + b1 x' + b2 x'' - a1 y' - a2 y''.</summary>
/// <param name="B0">Weight of the sample.</param>
/// <param name="B1">Weight of the sample before.</param>
/// <param name="B2">Weight of the sample before that.</param>
/// <param name="A1">Weight of the last result, taken off.</param>
/// <param name="A2">Weight of the result before that, taken off.</param>
public readonly record struct FilterSection(double B0, double B1, double B2, double A1, double A2)
{
    /// <summary>Gain in dB at a frequency.</summary>
    /// <param name="frequencyHz">Frequency in Hz, 0 to half the sample rate.</param>
    /// <param name="sampleRateHz">Sample rate in Hz.</param>
    public double GainDb(double frequencyHz, double sampleRateHz)
    {
        var z = System.Numerics.Complex.FromPolarCoordinates(1, -2 * Math.PI * frequencyHz / sampleRateHz);
        return LevelLimits.Db(((((B2 * z) + B1) * z) + B0).Magnitude / ((((A2 * z) + A1) * z) + 1).Magnitude);
    }
}

/// <summary>K-weighting of ITU-R BS.1770-5 Annex 1: a shelf for the head, then a high-pass.</summary>
/// <remarks>
/// The coefficients for 48 kHz are those of Tables 1 and 2. For another rate each section is taken back to s = (z - 1)/(z + 1), stretched about its
/// own
/// corner K = tan(pi f0 / fs), and brought forth again. K at 48 kHz follows from the poles: K² = (1 + a1 + a2)/(1 - a1 + a2). No other constant is
/// needed.
/// </remarks>
public static class KWeighting
{
    private const double TableRateHz = 48_000;

    /// <summary>Stage 1 at 48 kHz, Table 1.</summary>
    public static FilterSection Shelf48 { get; } = new(1.53512485958697, -2.69169618940638, 1.19839281085285, -1.69065929318241, 0.73248077421585);

    /// <summary>Stage 2 at 48 kHz, Table 2.</summary>
    public static FilterSection HighPass48 { get; } = new(1, -2, 1, -1.99004745483398, 0.99007225036621);

    /// <summary>Stage 1 at a sample rate.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    public static FilterSection Shelf(double sampleRateHz) => At(Shelf48, sampleRateHz);

    /// <summary>Stage 2 at a sample rate.</summary>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    public static FilterSection HighPass(double sampleRateHz) => At(HighPass48, sampleRateHz);

    /// <summary>Gain in dB of both stages at a frequency.</summary>
    /// <param name="frequencyHz">Frequency in Hz, 0 to half the sample rate.</param>
    /// <param name="sampleRateHz">Sample rate in Hz, in <see cref="LevelLimits.SampleRateHz"/>.</param>
    public static double GainDb(double frequencyHz, double sampleRateHz) =>
        Shelf(sampleRateHz).GainDb(frequencyHz, sampleRateHz) + HighPass(sampleRateHz).GainDb(frequencyHz, sampleRateHz);

    private static FilterSection At(FilterSection section, double sampleRateHz)
    {
        LevelLimits.Check(sampleRateHz, 1);
        if (sampleRateHz == TableRateHz)
        {
            return section;
        }

        (double b0, double b1, double b2, double a1, double a2) = section;

        // z = (1 + s)/(1 - s): a polynomial 1, c1, c2 in 1/z becomes p0 + p1 s + p2 s².
        (double n0, double n1, double n2) = (b0 + b1 + b2, 2 * (b0 - b2), b0 - b1 + b2);
        (double d0, double d1, double d2) = (1 + a1 + a2, 2 * (1 - a2), 1 - a1 + a2);
        double k48 = Math.Sqrt(d0 / d2), corner = Math.Atan(k48) * TableRateHz;
        double r = k48 / Math.Tan(corner / sampleRateHz);
        (n1, n2, d1, d2) = (n1 * r, n2 * r * r, d1 * r, d2 * r * r);
        double norm = d0 + d1 + d2;
        return new FilterSection(
            (n0 + n1 + n2) / norm, 2 * (n0 - n2) / norm, (n0 - n1 + n2) / norm, 2 * (d0 - d2) / norm, (d0 - d1 + d2) / norm);
    }
}
