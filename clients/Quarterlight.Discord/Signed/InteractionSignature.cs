using System.Buffers;
using System.Globalization;
using System.Text;
using NSec.Cryptography;

namespace Quarterlight.Discord.Signed;

/// <summary>
/// Checks that a request comes from the platform: Ed25519 (RFC 8032) over the bytes of the time header followed by the raw body, with the application's
/// public key (Interactions Overview, Validating Security Request Headers). Safe for many at once.
/// </summary>
public sealed class InteractionSignature
{
    /// <summary>Farthest the time of a request may be from our clock, either way. The platform names none: our own choice against replayed requests.</summary>
    public static readonly TimeSpan MostApart = TimeSpan.FromMinutes(5);

    private const int PublicKeyBytes = 32;
    private const int SignatureBytes = 64;
    private const int MostTimeCharacters = 20;

    private readonly PublicKey key;
    private readonly TimeProvider time;

    /// <summary>Checks against one application's key.</summary>
    /// <param name="publicKeyHex">The key, 64 hexadecimal characters as the platform shows it.</param>
    /// <param name="time">The clock.</param>
    /// <exception cref="ArgumentException">The key is no such key.</exception>
    public InteractionSignature(string publicKeyHex, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(publicKeyHex);
        ArgumentNullException.ThrowIfNull(time);
        Span<byte> bytes = stackalloc byte[PublicKeyBytes];
        if (!TryHex(publicKeyHex, bytes) || !PublicKey.TryImport(SignatureAlgorithm.Ed25519, bytes, KeyBlobFormat.RawPublicKey, out PublicKey? read))
        {
            throw new ArgumentException("The application's public key is 64 hexadecimal characters.", nameof(publicKeyHex));
        }

        key = read!;
        this.time = time;
    }

    /// <summary>Checks one request.</summary>
    /// <param name="signatureHex">The signature header; null when it is missing.</param>
    /// <param name="timestamp">The time header, seconds since 1970; null when it is missing.</param>
    /// <param name="body">The body as it came.</param>
    public SignatureVerdict Check(string? signatureHex, string? timestamp, ReadOnlySpan<byte> body)
    {
        if (signatureHex is null || timestamp is null)
        {
            return SignatureVerdict.Missing;
        }

        Span<byte> signature = stackalloc byte[SignatureBytes];
        if (!TryHex(signatureHex, signature))
        {
            return SignatureVerdict.Malformed;
        }

        if (timestamp.Length > MostTimeCharacters || !long.TryParse(timestamp, NumberStyles.None, CultureInfo.InvariantCulture, out long seconds))
        {
            return SignatureVerdict.NoTime;
        }

        double apart = Math.Abs((double)seconds - time.GetUtcNow().ToUnixTimeMilliseconds() / 1000.0);
        if (apart > MostApart.TotalSeconds)
        {
            return SignatureVerdict.OutOfTime;
        }

        byte[] signed = ArrayPool<byte>.Shared.Rent(timestamp.Length + body.Length);
        try
        {
            int length = Encoding.ASCII.GetBytes(timestamp, signed);
            body.CopyTo(signed.AsSpan(length));
            return SignatureAlgorithm.Ed25519.Verify(key, signed.AsSpan(0, length + body.Length), signature) ? SignatureVerdict.Right : SignatureVerdict.Wrong;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(signed, clearArray: true);
        }
    }

    private static bool TryHex(string text, Span<byte> bytes) => text.Length == bytes.Length * 2
        && Convert.FromHexString(text, bytes, out _, out int written) == OperationStatus.Done && written == bytes.Length;
}
