using System.Security.Cryptography;
using System.Text;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// Stands for a user in the audit: the same user gives the same letters for as long as the secret stays, and nobody without the secret can find the user from
/// them, not even by trying all ids.
/// </summary>
internal sealed class UserHash(string secret)
{
    private const int ShownBytes = 6;

    // HKDF keeps the key of the audit apart from the secret's other use: either says nothing about the other.
    private readonly byte[] key = HKDF.DeriveKey(HashAlgorithmName.SHA256, Encoding.UTF8.GetBytes(secret), 32, info: "quarterlight audit user"u8.ToArray());

    /// <summary>Twelve hexadecimal digits.</summary>
    public string Of(ulong userId) => Convert.ToHexStringLower(HMACSHA256.HashData(key, BitConverter.GetBytes(userId))[..ShownBytes]);
}
