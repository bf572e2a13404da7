namespace Quarterlight.Radio.Channels;

/// <summary>First attempts that settle easy cases at once: lowest first, algebraic sets multiplied up to the guard, then seeded restarts.</summary>
internal sealed class QuickStarts(CoordinationProblem problem, PlacedCarriers placed, BestSet best, Random random)
{
    private const int Primes = 6, Multipliers = 6, Shifts = 3, Restarts = 120;

    /// <summary>A bounded number of attempts of each kind; ends when a full set is found or the nodes are used up.</summary>
    public void Run(long nodeLimit)
    {
        Greedy(0);
        Algebraic(nodeLimit);
        Restart(Restarts, nodeLimit);
    }

    /// <summary>Random attempts until a full set is found, their number is reached or the nodes are used up.</summary>
    public void Restart(int attempts, long nodeLimit)
    {
        // Wide jumps spread the carriers over the range, narrow ones keep them low; both kinds of case exist.
        for (int i = 0; i < attempts && !best.Complete && placed.Nodes < nodeLimit; i++)
        {
            Greedy(i % 4 == 3 ? 2.0 : (0.25 * (i % 4)) + 0.1);
        }

        placed.Clear();
    }

    /// <summary>Fills group by group upwards; jumps over channels at random when the spread is above 0.</summary>
    private void Greedy(double spread)
    {
        placed.Clear();
        var counts = new int[problem.Groups.Length];
        for (int g = 0; g < problem.Groups.Length; g++)
        {
            AlikeTransmitters group = problem.Groups[g];
            int jump = (int)(spread * group.ChannelCount / group.Ids.Length) + 1, from = spread > 0 ? random.Next(jump) : 0;
            for (int k = 0; k < group.Ids.Length; k++)
            {
                int channel = placed.NextFree(group.Channels, from);
                if (channel < 0 && (channel = placed.NextFree(group.Channels, 0)) < 0)
                {
                    break;
                }

                placed.Push(channel, g);
                counts[g]++;
                from = channel + 1 + (spread > 0 ? random.Next(jump) : 0);
            }
        }

        best.Offer(placed);
    }

    private void Algebraic(long nodeLimit)
    {
        long stepHz = problem.Grid.StepHz, guardHz = problem.Limits.Guard(3);
        long unitHz = (guardHz + stepHz - 1) / stepHz * stepHz;
        long units = ((problem.Grid.HighHz - problem.Grid.LowHz) / unitHz) + 1;
        int prime = SidonSets.PrimeAtOrAbove(Math.Max(5, problem.TransmitterCount + 1));
        for (int p = 0; p < Primes && (p == 0 || (long)prime * (prime - 1) < 2 * units); p++, prime = SidonSets.PrimeAtOrAbove(prime + 1 + (prime / 8)))
        {
            int modulus = prime * (prime - 1);
            int[] set = SidonSets.Ruzsa(prime);
            for (int m = 1, tried = 0; tried < Multipliers; m++)
            {
                if (Gcd(m, modulus) != 1)
                {
                    continue;
                }

                tried++;
                int[] marks = FromWidestGap(set, m, modulus);
                for (int shift = 0; shift < Shifts; shift++)
                {
                    if (best.Complete || placed.Nodes >= nodeLimit)
                    {
                        return;
                    }

                    long room = Math.Max(0, units - marks[^1] - 1);
                    Fill(marks, problem.Grid.LowHz + (room * shift / Shifts * unitHz), unitHz);
                }
            }
        }
    }

    private void Fill(int[] marks, long baseHz, long unitHz)
    {
        placed.Clear();
        var counts = new int[problem.Groups.Length];
        for (int g = 0; g < problem.Groups.Length; g++)
        {
            AlikeTransmitters group = problem.Groups[g];
            for (int i = 0; i < marks.Length && counts[g] < group.Ids.Length; i++)
            {
                long hz = baseHz + (marks[i] * unitHz);
                int channel = problem.Grid.FirstAtOrAbove(hz);
                if (channel < problem.Grid.Count && placed.NextFree(group.Channels, channel) == channel)
                {
                    placed.Push(channel, g);
                    counts[g]++;
                }
            }
        }

        // Whoever found no mark takes any channel still clean.
        for (int g = 0; g < problem.Groups.Length; g++)
        {
            AlikeTransmitters group = problem.Groups[g];
            for (int channel = 0; counts[g] < group.Ids.Length && (channel = placed.NextFree(group.Channels, channel)) >= 0; counts[g]++)
            {
                placed.Push(channel, g);
            }
        }

        best.Offer(placed);
    }

    /// <summary>The set times m, turned round its circle so that the widest gap falls outside, from 0 upwards.</summary>
    private static int[] FromWidestGap(int[] set, int multiplier, int modulus)
    {
        int[] turned = [.. set.Select(s => (int)((long)s * multiplier % modulus)).Order()];
        int start = 0, widest = turned[0] + modulus - turned[^1];
        for (int i = 1; i < turned.Length; i++)
        {
            if (turned[i] - turned[i - 1] > widest)
            {
                (start, widest) = (i, turned[i] - turned[i - 1]);
            }
        }

        int first = turned[start];
        return [.. turned.Select(t => (t - first + modulus) % modulus).Order()];
    }

    private static int Gcd(int a, int b) => b == 0 ? a : Gcd(b, a % b);
}
