using CsCheck;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

public class ExactChoiceTests
{
    private static readonly Fixings[] s_fixings = [Fixings.SpringClip, Fixings.PaperTape];

    // Branch and bound against trying everything, with counts, inputs, shared microphones and combing all biting.
    [Fact]
    public void Solve_SmallCases_EqualsBruteForce() => Gen.Int[0, 100_000].Sample(seed =>
    {
        var random = new Random(seed);
        int talkers = random.Next(1, 4);
        List<Candidate> candidates = [.. Enumerable.Range(0, random.Next(2, 10)).Select(_ => Any(random, talkers))];
        var limits = new ChoiceLimits(
            talkers,
            random.Next(1, talkers + 1),
            [random.Next(1, 3), random.Next(1, 3)],
            s_fixings.ToDictionary(f => f, _ => random.Next(1, 4)));
        Choice? solved = ExactChoice.Solve(candidates, [.. Enumerable.Range(0, candidates.Count)], limits, long.MaxValue);
        (double Worst, double Sum)? brute = BruteForce(candidates, limits);
        Assert.Equal(brute is null, solved is null);
        if (brute is { } best)
        {
            Assert.True(solved!.Complete);
            Assert.Equal(best.Worst, solved.WorstDb, 1e-6);
            Assert.Equal(best.Sum, solved.SumDb, 1e-6);
            Assert.Equal(solved.WorstDb, solved.WorstBoundDb, 1e-9);
            Assert.Equal(solved.SumDb, Enumerable.Range(0, talkers).Sum(t => ExactChoice.ScoreIn(candidates, solved.Chosen, t)), 1e-9);
        }
    }, iter: 2000);

    [Fact]
    public void Solve_StoppedAtItsLimit_SaysSoAndBoundsTheRest()
    {
        var random = new Random(7);
        List<Candidate> candidates = [.. Enumerable.Range(0, 60).Select(_ => Any(random, 4, single: true))];
        var limits = new ChoiceLimits(4, 4, [4, 4], s_fixings.ToDictionary(f => f, _ => 4));
        int[] all = [.. Enumerable.Range(0, candidates.Count)];
        Choice exact = ExactChoice.Solve(candidates, all, limits, long.MaxValue)!;
        Choice cut = ExactChoice.Solve(candidates, all, limits, 5)!;
        Assert.False(cut.Complete);
        Assert.True(cut.WorstBoundDb >= exact.WorstDb - 1e-9);
        Assert.True(cut.SumBoundDb >= exact.SumDb - 1e-9);
        Assert.True(cut.WorstDb <= exact.WorstDb + 1e-9);
    }

    private static Candidate Any(Random random, int talkers, bool single = false)
    {
        int mask = single ? 1 << random.Next(talkers) : random.Next(1, 1 << talkers);
        double[] scores = [.. Enumerable.Range(0, talkers).Select(_ => Math.Round((random.NextDouble() * 20) - 5, 1))];
        return new Candidate
        {
            Mask = mask,
            Spot = random.Next(6),
            Microphone = random.Next(2),
            Fixing = s_fixings[random.Next(2)],
            Aim = Vector3D.Forward,
            ScoreDb = scores,
            RatioDb = scores,
            SpeechDba = [.. Enumerable.Range(0, talkers).Select(_ => 50 + (random.NextDouble() * 20))],
        };
    }

    private static (double Worst, double Sum)? BruteForce(List<Candidate> candidates, ChoiceLimits limits)
    {
        (double Worst, double Sum)? best = null;
        var chosen = new int[limits.TalkerCount];
        void Try(int talker)
        {
            if (talker == limits.TalkerCount)
            {
                if (Valid(candidates, limits, chosen))
                {
                    double[] scores = [.. Enumerable.Range(0, limits.TalkerCount).Select(t => ExactChoice.ScoreIn(candidates, chosen, t))];
                    double worst = scores.Min(), sum = scores.Sum();
                    if (best is not { } b || worst > b.Worst + 1e-9 || (Math.Abs(worst - b.Worst) <= 1e-9 && sum > b.Sum))
                    {
                        best = (worst, sum);
                    }
                }

                return;
            }

            for (int c = 0; c < candidates.Count; c++)
            {
                if (candidates[c].Serves(talker))
                {
                    chosen[talker] = c;
                    Try(talker + 1);
                }
            }
        }

        Try(0);
        return best;
    }

    private static bool Valid(List<Candidate> candidates, ChoiceLimits limits, int[] chosen)
    {
        int[] open = [.. chosen.Distinct()];
        bool masksHold = open.All(c => Enumerable.Range(0, limits.TalkerCount).All(t => candidates[c].Serves(t) == (chosen[t] == c)));
        return masksHold
            && open.Length <= limits.InputCount
            && open.Select(c => candidates[c].Spot).Distinct().Count() == open.Length
            && open.GroupBy(c => candidates[c].Microphone).All(g => g.Count() <= limits.MicrophoneCounts[g.Key])
            && open.GroupBy(c => candidates[c].Fixing).All(g => g.Count() <= limits.FixingCounts[g.Key]);
    }
}
