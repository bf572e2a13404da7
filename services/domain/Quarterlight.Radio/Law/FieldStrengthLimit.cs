namespace Quarterlight.Radio.Law;

/// <summary>Turns the ways in which rules state a limit into one: power over an isotropic antenna.</summary>
public static class FieldStrengthLimit
{
    /// <summary>Power gain of a half-wave dipole over an isotropic antenna: 1.6409, which is 2.15 dB (derived from the dipole's pattern).</summary>
    public const double DipoleGain = 1.6409;

    /// <summary>
    /// Power in mW e.i.r.p. that gives a field in free space: p = (E d)² / 30 with E in V/m, d in m, p in W (ITU-R P.525, from
    /// e = √(30 p) / d).
    /// </summary>
    /// <param name="fieldMicrovoltsPerM">Field strength in µV/m, rms, above 0.</param>
    /// <param name="distanceM">Distance in metres, above 0.</param>
    /// <remarks>Rules measure on a test site over ground, which can mean up to 6 dB less power (from memory).</remarks>
    public static double EirpMilliwatts(double fieldMicrovoltsPerM, double distanceM)
    {
        double voltsAtOneM = fieldMicrovoltsPerM * 1e-6 * distanceM;
        return voltsAtOneM * voltsAtOneM / 30 * 1000;
    }

    /// <summary>E.i.r.p. from e.r.p., both in the same unit of power.</summary>
    public static double EirpFromErp(double erp) => erp * DipoleGain;

    /// <summary>E.r.p. from e.i.r.p., both in the same unit of power.</summary>
    public static double ErpFromEirp(double eirp) => eirp / DipoleGain;

    /// <summary>dBm from mW; minus infinity for zero.</summary>
    public static double Dbm(double milliwatts) => 10 * Math.Log10(milliwatts);

    /// <summary>mW from dBm.</summary>
    public static double Milliwatts(double dbm) => Math.Pow(10, dbm / 10);
}
