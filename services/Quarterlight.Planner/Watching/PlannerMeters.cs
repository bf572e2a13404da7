using System.Diagnostics;
using System.Diagnostics.Metrics;
using Grpc.Core;
using Quarterlight.Planner.Services;
using Quarterlight.Planner.Upload;
using Quarterlight.Store;

namespace Quarterlight.Planner.Watching;

/// <summary>What the planner counts. No tag holds a team, a key or a text of a user: methods, states and outcomes are few.</summary>
internal sealed class PlannerMeters : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string Name = "Quarterlight.Planner";

    private static readonly double[] s_callSeconds = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30, 60, 300, 600];
    private static readonly double[] s_writeSeconds = [0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 5];

    private readonly Meter _meter = new(Name);
    private readonly Histogram<double> _calls;
    private readonly Histogram<double> _writes;

    /// <summary>Makes the meters that count by themselves.</summary>
    public PlannerMeters()
    {
        _calls = _meter.CreateHistogram("quarterlight.planner.call.duration", "s", "Calls, by method and status.", advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = s_callSeconds });
        _writes = _meter.CreateHistogram("quarterlight.planner.store.write.duration", "s", "Writes to the store until they are on disk, by outcome.", advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = s_writeSeconds });
    }

    /// <summary>Adds what is under way.</summary>
    public void Watch(PlanningGate plans, ClipGate clips)
    {
        _meter.CreateObservableUpDownCounter("quarterlight.planner.plans.active", () => plans.Present, "{plan}", "Plans under way, waiting ones included.");
        _meter.CreateObservableUpDownCounter("quarterlight.planner.clips.active", () => clips.Present, "{clip}", "Clips under way.");
    }

    /// <summary>A call has ended.</summary>
    public void CallEnded(string method, StatusCode status, TimeSpan duration) =>
        _calls.Record(duration.TotalSeconds, new TagList { { "rpc.method", method }, { "rpc.response.status_code", status.ToString() } });

    /// <summary>A write has ended.</summary>
    /// <param name="state">How; null when the store failed.</param>
    /// <param name="duration">How long it took, waiting included.</param>
    public void WriteEnded(WriteState? state, TimeSpan duration) =>
        _writes.Record(duration.TotalSeconds, new TagList { { "outcome", state?.ToString() ?? "Failed" } });

    /// <inheritdoc/>
    public void Dispose() => _meter.Dispose();
}
