using Microsoft.Extensions.Logging;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Registers the commands once, trying again while the platform is away. Questions are answered meanwhile.</summary>
internal sealed class CommandRegistration(ICommandRegistry registry, IReadOnlyList<CommandDefinition> commands, ulong? guild, TimeProvider time, ILogger log)
{
    private static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(10);

    /// <summary>Registers.</summary>
    /// <exception cref="DiscordException">It was refused, and a new try would not help.</exception>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task RunAsync(CancellationToken cancellation)
    {
        TimeSpan wait = FirstWait;
        while (true)
        {
            try
            {
                bool changed = await registry.RegisterAsync(commands, guild, cancellation).ConfigureAwait(false);
                CrewBotLog.Registered(log, commands.Count, changed);
                return;
            }
            catch (DiscordException e) when (e.Fault is DiscordFault.Unavailable or DiscordFault.RateLimited)
            {
                CrewBotLog.NotRegistered(log, e.Fault, e.Code, wait.TotalSeconds);
            }

            await Task.Delay(wait, time, cancellation).ConfigureAwait(false);
            wait = wait * 2 < LongestWait ? wait * 2 : LongestWait;
        }
    }
}
