using System.Diagnostics;
using System.Diagnostics.Metrics;

namespace Quarterlight.CrewBot.Discord;

/// <summary>What is counted and timed, under the name <see cref="Name"/>.</summary>
internal sealed class CrewBotMeters : IDisposable
{
    /// <summary>Name of the meter and of the activity source.</summary>
    public const string Name = "Quarterlight.CrewBot";

    private readonly Meter meter = new(Name);
    private readonly ActivitySource activities = new(Name);
    private readonly Counter<long> interactions;
    private readonly Counter<long> duplicates;
    private readonly Counter<long> notTaken;
    private readonly Counter<long> recovered;
    private readonly Histogram<double> firstAnswer;
    private readonly Histogram<double> total;
    private readonly Histogram<double> ownShare;

    public CrewBotMeters()
    {
        interactions = meter.CreateCounter<long>("crewbot.interactions", "{interaction}", "Interactions by kind and how they ended.");
        duplicates = meter.CreateCounter<long>("crewbot.duplicates", "{interaction}", "Interactions delivered again and dropped.");
        notTaken = meter.CreateCounter<long>("crewbot.not_taken", "{interaction}", "Interactions not taken because far too much was under way.");
        recovered = meter.CreateCounter<long>("crewbot.recovered", "{interaction}", "Answers left open by the process before, and told so.");
        firstAnswer = meter.CreateHistogram<double>("crewbot.first_answer", "ms", "From receipt to the first answer taken by the platform.");
        total = meter.CreateHistogram<double>("crewbot.total", "ms", "From receipt to the end.");
        ownShare = meter.CreateHistogram<double>("crewbot.own_share", "ms", "From receipt to the end without the time the planner took; only without files.");
    }

    /// <summary>Watches how many wait.</summary>
    public void Watch(Func<int> waiting, Func<int> underWay)
    {
        meter.CreateObservableGauge("crewbot.waiting", waiting, "{interaction}", "Questions waiting for their turn.");
        meter.CreateObservableGauge("crewbot.under_way", underWay, "{interaction}", "Interactions under way.");
    }

    public void Duplicate() => duplicates.Add(1);

    public void NotTaken() => notTaken.Add(1);

    public void Recovered() => recovered.Add(1);

    /// <summary>Begins the span of an interaction; null when nobody listens.</summary>
    public Activity? Begin(string kind) => activities.StartActivity($"interaction {kind}", ActivityKind.Consumer);

    /// <summary>Notes an interaction that ended.</summary>
    public void Ended(string kind, InteractionRecord record, Activity? activity)
    {
        TimeSpan took = record.Elapsed;
        var kindTag = new KeyValuePair<string, object?>("kind", kind);
        var endTag = new KeyValuePair<string, object?>("end", record.End.ToString());
        interactions.Add(1, kindTag, endTag);
        total.Record(took.TotalMilliseconds, kindTag);
        if (record.FirstAnswer is { } first)
        {
            firstAnswer.Record(first.TotalMilliseconds, kindTag);
        }

        if (!record.WithFile)
        {
            ownShare.Record((took - record.Planner.Total).TotalMilliseconds, kindTag);
        }

        activity?.SetTag("crewbot.what", record.What).SetTag("crewbot.end", record.End.ToString()).SetTag("crewbot.team", record.Team);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        meter.Dispose();
        activities.Dispose();
    }
}
