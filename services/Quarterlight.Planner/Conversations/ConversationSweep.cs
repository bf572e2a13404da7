namespace Quarterlight.Planner.Conversations;

/// <summary>Sweeps the conversations when the planner starts and every few hours from then on.</summary>
internal sealed class ConversationSweep(ConversationDesk desk, TimeProvider time, ILogger<ConversationSweep> logger) : BackgroundService
{
    private static readonly TimeSpan s_pause = TimeSpan.FromHours(6);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.Yield();
        using var timer = new PeriodicTimer(s_pause, time);
        do
        {
            try
            {
                await desk.SweepAsync(stoppingToken).ConfigureAwait(false);
            }
#pragma warning disable CA1031 // The next sweep may succeed, and calls are answered meanwhile.
            catch (Exception failure) when (!stoppingToken.IsCancellationRequested)
#pragma warning restore CA1031
            {
                logger.SweepFailed(failure);
            }
        }
        while (await timer.WaitForNextTickAsync(stoppingToken).ConfigureAwait(false));
    }
}
