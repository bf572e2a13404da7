namespace Quarterlight.Quantities;

/// <summary>A difference of levels (gain, loss, margin, uncertainty) in dB. Two sound pressure levels differ by one of these.</summary>
public readonly record struct Decibels(double Value) : IComparable<Decibels>
{
    /// <summary>No difference.</summary>
    public static Decibels Zero => default;

    /// <summary>The difference that an energy ratio amounts to: 10 lg r. The ratio must be above 0.</summary>
    public static Decibels FromEnergyRatio(double ratio) => new(10 * Math.Log10(ratio));

    /// <summary>The energy ratio this difference amounts to.</summary>
    public double EnergyRatio => Math.Pow(10, Value / 10);

    /// <summary>Sum of two differences.</summary>
    public static Decibels operator +(Decibels a, Decibels b) => new(a.Value + b.Value);

    /// <summary>Difference of two differences.</summary>
    public static Decibels operator -(Decibels a, Decibels b) => new(a.Value - b.Value);

    /// <summary>The opposite difference.</summary>
    public static Decibels operator -(Decibels a) => new(-a.Value);

    /// <inheritdoc/>
    public int CompareTo(Decibels other) => Value.CompareTo(other.Value);

    /// <summary>True when the left side is smaller.</summary>
    public static bool operator <(Decibels a, Decibels b) => a.Value < b.Value;

    /// <summary>True when the left side is larger.</summary>
    public static bool operator >(Decibels a, Decibels b) => a.Value > b.Value;

    /// <summary>True when the left side is smaller or equal.</summary>
    public static bool operator <=(Decibels a, Decibels b) => a.Value <= b.Value;

    /// <summary>True when the left side is larger or equal.</summary>
    public static bool operator >=(Decibels a, Decibels b) => a.Value >= b.Value;

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value:0.0} dB");
}
