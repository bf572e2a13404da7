using System.Collections;

namespace Quarterlight.Telemetry;

/// <summary>What a log line or a scope carries, without secrets: the same names, and values that are numbers, times or redacted texts.</summary>
internal sealed class RedactedState : IReadOnlyList<KeyValuePair<string, object?>>
{
    private readonly List<KeyValuePair<string, object?>> _values = [];
    private readonly string _message;

    public RedactedState(object? state, string message, SecretRedactor redactor)
    {
        _message = message;
        if (state is IEnumerable<KeyValuePair<string, object?>> values)
        {
            _values.AddRange(values.Select(v => KeyValuePair.Create(v.Key, Value(v.Value, redactor))));
        }
    }

    /// <inheritdoc/>
    public int Count => _values.Count;

    /// <inheritdoc/>
    public KeyValuePair<string, object?> this[int index] => _values[index];

    /// <summary>A value without secrets.</summary>
    public static object? Value(object? value, SecretRedactor redactor) => value switch
    {
        null or bool or byte or sbyte or short or ushort or int or uint or long or ulong or float or double or decimal or TimeSpan or DateTime or DateTimeOffset or Guid or Enum => value,
        string text => redactor.Redact(text),
        Exception exception => ExceptionText.Of(exception, redactor),
        string?[] texts => texts.Select(t => t is null ? null : redactor.Redact(t)).ToArray(),
        Array { Length: > 0 } numbers when numbers.GetValue(0)!.GetType().IsPrimitive => value,
        IEnumerable many => string.Join(", ", many.Cast<object?>().Select(m => Value(m, redactor))),
        _ => redactor.Redact(value.ToString() ?? ""),
    };

    /// <summary>Adds a value that is known to hold no secret.</summary>
    public void Add(string name, object? value) => _values.Add(KeyValuePair.Create(name, value));

    /// <inheritdoc/>
    public IEnumerator<KeyValuePair<string, object?>> GetEnumerator() => _values.GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    /// <inheritdoc/>
    public override string ToString() => _message;
}
