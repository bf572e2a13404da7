using System.Runtime.CompilerServices;

namespace Quarterlight.Quantities;

/// <summary>
/// One value in dB for each of the seven octave bands of <see cref="OctaveBands"/>: a spectrum of band levels
/// (dB re 20 µPa) or of level differences, as the place that uses it says.
/// </summary>
public readonly struct BandLevels : IEquatable<BandLevels>
{
    private readonly Values _values;

    /// <summary>Makes a spectrum from seven values in dB, 125 Hz first.</summary>
    /// <exception cref="ArgumentException">There are not exactly seven values.</exception>
    public BandLevels(params ReadOnlySpan<double> db)
    {
        if (db.Length != OctaveBands.Count)
        {
            throw new ArgumentException($"A spectrum has {OctaveBands.Count} octave bands (125 Hz to 8 kHz), not {db.Length}.", nameof(db));
        }

        for (int i = 0; i < OctaveBands.Count; i++)
        {
            _values[i] = db[i];
        }
    }

    /// <summary>Value in dB of a band, 0 = 125 Hz to 6 = 8 kHz.</summary>
    public double this[int band] => _values[band];

    /// <summary>The same value in every band.</summary>
    public static BandLevels Flat(double db) => new(db, db, db, db, db, db, db);

    /// <summary>Makes a spectrum by computing each band's value in dB.</summary>
    public static BandLevels Create(Func<int, double> db)
    {
        ArgumentNullException.ThrowIfNull(db);
        return new(db(0), db(1), db(2), db(3), db(4), db(5), db(6));
    }

    /// <summary>A-weighted level in dB(A) of the seven bands together.</summary>
    public double AWeightedDb()
    {
        double sum = 0;
        for (int i = 0; i < OctaveBands.Count; i++)
        {
            sum += Math.Pow(10, (_values[i] + OctaveBands.AWeightingDb[i]) / 10);
        }

        return 10 * Math.Log10(sum);
    }

    /// <summary>Unweighted level in dB of the seven bands together.</summary>
    public double OverallDb()
    {
        double sum = 0;
        for (int i = 0; i < OctaveBands.Count; i++)
        {
            sum += Math.Pow(10, _values[i] / 10);
        }

        return 10 * Math.Log10(sum);
    }

    /// <summary>Band by band energy sum of two spectra of levels.</summary>
    public static BandLevels EnergySum(BandLevels a, BandLevels b) =>
        Create(i => 10 * Math.Log10(Math.Pow(10, a[i] / 10) + Math.Pow(10, b[i] / 10)));

    /// <summary>Shifts every band by the same number of dB.</summary>
    public BandLevels Shifted(double db)
    {
        BandLevels self = this;
        return Create(i => self[i] + db);
    }

    /// <summary>Band by band sum of dB values: a spectrum of levels plus a spectrum of differences.</summary>
    public static BandLevels operator +(BandLevels a, BandLevels b) => Create(i => a[i] + b[i]);

    /// <summary>Band by band difference of dB values.</summary>
    public static BandLevels operator -(BandLevels a, BandLevels b) => Create(i => a[i] - b[i]);

    /// <summary>Copies the values in dB to a new array of seven.</summary>
    public double[] ToArray()
    {
        var copy = new double[OctaveBands.Count];
        for (int i = 0; i < copy.Length; i++)
        {
            copy[i] = _values[i];
        }

        return copy;
    }

    /// <inheritdoc/>
    public bool Equals(BandLevels other)
    {
        for (int i = 0; i < OctaveBands.Count; i++)
        {
            if (!_values[i].Equals(other._values[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is BandLevels other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_values[0], _values[1], _values[2], _values[3], _values[4], _values[5], _values[6]);

    /// <summary>True when all bands are equal.</summary>
    public static bool operator ==(BandLevels a, BandLevels b) => a.Equals(b);

    /// <summary>True when a band differs.</summary>
    public static bool operator !=(BandLevels a, BandLevels b) => !a.Equals(b);

    [InlineArray(OctaveBands.Count)]
    private struct Values
    {
        private double _first;
    }
}
