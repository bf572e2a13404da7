using System.Numerics;
using System.Runtime.InteropServices;

namespace Quarterlight.Clips.Spectrum;

/// <summary>Power between two frequencies from the bins of a spectrum: a bin reaches half a bin to each side and counts by the part inside.</summary>
internal static class BinSums
{
    public static double Between(ReadOnlySpan<double> power, double binHz, double lowerHz, double upperHz)
    {
        double low = (lowerHz / binHz) + 0.5;
        double high = Math.Min((upperHz / binHz) + 0.5, power.Length);
        if (high <= low)
        {
            return 0;
        }

        int first = (int)low;
        int last = Math.Min((int)high, power.Length - 1);
        if (first == last)
        {
            return power[first] * (high - low);
        }

        return (power[first] * (first + 1 - low)) + Sum(power[(first + 1)..last]) + (power[last] * (high - last));
    }

    /// <summary>Sum of values.</summary>
    public static double Sum(ReadOnlySpan<double> values)
    {
        ReadOnlySpan<Vector<double>> many = MemoryMarshal.Cast<double, Vector<double>>(values);
        Vector<double> even = Vector<double>.Zero, odd = Vector<double>.Zero;
        int i = 0;
        for (; i + 2 <= many.Length; i += 2)
        {
            (even, odd) = (even + many[i], odd + many[i + 1]);
        }

        double sum = Vector.Sum(even + odd);
        foreach (double v in values[(i * Vector<double>.Count)..])
        {
            sum += v;
        }

        return sum;
    }

    /// <summary>Sum of products.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        ReadOnlySpan<Vector<double>> x = MemoryMarshal.Cast<double, Vector<double>>(a), y = MemoryMarshal.Cast<double, Vector<double>>(b);
        Vector<double> even = Vector<double>.Zero, odd = Vector<double>.Zero;
        int i = 0;
        for (; i + 2 <= x.Length; i += 2)
        {
            even = Vector.FusedMultiplyAdd(x[i], y[i], even);
            odd = Vector.FusedMultiplyAdd(x[i + 1], y[i + 1], odd);
        }

        double sum = Vector.Sum(even + odd);
        for (i *= Vector<double>.Count; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
