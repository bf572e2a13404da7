using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using Quarterlight.Discord.Tests.Support;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>What the source counts. Other tests run beside it, so only what grew is looked at.</summary>
public sealed class TelemetryTests
{
    [Fact]
    public async Task Session_StartedResumedAndBroken_IsCounted()
    {
        var seen = new ConcurrentQueue<(string Name, double Value, string Tags)>();
        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, self) =>
            {
                if (instrument.Meter.Name == "Quarterlight.Discord")
                {
                    self.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<long>((i, value, tags, _) => seen.Enqueue((i.Name, value, Text(tags))));
        listener.SetMeasurementEventCallback<double>((i, value, tags, _) => seen.Enqueue((i.Name, value, Text(tags))));
        listener.Start();
        var spans = new ConcurrentQueue<string>();
        using var traces = new ActivityListener
        {
            ShouldListenTo = s => s.Name == "Quarterlight.Discord",
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllData,
            ActivityStopped = a => spans.Enqueue($"{a.OperationName} {string.Join(",", a.TagObjects.Select(t => $"{t.Key}={t.Value}"))}"),
        };
        ActivitySource.AddActivityListener(traces);

        await using SourceRig rig = new SourceRig().Start();
        FakeSocket socket = await rig.ConnectAsync();
        socket.Interaction(2);
        socket.Say("{");
        socket.Say("""{"op":7}""");
        await rig.PassBackOffAsync(0.5);
        FakeSocket second = await rig.NextConnectionAsync();
        second.Hello();
        await second.NextSentAsync(6);
        second.Resumed(3);
        await Eventually.TrueAsync(() => rig.Source.Health.Ready);
        rig.Time.Advance(TimeSpan.FromSeconds(12));
        listener.RecordObservableInstruments();

        (string Name, double Value, string Tags)[] counted = [.. seen];
        Assert.Contains(("discord.gateway.identifies", 1, ""), counted);
        Assert.Contains(("discord.interactions", 1, "kind=Component,taken=True,way=gateway"), counted);
        Assert.Contains(("discord.unreadable", 1, "reason=frame"), counted);
        Assert.Contains(("discord.gateway.reconnects", 1, "reason=ReconnectAsked"), counted);
        Assert.Contains(("discord.gateway.resumes", 1, ""), counted);
        Assert.Contains(("discord.gateway.last_ack_age", 12, ""), counted);
        Assert.Contains(spans, s => s.StartsWith("gateway.connect resume=True", StringComparison.Ordinal));
        Assert.All(counted, c => Assert.DoesNotContain("secret", c.Tags, StringComparison.Ordinal));
    }

    private static string Text(ReadOnlySpan<KeyValuePair<string, object?>> tags) => string.Join(",", tags.ToArray().OrderBy(t => t.Key).Select(t => $"{t.Key}={t.Value}"));
}
