namespace Quarterlight.Radio.Channels;

/// <summary>The form of a product of carriers A, B and C.</summary>
public enum ProductKind
{
    /// <summary>2A-B, third order.</summary>
    TwoAMinusB,

    /// <summary>A+B-C, third order.</summary>
    APlusBMinusC,

    /// <summary>3A-2B, fifth order.</summary>
    ThreeAMinusTwoB,

    /// <summary>3A-B-C, fifth order.</summary>
    ThreeAMinusBMinusC,

    /// <summary>2A+B-2C, fifth order.</summary>
    TwoAPlusBMinusTwoC,
}

/// <summary>One intermodulation product.</summary>
/// <param name="Kind">Its form.</param>
/// <param name="A">Index of carrier A in the list enumerated.</param>
/// <param name="B">Index of carrier B.</param>
/// <param name="C">Index of carrier C; -1 for a product of two signals.</param>
/// <param name="FrequencyHz">Where it falls, in Hz; may be negative or zero, and then falls on no carrier.</param>
public readonly record struct IntermodProduct(ProductKind Kind, int A, int B, int C, long FrequencyHz)
{
    /// <summary>3 or 5.</summary>
    public int Order => Kind <= ProductKind.APlusBMinusC ? 3 : 5;

    /// <summary>Signals it is made from: 2 or 3.</summary>
    public int SignalCount => C < 0 ? 2 : 3;
}

/// <summary>
/// Products of odd order that fall among the carriers. Of n carriers: n(n-1) of 2A-B, n(n-1)(n-2)/2 of A+B-C (Babcock 1953, Bell
/// System Technical Journal, counts them); n(n-1) of 3A-2B, n(n-1)(n-2)/2 of 3A-B-C, n(n-1)(n-2) of 2A+B-2C (counted from the form).
/// Products of four or five signals (2A+B-C-D, A+B+C-D-E), even orders and harmonics are left out.
/// </summary>
public static class IntermodProducts
{
    /// <summary>All products of the carriers. Every ordered choice of different carriers appears once.</summary>
    /// <param name="carriersHz">Carrier frequencies in Hz.</param>
    /// <param name="fifthOrder">Which products of fifth order to add.</param>
    public static IEnumerable<IntermodProduct> Enumerate(IReadOnlyList<long> carriersHz, FifthOrderScope fifthOrder)
    {
        ArgumentNullException.ThrowIfNull(carriersHz);
        return Walk(carriersHz, fifthOrder);
    }

    private static IEnumerable<IntermodProduct> Walk(IReadOnlyList<long> f, FifthOrderScope fifthOrder)
    {
        for (int a = 0; a < f.Count; a++)
        {
            for (int b = 0; b < f.Count; b++)
            {
                if (a == b)
                {
                    continue;
                }

                yield return new(ProductKind.TwoAMinusB, a, b, -1, (2 * f[a]) - f[b]);
                if (fifthOrder != FifthOrderScope.None)
                {
                    yield return new(ProductKind.ThreeAMinusTwoB, a, b, -1, (3 * f[a]) - (2 * f[b]));
                }

                for (int c = 0; c < f.Count; c++)
                {
                    if (c == a || c == b)
                    {
                        continue;
                    }

                    // A and B of A+B-C, and B and C of 3A-B-C, are alike: each pair once.
                    if (a < b)
                    {
                        yield return new(ProductKind.APlusBMinusC, a, b, c, f[a] + f[b] - f[c]);
                    }

                    if (fifthOrder == FifthOrderScope.TwoAndThreeSignal)
                    {
                        if (b < c)
                        {
                            yield return new(ProductKind.ThreeAMinusBMinusC, a, b, c, (3 * f[a]) - f[b] - f[c]);
                        }

                        yield return new(ProductKind.TwoAPlusBMinusTwoC, a, b, c, (2 * f[a]) + f[b] - (2 * f[c]));
                    }
                }
            }
        }
    }
}
