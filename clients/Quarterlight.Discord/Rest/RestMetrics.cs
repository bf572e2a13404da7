using System.Diagnostics.Metrics;

namespace Quarterlight.Discord.Rest;

/// <summary>Figures of the REST side, by templates of routes: no id and no token is ever a label.</summary>
internal sealed class RestMetrics : IDisposable
{
    /// <summary>Name of the meter.</summary>
    public const string MeterName = "Quarterlight.Discord.Rest";

    private readonly Meter meter = new(MeterName);
    private readonly Counter<long> requests;
    private readonly Histogram<double> waits;
    private readonly Counter<long> limited;
    private readonly Counter<long> repeats;

    public RestMetrics()
    {
        requests = meter.CreateCounter<long>("discord.rest.requests", "{request}", "Requests by route and status; status 0 when there was no answer.");
        waits = meter.CreateHistogram<double>("discord.rest.wait", "s", "Wait for the turn in the bucket and for its limits.");
        limited = meter.CreateCounter<long>("discord.rest.limited", "{answer}", "Answers 429 by scope; edge when something before the platform gave it.");
        repeats = meter.CreateCounter<long>("discord.rest.repeats", "{request}", "Requests sent again, by route.");
    }

    /// <summary>A try ended.</summary>
    public void Tried(RestRoute route, int status) =>
        requests.Add(1, new("http.request.method", route.Method.Method), new("url.template", route.Template), new("http.response.status_code", status));

    /// <summary>A turn came.</summary>
    public void Waited(RestRoute route, TimeSpan wait) => waits.Record(wait.TotalSeconds, new KeyValuePair<string, object?>("url.template", route.Template));

    /// <summary>A 429 came.</summary>
    public void Limited(string scope) => limited.Add(1, new KeyValuePair<string, object?>("scope", scope));

    /// <summary>A request goes out again.</summary>
    public void Repeated(RestRoute route) => repeats.Add(1, new KeyValuePair<string, object?>("url.template", route.Template));

    /// <inheritdoc/>
    public void Dispose() => meter.Dispose();
}
