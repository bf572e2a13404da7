using System.Numerics;

namespace Quarterlight.Clips.Levels;

/// <summary>Finds the highest point of the band-limited curve through samples, on a grid finer by a power of two.</summary>
/// <remarks>
/// ITU-R BS.1770-5 Annex 2 asks for at least fourfold oversampling at 48 kHz; this is eightfold, with a sinc under a Kaiser window of 32 samples instead of 12.
/// Places p and 1 - p between two samples share their products: what is even about the middle adds, what is odd is taken off.
/// </remarks>
internal sealed class Interpolator
{
    /// <summary>Samples on each side of the place between two samples.</summary>
    public const int Half = 16;

    // Kaiser's beta for about 70 dB (Kaiser 1974: 0.1102 (A - 8.7)).
    private const double Beta = 6.76;

    private readonly int _factor;
    private readonly float[] _even, _odd;
    private readonly float _bound;

    /// <summary>Makes an interpolator.</summary>
    /// <param name="factor">2, 4 or 8.</param>
    public Interpolator(int factor)
    {
        _factor = factor;
        int places = factor / 2;
        (_even, _odd) = (new float[places * Half], new float[places * Half]);
        double bound = 1;
        for (int p = 1; p <= places; p++)
        {
            double at = (double)p / factor, sum = 0, size = 0;
            for (int k = -Half; k < Half; k++)
            {
                sum += Weight(at, k + 1);
                size += Math.Abs(Weight(at, k + 1));
            }

            bound = Math.Max(bound, size / sum);
            for (int k = 0; k < Half; k++)
            {
                double before = Weight(at, -k) / sum, after = Weight(at, k + 1) / sum;
                _even[((p - 1) * Half) + k] = (float)((before + after) / 2);
                _odd[((p - 1) * Half) + k] = (float)((before - after) / 2);
            }
        }

        _bound = (float)(bound * 1.0001);
    }

    /// <summary>Looks for a point higher than the one known, between each of the first samples and the next.</summary>
    /// <param name="x">Samples; <see cref="Half"/> - 1 before the first looked at and <see cref="Half"/> behind the last.</param>
    /// <param name="count">Samples looked at, a multiple of the vector's length.</param>
    /// <param name="peak">Highest absolute value known; raised.</param>
    /// <returns>Place in samples after the first looked at, negative when nothing higher was found.</returns>
    public double Raise(ReadOnlySpan<float> x, int count, ref float peak)
    {
        double place = -1;
        int stride = Vector<float>.Count;
        for (int i = 0; i < count; i += stride)
        {
            // No point between can be higher than the bound times the highest sample that has a share in it.
            if (Highest(x.Slice(i, stride + (2 * Half) - 1)) * _bound <= peak)
            {
                continue;
            }

            for (int p = 0; p <= _factor / 2; p++)
            {
                Vector<float> even = Vector<float>.Zero, odd = Vector<float>.Zero;
                if (p == 0)
                {
                    even = new Vector<float>(x[(i + Half - 1)..]);
                }
                else
                {
                    Sums(x[i..], p, out even, out odd);
                }

                Vector<float> a = Vector.Abs(even + odd), b = Vector.Abs(even - odd);
                if (Vector.GreaterThanAny(Vector.Max(a, b), new Vector<float>(peak)))
                {
                    for (int j = 0; j < stride; j++)
                    {
                        bool late = b[j] > a[j];
                        float high = late ? b[j] : a[j];
                        if (high > peak)
                        {
                            (peak, place) = (high, i + j + ((double)(late ? _factor - p : p) / _factor));
                        }
                    }
                }
            }
        }

        return place;
    }

    private static float Highest(ReadOnlySpan<float> x)
    {
        int stride = Vector<float>.Count;
        Vector<float> high = Vector.Abs(new Vector<float>(x[^stride..]));
        for (int i = 0; i + stride <= x.Length; i += stride)
        {
            high = Vector.Max(high, Vector.Abs(new Vector<float>(x[i..])));
        }

        float highest = 0;
        for (int i = 0; i < stride; i++)
        {
            highest = Math.Max(highest, high[i]);
        }

        return highest;
    }

    // Kaiser-windowed sinc at the distance between a place and a sample.
    private static double Weight(double at, int sample)
    {
        double d = at - sample, r = d / Half;
        return Math.Abs(r) >= 1 ? 0 : (d == 0 ? 1 : Math.Sin(Math.PI * d) / (Math.PI * d)) * Bessel(Beta * Math.Sqrt(1 - (r * r))) / Bessel(Beta);
    }

    // Modified Bessel function of the first kind and order 0, by its series.
    private static double Bessel(double x)
    {
        double sum = 1, term = 1;
        for (int k = 1; term > 1e-17 * sum; k++)
        {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }

        return sum;
    }

    private void Sums(ReadOnlySpan<float> x, int place, out Vector<float> even, out Vector<float> odd)
    {
        ReadOnlySpan<float> e = _even.AsSpan((place - 1) * Half, Half), o = _odd.AsSpan((place - 1) * Half, Half);
        (even, odd) = (Vector<float>.Zero, Vector<float>.Zero);
        for (int k = 0; k < Half; k++)
        {
            Vector<float> before = new(x[(Half - 1 - k)..]), after = new(x[(Half + k)..]);
            even = Vector.FusedMultiplyAdd(new Vector<float>(e[k]), before + after, even);
            odd = Vector.FusedMultiplyAdd(new Vector<float>(o[k]), before - after, odd);
        }
    }
}
