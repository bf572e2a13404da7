using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace Quarterlight.Telemetry;

/// <summary>
/// An exception in words that hold nobody's text: types, codes and where it was thrown. Its message is left out, since it may quote what a user wrote
/// or an address.
/// </summary>
internal static class ExceptionText
{
    private const int Deepest = 8;

    public static string Of(Exception exception, SecretRedactor redactor)
    {
        var text = new StringBuilder();
        Append(text, exception, "", 0);
        return redactor.Redact(text.ToString());
    }

    private static void Append(StringBuilder text, Exception exception, string before, int depth)
    {
        text.Append(before).Append(exception.GetType().FullName);
        text.Append(CultureInfo.InvariantCulture, $" (0x{exception.HResult:X8}{(exception is SocketException socket ? ", " + socket.SocketErrorCode : "")})");
        if (exception.StackTrace is { } trace)
        {
            text.AppendLine().Append(trace);
        }

        IEnumerable<Exception> inner = exception is AggregateException many ? many.InnerExceptions : exception.InnerException is { } one ? [one] : [];
        foreach (Exception cause in depth < Deepest ? inner : [])
        {
            text.AppendLine();
            Append(text, cause, " ---> ", depth + 1);
        }
    }
}

/// <summary>Stands for an exception where a logger prints one.</summary>
internal sealed class RedactedException(string type, string text) : Exception(type)
{
    /// <inheritdoc/>
    public override string? StackTrace => text;

    /// <inheritdoc/>
    public override string ToString() => text;
}
