using System.Diagnostics;

namespace Quarterlight.Telemetry;

/// <summary>Says how an exception is noted in a span: as in a log, without its message.</summary>
internal sealed class ExceptionNotes : IDisposable
{
    /// <summary>Tag of an exception's message, as OpenTelemetry names it.</summary>
    public const string Message = "exception.message";

    private readonly ActivityListener _listener;

    /// <summary>Listens to sources by name until it is disposed.</summary>
    public ExceptionNotes(IReadOnlyList<string> sources, SecretRedactor redactor)
    {
        _listener = new ActivityListener
        {
            ShouldListenTo = source => sources.Contains(source.Name),
            // What is said here is not said again by the one who notes it.
            ExceptionRecorder = (Activity _, Exception exception, ref TagList tags) =>
            {
                tags.Add(Message, "");
                tags.Add("exception.type", exception.GetType().FullName);
                tags.Add("exception.stacktrace", ExceptionText.Of(exception, redactor));
            },
        };
        ActivitySource.AddActivityListener(_listener);
    }

    /// <inheritdoc/>
    public void Dispose() => _listener.Dispose();
}
