using System.Threading.Channels;

namespace Quarterlight.Discord.Gateway;

/// <summary>
/// Heartbeats of one connection on a timer of their own (Gateway, Sending Heartbeats): the first after a random part of the interval, an extra one when
/// asked for. Only a regular beat waits for an acknowledgement: an extra one just before the next regular beat cannot have one yet.
/// </summary>
internal sealed class GatewayHeart(FrameSender sender, TimeProvider time, TimeSpan interval, double firstPart, Func<long?> sequence)
{
    private readonly Channel<bool> asked = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
    private volatile bool acknowledged = true;

    /// <summary>One extra beat at once; asked for twice before it is sent, it is sent once.</summary>
    public void Ask() => asked.Writer.TryWrite(true);

    /// <summary>The other side answered.</summary>
    public void Acknowledge() => acknowledged = true;

    /// <summary>Beats until stopped; returns when a regular beat found the last one unanswered.</summary>
    /// <exception cref="TimeoutException">A beat did not leave in time.</exception>
    public async Task BeatAsync(CancellationToken stop)
    {
        Task due = Task.Delay(interval * firstPart, time, stop);
        Task extra = asked.Reader.WaitToReadAsync(stop).AsTask();
        while (true)
        {
            if (await Task.WhenAny(due, extra).ConfigureAwait(false) == extra)
            {
                await extra.ConfigureAwait(false);
                asked.Reader.TryRead(out _);
                await sender.AnswerAsync(GatewayWriter.Heartbeat(sequence()), stop).ConfigureAwait(false);
                extra = asked.Reader.WaitToReadAsync(stop).AsTask();
                continue;
            }

            await due.ConfigureAwait(false);
            if (!acknowledged)
            {
                return;
            }

            acknowledged = false;
            await sender.SendAsync(GatewayWriter.Heartbeat(sequence()), stop).ConfigureAwait(false);

            // Counted from the sending: after a pause of the machine two beats in a row would leave no time for an answer.
            due = Task.Delay(interval, time, stop);
        }
    }
}
