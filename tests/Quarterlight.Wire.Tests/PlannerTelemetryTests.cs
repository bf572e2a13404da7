using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using Quarterlight.Planner.Watching;
using Quarterlight.Telemetry.Tests;

namespace Quarterlight.Wire.Tests;

/// <summary>What is told of a call: method, team, end and time, and nothing that somebody wrote.</summary>
public sealed class PlannerTelemetryTests
{
    private const string Key = "key of the bot, word for word";
    private const string Written = "what somebody wrote";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Calls_Traced_OneSpanEachWithMethodTeamAndStatus()
    {
        string team = $"bot-{Guid.NewGuid():n}";
        var ended = new ConcurrentQueue<Activity>();
        using var listener = new ActivityListener
        {
            ShouldListenTo = s => s.Name == PlannerSpans.Name,
            Sample = (ref _) => ActivitySamplingResult.AllDataAndRecorded,
            ActivityStopped = a =>
            {
                if (team.Equals(a.GetTagItem("quarterlight.team")))
                {
                    ended.Enqueue(a);
                }
            },
        };
        ActivitySource.AddActivityListener(listener);
        await using RunningPlanner planner = await StartAsync();
        var caller = new Caller(planner, Key, team);
        var parent = new Grpc.Core.Metadata { { "traceparent", "00-0123456789abcdef0123456789abcdef-0123456789abcdef-01" } };
        await caller.Cabins.CreateCabinAsync(new() { CabinId = "a", Cabin = Samples.Cabin(Written) }, parent, cancellationToken: Stop);
        await Refused.ByAsync(caller.Cabins.GetCabinAsync(new() { Name = "cabins/b" }, cancellationToken: Stop));
        using HttpResponseMessage clip = await caller.HttpAsync(HttpMethod.Post, $"/v1/clips:judge?file_name={Uri.EscapeDataString(Written)}", new ByteArrayContent(Waves.Talk(0.1)));

        await UntilAsync(() => ended.Count >= 3);
        Activity[] spans = [.. ended];
        Assert.Equal(3, spans.Length);
        Assert.Equal(["quarterlight.v1.CabinService/CreateCabin", "quarterlight.v1.CabinService/GetCabin", "v1/clips:judge"], spans.Select(s => s.DisplayName));
        Assert.Equal(["OK", "NotFound", "OK"], spans.Select(s => s.GetTagItem("rpc.response.status_code")));
        Assert.All(spans, s => Assert.Equal(ActivityKind.Server, s.Kind));
        Assert.Equal("0123456789abcdef0123456789abcdef", spans[0].TraceId.ToHexString());
        Assert.Equal("0123456789abcdef", spans[0].ParentSpanId.ToHexString());
        Assert.Equal(default, spans[1].ParentSpanId);
        string all = string.Join('\n', spans.SelectMany(s => s.TagObjects.Select(t => $"{t.Key}={t.Value}").Append(s.DisplayName)).Concat(planner.Log.Lines.Select(l => l.Text)));
        Assert.DoesNotContain(Key, all, StringComparison.Ordinal);
        Assert.DoesNotContain(Written, all, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calls_Measured_CountedByMethodAndStatusWithoutTeamOrText()
    {
        var measured = new ConcurrentQueue<(string Name, string Tags, double Value)>();
        using var listener = new MeterListener
        {
            InstrumentPublished = (instrument, l) =>
            {
                if (instrument.Meter.Name == PlannerMeters.Name)
                {
                    l.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<double>((i, value, tags, _) => measured.Enqueue((i.Name, Text(tags), value)));
        listener.SetMeasurementEventCallback<int>((i, value, tags, _) => measured.Enqueue((i.Name, Text(tags), value)));
        listener.Start();
        await using RunningPlanner planner = await StartAsync();
        var caller = new Caller(planner, Key, "bot-measured");
        await caller.Cabins.CreateCabinAsync(new() { CabinId = "a", Cabin = Samples.Cabin(Written) }, cancellationToken: Stop);
        await Refused.ByAsync(caller.Cabins.CreateCabinAsync(new() { CabinId = "a", Cabin = Samples.Cabin(Written) }, cancellationToken: Stop));
        await Refused.ByAsync(new Caller(planner, "no key at all", "bot-measured").Cabins.ListCabinsAsync(new(), cancellationToken: Stop));
        listener.RecordObservableInstruments();

        const string Call = "quarterlight.planner.call.duration", Write = "quarterlight.planner.store.write.duration";
        await UntilAsync(() => measured.Any(m => m.Tags.Contains("Unauthenticated", StringComparison.Ordinal)));
        Assert.Contains(measured, m => m is { Name: Call, Tags: "rpc.method=/quarterlight.v1.CabinService/CreateCabin rpc.response.status_code=OK", Value: > 0 and < 60 });
        Assert.Contains(measured, m => m is { Name: Call, Tags: "rpc.method=/quarterlight.v1.CabinService/CreateCabin rpc.response.status_code=AlreadyExists" });
        Assert.Contains(measured, m => m is { Name: Call, Tags: "rpc.method=/quarterlight.v1.CabinService/ListCabins rpc.response.status_code=Unauthenticated" });
        Assert.Contains(measured, m => m is { Name: Write, Tags: "outcome=Written", Value: > 0 });
        Assert.Contains(measured, m => m is { Name: Write, Tags: "outcome=AlreadyExists" });
        Assert.Contains(measured, m => m.Name == "quarterlight.planner.plans.active");
        Assert.Contains(measured, m => m.Name == "quarterlight.planner.clips.active");
        Assert.DoesNotContain(measured, m => m.Tags.Contains("bot-measured", StringComparison.Ordinal) || m.Tags.Contains(Written, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Host_WithACollector_SendsAllThreeAndNoKey()
    {
        await using CollectorStub collector = await CollectorStub.StartAsync();
        await using (RunningPlanner planner = await RunningPlanner.StartAsync(o => o with
        {
            KeyHashByDelegate = new Dictionary<string, string> { ["bot"] = Caller.Hash(Key) },
            Telemetry = new() { ServiceName = "planner-of-a-test", Endpoint = collector.Address },
        }))
        {
            var caller = new Caller(planner, Key, "bot-collected");
            await caller.Cabins.CreateCabinAsync(new() { CabinId = "a", Cabin = Samples.Cabin(Written) }, cancellationToken: Stop);
        }

        foreach (string path in new[] { "/v1/traces", "/v1/metrics", "/v1/logs" })
        {
            string body = collector.BodyOf(path);
            Assert.Contains("planner-of-a-test", body, StringComparison.Ordinal);
            Assert.Contains("/quarterlight.v1.CabinService/CreateCabin", body, StringComparison.Ordinal);
            Assert.DoesNotContain(Key, body, StringComparison.Ordinal);
            Assert.DoesNotContain(Written, body, StringComparison.Ordinal);
        }

        Assert.Contains("bot-collected", collector.BodyOf("/v1/traces"), StringComparison.Ordinal);
        Assert.Contains("quarterlight.planner.store.write.duration", collector.BodyOf("/v1/metrics"), StringComparison.Ordinal);
    }

    private static Task<RunningPlanner> StartAsync() =>
        RunningPlanner.StartAsync(o => o with { KeyHashByDelegate = new Dictionary<string, string> { ["bot"] = Caller.Hash(Key) } });

    private static string Text(ReadOnlySpan<KeyValuePair<string, object?>> tags) => string.Join(' ', tags.ToArray().Select(t => $"{t.Key}={t.Value}"));

    // A call's end is told a moment after its answer.
    private static async Task UntilAsync(Func<bool> there)
    {
        for (int i = 0; i < 500 && !there(); i++)
        {
            await Task.Delay(20, Stop);
        }
    }
}
