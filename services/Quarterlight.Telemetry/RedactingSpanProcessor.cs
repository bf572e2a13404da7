using System.Diagnostics;
using OpenTelemetry;

namespace Quarterlight.Telemetry;

/// <summary>Takes the secrets out of a span when it ends, before any exporter sees it.</summary>
internal sealed class RedactingSpanProcessor(SecretRedactor redactor) : BaseProcessor<Activity>
{
    /// <inheritdoc/>
    public override void OnEnd(Activity data)
    {
        ArgumentNullException.ThrowIfNull(data);
        data.DisplayName = redactor.Redact(data.DisplayName);
        foreach ((string name, object? value) in data.TagObjects.ToArray())
        {
            object? shown = RedactedState.Value(value, redactor);
            if (!ReferenceEquals(shown, value) && !Equals(shown, value))
            {
                data.SetTag(name, shown);
            }
        }

        if (data.StatusDescription is { } description)
        {
            data.SetStatus(data.Status, redactor.Redact(description));
        }

        // What happened within a span and what it is linked to cannot be changed any more: such a span is not sent rather than sent with a secret.
        if (data.Events.Any(e => e.Name == "exception" || Holds(e.Name) || e.Tags.Any(Holds)) || data.Links.Any(l => l.Tags?.Any(Holds) == true))
        {
            data.ActivityTraceFlags &= ~ActivityTraceFlags.Recorded;
        }
    }

    private bool Holds(string text) => redactor.Redact(text) != text;

    private bool Holds(KeyValuePair<string, object?> tag) => tag.Value is { } value && Holds(value.ToString() ?? "");
}
