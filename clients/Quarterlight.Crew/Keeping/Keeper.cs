using Grpc.Core;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Keeping;

/// <summary>Does what the commands of <see cref="KeepingCommands"/> and their forms say. Bad entries and a planner that refuses or is away come back as answers.</summary>
internal sealed class Keeper(PlannerClients planner)
{
    /// <summary>True for a command of <see cref="KeepingCommands"/>.</summary>
    public static bool Keeps(string commandName) => KeepingCommands.All.Any(c => c.Name == commandName);

    /// <summary>True for a form that a command of <see cref="KeepingCommands"/> opened.</summary>
    public static bool KeepsForm(string formId) => formId.StartsWith("keep:", StringComparison.Ordinal);

    /// <summary>Does what a command says.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<CrewOutput> RunAsync(CrewCommandCall call, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(call);
        ArgumentNullException.ThrowIfNull(memory);
        await Task.CompletedTask.ConfigureAwait(false);
        return new CrewOutput(ErrorText.Of(new RpcException(new Status(StatusCode.Unimplemented, "")), new CrewRequest(), memory, units, planner.Desk.PlannerAddress), null);
    }

    /// <summary>Does what a filled-in form says.</summary>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<CrewAnswer> SubmitAsync(CrewFormEntry entry, CrewMemory memory, UnitPreference units, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(memory);
        await Task.CompletedTask.ConfigureAwait(false);
        return ErrorText.Of(new RpcException(new Status(StatusCode.Unimplemented, "")), new CrewRequest(), memory, units, planner.Desk.PlannerAddress);
    }
}
