using System.Diagnostics.CodeAnalysis;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// What only the environment may say: secrets never stand on the command line, where every user of the machine can read them. Each may be given itself or as the
/// name of a file that holds it.
/// </summary>
internal sealed record ServeSecrets
{
    public const string TokenVariable = "DISCORD_TOKEN";
    public const string PublicKeyVariable = "DISCORD_PUBLIC_KEY";
    public const string DelegateKeyVariable = "QUARTERLIGHT_DELEGATE_KEY";

    /// <summary>For tests only: another base of the platform's API.</summary>
    public const string ApiVariable = "DISCORD_API_URL";

    /// <summary>For tests only: a file host on this machine beside the platform's own.</summary>
    public const string FileHostVariable = "DISCORD_FILE_HOSTS";

    private const string FileSuffix = "_FILE";

    /// <summary>The bot's token.</summary>
    public required string Token { get; init; }

    /// <summary>Key that the planner knows the bot by; null when it asks for none.</summary>
    public string? DelegateKey { get; init; }

    /// <summary>The application's public key, hex; null when it is not needed.</summary>
    public string? PublicKey { get; init; }

    public Uri? Api { get; init; }

    public Uri? FileHost { get; init; }

    /// <summary>Variables that name a file others can read.</summary>
    public IReadOnlyList<string> ReadableByOthers { get; init; } = [];

    /// <summary>Reads the environment.</summary>
    /// <param name="way">How interactions come in.</param>
    /// <param name="environment">Reads a variable.</param>
    /// <param name="secrets">What was read.</param>
    /// <param name="problem">What to set or mend, in one line, without a secret in it.</param>
    public static bool TryRead(DiscordWay way, Func<string, string?> environment, [NotNullWhen(true)] out ServeSecrets? secrets, out string problem)
    {
        secrets = null;
        var readable = new List<string>();
        if (!TryReadOne(TokenVariable, environment, readable, out string? token, out problem) || !TryReadOne(DelegateKeyVariable, environment, readable, out string? key, out problem))
        {
            return false;
        }

        if (token is null)
        {
            problem = $"Set {TokenVariable}{FileSuffix} to a file with the bot's token, or {TokenVariable} to the token itself. The token is on the Bot page of your application on the platform.";
            return false;
        }

        string? publicKey = Text(environment(PublicKeyVariable));
        if (way == DiscordWay.Signed && !(publicKey?.Length == 64 && publicKey.All(char.IsAsciiHexDigit)))
        {
            problem = $"Set {PublicKeyVariable} to the application's public key: 64 hexadecimal digits, on the General Information page of your application on the platform.";
            return false;
        }

        if (!TryReadAddress(ApiVariable, environment, out Uri? api, out problem) || !TryReadAddress(FileHostVariable, environment, out Uri? fileHost, out problem))
        {
            return false;
        }

        if (fileHost is { IsLoopback: false })
        {
            problem = $"{FileHostVariable} is for tests and takes an address of this machine only; leave it out.";
            return false;
        }

        secrets = new ServeSecrets { Token = token, DelegateKey = key, PublicKey = publicKey, Api = api, FileHost = fileHost, ReadableByOthers = readable };
        return true;
    }

    private static bool TryReadOne(string variable, Func<string, string?> environment, List<string> readable, out string? secret, out string problem)
    {
        problem = "";
        secret = Text(environment(variable));
        if (secret is not null || Text(environment(variable + FileSuffix)) is not { } path)
        {
            return true;
        }

        try
        {
            secret = Text(File.ReadAllText(path));
            if (!OperatingSystem.IsWindows() && (File.GetUnixFileMode(path) & (UnixFileMode.GroupRead | UnixFileMode.OtherRead)) != 0)
            {
                readable.Add(variable + FileSuffix);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
        }

        problem = secret is null ? $"The file that {variable}{FileSuffix} names cannot be read or is empty: check its path and permissions." : "";
        return secret is not null;
    }

    private static bool TryReadAddress(string variable, Func<string, string?> environment, out Uri? address, out string problem)
    {
        (address, problem) = (null, "");
        if (Text(environment(variable)) is { } text && !(Uri.TryCreate(text, UriKind.Absolute, out address) && address.Scheme is "http" or "https"))
        {
            problem = $"{variable} is for tests and takes an http address; leave it out.";
            return false;
        }

        return true;
    }

    private static string? Text(string? text) => text?.Trim() is { Length: > 0 } trimmed ? trimmed : null;

    /// <summary>Without the secrets.</summary>
    public override string ToString() => "secrets";
}
