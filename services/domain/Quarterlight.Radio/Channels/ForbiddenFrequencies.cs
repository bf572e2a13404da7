namespace Quarterlight.Radio.Channels;

/// <summary>Takes note that a further carrier x must keep |k x - r| at or above a guard.</summary>
internal interface IForbiddenSink
{
    /// <summary>Notes one condition.</summary>
    /// <param name="k">How often x enters: 1, 2 or 3.</param>
    /// <param name="rHz">Sum of the other carriers in Hz.</param>
    /// <param name="order">Order of the product: 3 or 5, and so which guard.</param>
    /// <param name="hits">How many pairs of product and victim stand behind the condition.</param>
    void Forbid(int k, long rHz, int order, int hits);
}

/// <summary>
/// Where a further carrier x would hit or be hit. A hit is a product near a carrier: an equation such as 2A-B = D. Putting x in any of its
/// places (a member, the victim, or both) and solving for x gives k x = r with r a sum of at most three carriers already there. So each
/// equation below is stated once for x, and a carrier added brings only those that contain it. Conditions that a spacing of
/// <see cref="CoordinationLimits.EffectiveSpacingHz"/> already keeps are left out.
/// </summary>
internal static class ForbiddenFrequencies
{
    /// <summary>Tells a sink every condition that contains the carrier y and, else, only carriers of the list.</summary>
    public static void Add<TSink>(long y, ReadOnlySpan<long> placed, FifthOrderScope scope, ref TSink sink)
        where TSink : struct, IForbiddenSink
    {
        for (int i = 0; i < placed.Length; i++)
        {
            long a = placed[i];

            // x = 2A-B: product on x; 2A-x on B; x+B-A on A. 2x = A+B: 2x-A on B, 2x-B on A, A+B-x on x.
            sink.Forbid(1, (2 * y) - a, 3, 3);
            sink.Forbid(1, (2 * a) - y, 3, 3);
            sink.Forbid(2, y + a, 3, 3);

            // x = A+B-C: product on x; x+C-A on B, x+C-B on A; A+B-x on C.
            for (int j = 0; j < i; j++)
            {
                long b = placed[j];
                sink.Forbid(1, y + a - b, 3, 4);
                sink.Forbid(1, y + b - a, 3, 4);
                sink.Forbid(1, a + b - y, 3, 4);
            }
        }

        if (scope != FifthOrderScope.None)
        {
            AddFifth(y, placed, scope == FifthOrderScope.TwoAndThreeSignal, ref sink);
        }
    }

    /// <summary>
    /// Tells a sink the hits of a carrier beside another, products on or near their own members: there only where a guard is wider than the
    /// spacing kept.
    /// </summary>
    /// <param name="y">The carrier x is beside.</param>
    /// <param name="others">How many carriers there are without x.</param>
    /// <param name="scope">Which products of fifth order count.</param>
    /// <param name="sink">Where to tell it.</param>
    public static void AddBeside<TSink>(long y, int others, FifthOrderScope scope, ref TSink sink)
        where TSink : struct, IForbiddenSink
    {
        // 2x-A on x and 2A-x on A at the distance itself, and for any third carrier C x+C-A and A+C-x on C; 2x-A on A at twice the distance.
        sink.Forbid(1, y, 3, 2 * others);
        sink.Forbid(2, 2 * y, 3, 2);
        if (scope != FifthOrderScope.None)
        {
            // 3x-2A on x at twice the distance, on A at three times; for any third carrier C 2x+C-2A and 2A+C-2x on C.
            sink.Forbid(2, 2 * y, 5, scope == FifthOrderScope.TwoAndThreeSignal ? 2 * others : 2);
            sink.Forbid(3, 3 * y, 5, 2);
        }
    }

    private static void AddFifth<TSink>(long y, ReadOnlySpan<long> placed, bool three, ref TSink sink)
        where TSink : struct, IForbiddenSink
    {
        // Three-signal products bring each of these two more hits, on their own members: 3A-x-C on C, 2A+x-2C on C and so on.
        int hits = three ? 3 : 1;
        for (int i = 0; i < placed.Length; i++)
        {
            long a = placed[i];

            // 3A-2B = D with x for D, A and B.
            sink.Forbid(1, (3 * y) - (2 * a), 5, hits);
            sink.Forbid(1, (3 * a) - (2 * y), 5, hits);
            sink.Forbid(3, (2 * y) + a, 5, hits);
            sink.Forbid(3, (2 * a) + y, 5, hits);
            sink.Forbid(2, (3 * y) - a, 5, hits);
            sink.Forbid(2, (3 * a) - y, 5, hits);
            if (!three)
            {
                continue;
            }

            // 3A-B-C on its own A or B, and 2A+B-2C on its own A, B or C, come back to these.
            sink.Forbid(1, (2 * y) - a, 5, 3);
            sink.Forbid(1, (2 * a) - y, 5, 3);
            sink.Forbid(2, y + a, 5, 3);
            for (int j = 0; j < i; j++)
            {
                AddThree(y, a, placed[j], ref sink);
            }
        }
    }

    private static void AddThree<TSink>(long a, long b, long c, ref TSink sink)
        where TSink : struct, IForbiddenSink
    {
        long sum = a + b + c;
        sink.Forbid(3, sum, 5, 3);
        AddOrdered(a, b, c, ref sink);
        AddOrdered(a, c, b, ref sink);
        AddOrdered(b, a, c, ref sink);
        AddOrdered(b, c, a, ref sink);
        AddOrdered(c, a, b, ref sink);
        AddOrdered(c, b, a, ref sink);
        sink.Forbid(1, (4 * a) - sum, 5, 3);
        sink.Forbid(1, (4 * b) - sum, 5, 3);
        sink.Forbid(1, (4 * c) - sum, 5, 3);
    }

    private static void AddOrdered<TSink>(long a, long b, long c, ref TSink sink)
        where TSink : struct, IForbiddenSink
    {
        // 2A+B-2C = D with x for D or B, and for A or C: two hits each.
        sink.Forbid(1, (2 * a) + b - (2 * c), 5, 2);
        sink.Forbid(2, (2 * a) + b - c, 5, 2);
    }
}
