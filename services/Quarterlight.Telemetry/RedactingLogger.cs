using Microsoft.Extensions.Logging;

namespace Quarterlight.Telemetry;

/// <summary>Hands everything on without secrets.</summary>
/// <param name="inner">Who writes it down.</param>
/// <param name="redactor">What takes the secrets out.</param>
/// <param name="exceptionsAsValues">True hands an exception on as two values, with its own type, instead of as an exception of ours.</param>
internal sealed class RedactingLogger(ILogger inner, SecretRedactor redactor, bool exceptionsAsValues) : ILogger
{
    /// <inheritdoc/>
    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => inner.BeginScope(new RedactedState(state, redactor.Redact(state.ToString() ?? ""), redactor));

    /// <inheritdoc/>
    public bool IsEnabled(LogLevel logLevel) => inner.IsEnabled(logLevel);

    /// <inheritdoc/>
    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        ArgumentNullException.ThrowIfNull(formatter);
        if (!inner.IsEnabled(logLevel))
        {
            return;
        }

        // The words of the line alone: a formatter may add the exception's own.
        var shown = new RedactedState(state, redactor.Redact(formatter(state, null)), redactor);
        RedactedException? stand = null;
        if (exception is not null)
        {
            string type = exception.GetType().FullName!;
            string text = ExceptionText.Of(exception, redactor);
            if (exceptionsAsValues)
            {
                shown.Add("exception.type", type);
                shown.Add("exception.stacktrace", text);
            }
            else
            {
                stand = new RedactedException(type, text);
            }
        }

        inner.Log(logLevel, eventId, shown, stand, static (s, _) => s.ToString());
    }
}
