using System.Text.RegularExpressions;

namespace Quarterlight.Telemetry;

/// <summary>
/// Takes out of a text what opens doors: tokens in paths of the chat platform, bot tokens, signatures of attachments, and every secret it was told.
/// Safe from any thread.
/// </summary>
public sealed partial class SecretRedactor
{
    /// <summary>What stands where a secret stood.</summary>
    public const string Mark = "***";

    /// <summary>Shortest secret that is taken: a shorter one would blot out ordinary words. In characters.</summary>
    public const int ShortestSecret = 6;

    private readonly Lock _gate = new();
    private volatile string[] _secrets = [];

    /// <summary>Takes out a text, wherever it stands, from now on; in the form it has inside an address too.</summary>
    /// <param name="secret">At least <see cref="ShortestSecret"/> characters.</param>
    /// <exception cref="ArgumentException">It is shorter.</exception>
    public void Register(string secret)
    {
        ArgumentNullException.ThrowIfNull(secret);
        if (secret.Length < ShortestSecret)
        {
            throw new ArgumentException($"A secret has at least {ShortestSecret} characters.", nameof(secret));
        }

        lock (_gate)
        {
            // The longest first: one secret may be the beginning of another.
            _secrets = [.. _secrets.Append(secret).Append(Uri.EscapeDataString(secret)).Distinct().OrderByDescending(s => s.Length)];
        }
    }

    /// <summary>The text without secrets.</summary>
    public string Redact(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string left = text;
        foreach (string secret in _secrets)
        {
            left = left.Replace(secret, Mark, StringComparison.Ordinal);
        }

        // Most lines have none of these signs.
        if (left.AsSpan().ContainsAny('/', '%'))
        {
            left = PathToken().Replace(left, $"$1{Mark}");
        }

        if (left.AsSpan().ContainsAny('=', '%'))
        {
            left = SignedQuery().Replace(left, $"$1{Mark}");
            left = SignedParameter().Replace(left, $"$1{Mark}");
        }

        left = AuthorizationValue().Replace(left, $"$1{Mark}");
        left = BotToken().Replace(left, $"$1{Mark}");
        return BareToken().Replace(left, Mark);
    }

    // /interactions/<id>/<token> and /webhooks/<application>/<token>, also inside another address.
    [GeneratedRegex("""((?:/|%2F)(?:interactions|webhooks)(?:/|%2F)[^/%\s?#"'<>]+(?:/|%2F))[^/%\s?#"'<>]+""", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PathToken();

    // The whole query when any of the three parts of a signature stands in it.
    [GeneratedRegex("""(\?)(?:[^\s#"'<>]*&)?(?:ex|is|hm)=[^\s#"'<>]*""", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SignedQuery();

    // Part by part where the question mark is missing or escaped.
    [GeneratedRegex("""((?:^|&|%3F|%26)(?:ex|is|hm)(?:=|%3D))[^&%\s#"'<>]+""", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SignedParameter();

    [GeneratedRegex("""(authorization["']?\s*[:=,]\s*\[?["']?)(?:(?:bot|bearer|basic)\s+)?[^\s"',\]]+""", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AuthorizationValue();

    // Long enough to be a token and no word.
    [GeneratedRegex("""\b((?:Bot|Bearer)(?:\s|%20|\+)+)[A-Za-z0-9_\-.]{20,}""", RegexOptions.CultureInvariant)]
    private static partial Regex BotToken();

    // The shape of a bot's token wherever it stands: three parts between full stops. From memory.
    [GeneratedRegex("""(?<![A-Za-z0-9_\-.])[A-Za-z0-9_\-]{23,30}\.[A-Za-z0-9_\-]{6,7}\.[A-Za-z0-9_\-]{27,}""", RegexOptions.CultureInvariant)]
    private static partial Regex BareToken();
}
