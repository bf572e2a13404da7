namespace Quarterlight.Radio.Channels;

/// <summary>
/// Coordination that uses the room there is: of the clean full sets, one that keeps several times the spacing and guard asked for, where such
/// a set is found quickly. Carriers drift, meters err, and somebody always switches on one more.
/// </summary>
public static class RoomyCoordination
{
    private const int QuickNodeLimit = 20_000;
    private const long WidestGuardHz = 1_000_000;

    // How many times spacing and guards are tried, most first.
    private static readonly double[] s_factors = [8, 6, 4, 3, 2, 1.5];

    /// <summary>Solves a task; its own spacing and guards hold in any case.</summary>
    /// <param name="task">A task without violations of <see cref="CoordinationRules"/>.</param>
    public static CoordinationResult Solve(CoordinationTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        foreach (double factor in s_factors)
        {
            CoordinationTask wide = task with { Limits = Widened(task.Limits, factor), NodeLimit = Math.Min(task.NodeLimit, QuickNodeLimit) };
            if (CoordinationRules.Validate(wide, "").Count == 0 && ChannelCoordinator.SolveQuickly(wide) is { } result)
            {
                // What counts is the task as asked: its products are checked, and counted, at its own guards.
                return result with { Check = ChannelChecker.Check(task, result.Carriers) };
            }
        }

        return ChannelCoordinator.Solve(task);
    }

    private static CoordinationLimits Widened(CoordinationLimits limits, double factor) => limits with
    {
        MinSpacingHz = (long)(limits.MinSpacingHz * Math.Min(factor, 3)),
        ThirdOrderGuardHz = Math.Min((long)(limits.ThirdOrderGuardHz * factor), WidestGuardHz),
        FifthOrderGuardHz = Math.Min((long)(limits.FifthOrderGuardHz * factor), WidestGuardHz),
    };
}
