using Quarterlight.Quantities;

namespace Quarterlight.Radio.Channels;

/// <summary>
/// Finds carriers for transmitters that keep their spacing and are free of intermodulation, or shows that there are none. Quick
/// attempts first, then an exhaustive search up to the node limit; what is proved is said in <see cref="CoordinationResult.Proof"/>.
/// </summary>
public static class ChannelCoordinator
{
    /// <summary>Solves a task. The same task gives the same answer, in whatever order its transmitters are listed.</summary>
    /// <param name="task">A task without violations of <see cref="CoordinationRules"/>.</param>
    /// <exception cref="InvalidInputException">The task breaks a rule.</exception>
    public static CoordinationResult Solve(CoordinationTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        IReadOnlyList<Violation> violations = CoordinationRules.Validate(task, "");
        if (violations.Count > 0)
        {
            throw new InvalidInputException(violations);
        }

        var problem = new CoordinationProblem(task);
        var placed = new PlacedCarriers(problem);
        var best = new BestSet(problem);
        var random = new Random(task.Seed);

        // Quick attempts up to a quarter of the nodes (they seldom need it), the full set up to half, the largest partial set up to three
        // quarters; where that proves nothing, more attempts for the rest.
        var starts = new QuickStarts(problem, placed, best, random);
        starts.Run(task.NodeLimit / 4);
        CoordinationProof proof = CoordinationProof.FullSetFound;
        if (!best.Complete)
        {
            var search = new ExhaustiveSearch(problem, placed, best);
            bool ended = search.Run(fullOnly: true, task.NodeLimit / 2);
            bool largest = !best.Complete && search.Run(fullOnly: false, task.NodeLimit * 3L / 4);
            if (!largest)
            {
                starts.Restart(int.MaxValue, task.NodeLimit);
            }

            proof = best.Complete ? CoordinationProof.FullSetFound
                : largest ? CoordinationProof.ProvedLargest
                : ended ? CoordinationProof.ProvedImpossible
                : CoordinationProof.NotProved;
        }

        Dictionary<string, long> carriers = best.ById();
        CompromiseAssignment? compromise = best.Complete ? null : Compromised(task, problem, carriers, random);
        if (compromise is { Check.Clean: true })
        {
            // The local search came upon a full clean set where the others did not.
            (carriers, compromise, proof) = (compromise.Carriers.ToDictionary(c => c.TransmitterId, c => c.FrequencyHz!.Value), null, CoordinationProof.FullSetFound);
        }

        AssignedCarrier[] assigned = InTaskOrder(task, carriers);
        return new CoordinationResult
        {
            Carriers = assigned,
            PlacedCount = carriers.Count,
            Proof = proof,
            NodesVisited = placed.Nodes,
            Check = ChannelChecker.Check(task, assigned),
            FewestHits = compromise,
        };
    }

    /// <summary>The quick attempts alone; null when they do not find a full clean set.</summary>
    internal static CoordinationResult? SolveQuickly(CoordinationTask task)
    {
        var problem = new CoordinationProblem(task);
        var placed = new PlacedCarriers(problem);
        var best = new BestSet(problem);
        new QuickStarts(problem, placed, best, new Random(task.Seed)).Run(task.NodeLimit);
        if (!best.Complete)
        {
            return null;
        }

        AssignedCarrier[] assigned = InTaskOrder(task, best.ById());
        return new CoordinationResult
        {
            Carriers = assigned,
            PlacedCount = assigned.Length,
            Proof = CoordinationProof.FullSetFound,
            NodesVisited = placed.Nodes,
            Check = ChannelChecker.Check(task, assigned),
        };
    }

    private static CompromiseAssignment? Compromised(CoordinationTask task, CoordinationProblem problem, Dictionary<string, long> clean, Random random)
    {
        Dictionary<string, long>? carriers = new Compromise(problem, random)
            .Run(clean, c => ChannelChecker.Check(task, InTaskOrder(task, c)).HitCount);
        if (carriers is null)
        {
            return null;
        }

        AssignedCarrier[] assigned = InTaskOrder(task, carriers);
        return new CompromiseAssignment(assigned, ChannelChecker.Check(task, assigned));
    }

    private static AssignedCarrier[] InTaskOrder(CoordinationTask task, Dictionary<string, long> carriers) =>
        [.. task.Transmitters.Select(t => new AssignedCarrier(t.Id, carriers.TryGetValue(t.Id, out long hz) ? hz : null))];
}
