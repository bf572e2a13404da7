using Microsoft.Extensions.Logging;
using OpenTelemetry.Logs;

namespace Quarterlight.Telemetry;

/// <summary>Stands before a logger provider, so that nothing reaches it with a secret in it.</summary>
internal class RedactingLoggerProvider(ILoggerProvider inner, SecretRedactor redactor) : ILoggerProvider
{
    /// <summary>Wraps a provider; one that asks for scopes goes on getting them.</summary>
    public static ILoggerProvider Around(ILoggerProvider inner, SecretRedactor redactor) => inner switch
    {
        RedactingLoggerProvider => inner,
        ISupportExternalScope => new WithScopes(inner, redactor),
        _ => new RedactingLoggerProvider(inner, redactor),
    };

    /// <inheritdoc/>
    public ILogger CreateLogger(string categoryName) => new RedactingLogger(inner.CreateLogger(categoryName), redactor, exceptionsAsValues: inner is OpenTelemetryLoggerProvider);

    /// <inheritdoc/>
    public void Dispose() => inner.Dispose();

    private sealed class WithScopes(ILoggerProvider inner, SecretRedactor redactor) : RedactingLoggerProvider(inner, redactor), ISupportExternalScope
    {
        private readonly ISupportExternalScope _asks = (ISupportExternalScope)inner;
        private readonly SecretRedactor _redactor = redactor;

        public void SetScopeProvider(IExternalScopeProvider scopeProvider) => _asks.SetScopeProvider(new RedactedScopes(scopeProvider, _redactor));
    }

    private sealed class RedactedScopes(IExternalScopeProvider scopes, SecretRedactor redactor) : IExternalScopeProvider
    {
        public void ForEachScope<TState>(Action<object?, TState> callback, TState state) =>
            scopes.ForEachScope((scope, s) => callback(new RedactedState(scope, redactor.Redact(scope?.ToString() ?? ""), redactor), s), state);

        public IDisposable Push(object? state) => scopes.Push(state);
    }
}
