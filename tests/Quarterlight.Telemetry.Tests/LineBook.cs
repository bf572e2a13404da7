using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace Quarterlight.Telemetry.Tests;

/// <summary>Writes down everything a logger provider is given: message, values, scopes and exception.</summary>
public sealed class LineBook : ILoggerProvider, ISupportExternalScope
{
    private IExternalScopeProvider _scopes = new LoggerExternalScopeProvider();

    public ConcurrentQueue<string> Lines { get; } = [];

    public void SetScopeProvider(IExternalScopeProvider scopeProvider) => _scopes = scopeProvider;

    public ILogger CreateLogger(string categoryName) => new Logger(this);

    public void Dispose()
    {
    }

    private static string Values(object? state) => state is IEnumerable<KeyValuePair<string, object?>> values
        ? string.Join(' ', values.Select(v => $"{v.Key}={v.Value}"))
        : "";

    private sealed class Logger(LineBook book) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => throw new InvalidOperationException("Scopes come from outside.");

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            book.Lines.Enqueue($"{logLevel} {eventId.Id} {formatter(state, exception)} | {Values(state)} | {exception?.Message} {exception?.StackTrace} {exception}");
            book._scopes.ForEachScope((scope, lines) => lines.Enqueue($"scope: {scope} {Values(scope)}"), book.Lines);
        }
    }
}
