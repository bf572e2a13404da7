namespace Quarterlight.Quantities;

/// <summary>A sound pressure level in dB re 20 µPa. Levels are never added: see <see cref="EnergySum"/>.</summary>
public readonly record struct SoundPressureLevel(double Db) : IComparable<SoundPressureLevel>
{
    /// <summary>Reference pressure, 20 µPa, in pascals.</summary>
    public const double ReferencePressurePa = 20e-6;

    /// <summary>Level of an rms pressure of 1 Pa: 93.979 dB.</summary>
    public static SoundPressureLevel OnePascal => new(20 * Math.Log10(1 / ReferencePressurePa));

    /// <summary>Squared pressure relative to the reference: 10^(L/10).</summary>
    public double RelativeEnergy => Math.Pow(10, Db / 10);

    /// <summary>The level of a squared pressure relative to the reference; minus infinity for zero.</summary>
    public static SoundPressureLevel FromRelativeEnergy(double relativeEnergy) => new(10 * Math.Log10(relativeEnergy));

    /// <summary>Level of several independent sounds together: 10 lg sum 10^(L/10).</summary>
    public static SoundPressureLevel EnergySum(params ReadOnlySpan<SoundPressureLevel> levels)
    {
        double sum = 0;
        foreach (SoundPressureLevel level in levels)
        {
            sum += level.RelativeEnergy;
        }

        return FromRelativeEnergy(sum);
    }

    /// <summary>Difference between two levels.</summary>
    public static Decibels operator -(SoundPressureLevel a, SoundPressureLevel b) => new(a.Db - b.Db);

    /// <summary>A level raised by a gain.</summary>
    public static SoundPressureLevel operator +(SoundPressureLevel a, Decibels gain) => new(a.Db + gain.Value);

    /// <summary>A level lowered by a loss.</summary>
    public static SoundPressureLevel operator -(SoundPressureLevel a, Decibels loss) => new(a.Db - loss.Value);

    /// <inheritdoc/>
    public int CompareTo(SoundPressureLevel other) => Db.CompareTo(other.Db);

    /// <summary>True when the left side is lower.</summary>
    public static bool operator <(SoundPressureLevel a, SoundPressureLevel b) => a.Db < b.Db;

    /// <summary>True when the left side is higher.</summary>
    public static bool operator >(SoundPressureLevel a, SoundPressureLevel b) => a.Db > b.Db;

    /// <summary>True when the left side is lower or equal.</summary>
    public static bool operator <=(SoundPressureLevel a, SoundPressureLevel b) => a.Db <= b.Db;

    /// <summary>True when the left side is higher or equal.</summary>
    public static bool operator >=(SoundPressureLevel a, SoundPressureLevel b) => a.Db >= b.Db;

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Db:0.0} dB SPL");
}
