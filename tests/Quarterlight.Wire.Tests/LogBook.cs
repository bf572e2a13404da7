using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace Quarterlight.Wire.Tests;

/// <summary>Remembers everything a planner logs.</summary>
public sealed class LogBook : ILoggerProvider
{
    public ConcurrentQueue<(LogLevel Level, EventId Event, string Text)> Lines { get; } = [];

    public ILogger CreateLogger(string categoryName) => new Logger(this);

    public void Dispose()
    {
    }

    /// <summary>Fails when the planner logged an error.</summary>
    public void VerifyNoErrors()
    {
        string errors = string.Join('\n', Lines.Where(l => l.Level >= LogLevel.Error).Select(l => l.Text));
        Assert.True(errors.Length == 0, $"the planner logged errors:\n{errors}");
    }

    private sealed class Logger(LogBook book) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            book.Lines.Enqueue((logLevel, eventId, $"{formatter(state, exception)} {exception}"));
    }
}
