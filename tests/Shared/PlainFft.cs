using System.Numerics;

namespace Quarterlight.Tests.Shared;

/// <summary>A plain radix-2 transform for making and reading test signals: the tests' own, never the one under test.</summary>
internal static class PlainFft
{
    /// <summary>In place and unscaled; exp(-j...) forward, exp(+j...) inverse.</summary>
    public static void Transform(Complex[] x, bool inverse)
    {
        int n = x.Length;
        for (int i = 1, j = 0; i < n; i++)
        {
            int bit = n >> 1;
            for (; (j & bit) != 0; bit >>= 1)
            {
                j ^= bit;
            }

            j ^= bit;
            if (i < j)
            {
                (x[i], x[j]) = (x[j], x[i]);
            }
        }

        Complex[] turns = [.. Enumerable.Range(0, n / 2).Select(k => Complex.FromPolarCoordinates(1, (inverse ? 2 : -2) * Math.PI * k / n))];
        for (int length = 2; length <= n; length *= 2)
        {
            for (int start = 0; start < n; start += length)
            {
                for (int k = 0; k < length / 2; k++)
                {
                    Complex b = x[start + k + (length / 2)] * turns[k * (n / length)];
                    x[start + k + (length / 2)] = x[start + k] - b;
                    x[start + k] += b;
                }
            }
        }
    }
}
