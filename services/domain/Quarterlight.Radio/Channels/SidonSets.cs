using System.Numerics;

namespace Quarterlight.Radio.Channels;

/// <summary>
/// Sets of whole numbers whose pairwise differences all differ, and so free of 2A-B and A+B-C on members (Maxemchuk and Schiff 1977 tie the
/// freedom to differences). Construction named after Ruzsa, from memory: for a prime p with primitive root g, the numbers p i + (p-1) g^i
/// mod p(p-1), i from 1 to p-1. That the differences differ is checked in the tests, not taken on trust.
/// </summary>
public static class SidonSets
{
    /// <summary>The p-1 numbers of the set for a prime, upwards, each from 0 to p(p-1)-1. Differences differ modulo p(p-1) too.</summary>
    /// <param name="prime">A prime from 3 to 1000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not such a prime.</exception>
    public static int[] Ruzsa(int prime)
    {
        if (prime is < 3 or > 1000 || !IsPrime(prime))
        {
            throw new ArgumentOutOfRangeException(nameof(prime));
        }

        int root = PrimitiveRoot(prime), modulus = prime * (prime - 1), power = 1;
        int[] set = new int[prime - 1];
        for (int i = 1; i < prime; i++)
        {
            power = power * root % prime;
            set[i - 1] = ((prime * i) + ((prime - 1) * power)) % modulus;
        }

        Array.Sort(set);
        return set;
    }

    /// <summary>The smallest prime at or above a number.</summary>
    internal static int PrimeAtOrAbove(int number)
    {
        while (!IsPrime(number))
        {
            number++;
        }

        return number;
    }

    private static bool IsPrime(int number)
    {
        for (int d = 2; d * d <= number; d++)
        {
            if (number % d == 0)
            {
                return false;
            }
        }

        return number > 1;
    }

    private static int PrimitiveRoot(int prime)
    {
        for (int g = 2; ; g++)
        {
            bool primitive = true;
            for (int d = 1; d < prime - 1; d++)
            {
                primitive &= (prime - 1) % d != 0 || BigInteger.ModPow(g, d, prime) != 1;
            }

            if (primitive)
            {
                return g;
            }
        }
    }
}
