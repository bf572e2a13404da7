namespace Quarterlight.Discord.Gateway;

/// <content>What each frame means. Nothing here waits for anything but the first frame of our own.</content>
internal sealed partial class GatewayAttempt
{
    private ValueTask HandleAsync(ReadOnlyMemory<byte> utf8)
    {
        if (!GatewayFrame.TryRead(utf8, out GatewayFrame frame))
        {
            Unreadable("frame");
            return default;
        }

        unreadable = 0;
        switch (frame.Opcode)
        {
            case GatewayOpcode.Dispatch:
                HandleEvent(frame);
                break;
            case GatewayOpcode.Heartbeat:
                heart?.Ask();
                break;
            case GatewayOpcode.HeartbeatAck:
                heart?.Acknowledge();
                place.Sign();
                break;
            case GatewayOpcode.Reconnect:
                End(AttemptEnd.ReconnectAsked);
                break;
            case GatewayOpcode.InvalidSession:
                End(frame.Data.Span.SequenceEqual("true"u8) ? AttemptEnd.SessionRefusedForNow : AttemptEnd.SessionGone);
                break;
            case GatewayOpcode.Hello when heart is null:
                return GreetAsync(frame.Data);
        }

        return default;
    }

    private async ValueTask GreetAsync(ReadOnlyMemory<byte> data)
    {
        if (GatewayGreeting.ReadInterval(data) is not { } interval)
        {
            Unreadable("hello");
            return;
        }

        place.Sign();
        heart = new GatewayHeart(sender, place.Time, interval, place.Random(), () => Sequence);
        beating = Task.Run(() => BeatAsync(heart), CancellationToken.None);
        Await(AttemptEnd.ReadyLate, place.Options.ReadyTimeout);
        if (resuming is not null)
        {
            await sender.SendAsync(GatewayWriter.Resume(place.Options, resuming), stopBeating.Token).ConfigureAwait(false);
            return;
        }

        await place.Allowance.CountAsync(stopBeating.Token).ConfigureAwait(false);
        await sender.SendAsync(GatewayWriter.Identify(place.Options), stopBeating.Token).ConfigureAwait(false);
        place.Allowance.Sent();
        DiscordTelemetry.Identifies.Add(1);
    }

    private void HandleEvent(in GatewayFrame frame)
    {
        if (frame.Sequence is { } reached && reached > Interlocked.Read(ref sequence))
        {
            Interlocked.Exchange(ref sequence, reached);
        }

        switch (frame.Event)
        {
            case GatewayEvent.Ready:
                session = GatewayGreeting.ReadSession(frame.Data);
                if (session is null)
                {
                    Unreadable("ready");
                    End(AttemptEnd.SessionGone);
                    return;
                }

                place.Logger.SessionStarted();
                Ready();
                break;
            case GatewayEvent.Resumed:
                place.Logger.SessionResumed();
                DiscordTelemetry.Resumes.Add(1);
                Ready();
                break;
            case GatewayEvent.InteractionCreate:
                HandOn(frame.Data);
                break;
        }
    }

    private void Ready()
    {
        readySince ??= place.Time.GetTimestamp();
        Interlocked.Exchange(ref phase, null)?.Dispose();
        opening?.Dispose();
        place.Ready();
    }

    private void HandOn(ReadOnlyMemory<byte> data)
    {
        if (!InteractionReader.TryRead(data, place.Time.GetTimestamp(), out Interaction? interaction, out InteractionFlaw flaw))
        {
            place.Logger.InteractionUnreadable(flaw);
            DiscordTelemetry.Unreadable.Add(1, new KeyValuePair<string, object?>("reason", flaw.ToString()));
            return;
        }

        bool taken = false;
        try
        {
            taken = receive(interaction);
        }
        catch (Exception failed)
        {
            place.Logger.ReceiverFailed(failed.GetType().Name);
        }

        DiscordTelemetry.Interactions.Add(
            1, new("kind", interaction.Kind.ToString()), new("way", "gateway"), new KeyValuePair<string, object?>("taken", taken));
    }

    private void Unreadable(string what)
    {
        unreadable++;
        place.Logger.FrameUnreadable(unreadable);
        DiscordTelemetry.Unreadable.Add(1, new KeyValuePair<string, object?>("reason", what));
        if (unreadable > place.Options.MostUnreadableFrames)
        {
            End(AttemptEnd.Unreadable);
        }
    }
}
