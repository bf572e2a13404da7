using System.Diagnostics.CodeAnalysis;
using System.Security.Cryptography;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// What a button carries: which answer it goes on from, and the question it asks. Written <c>q1:SNAPSHOT:question</c>, or <c>q1p:</c> when the command it comes
/// from answers its asker alone; the 1 is the version. It comes back from outside and is read as carefully as anything typed.
/// </summary>
/// <param name="Snapshot">Names the memory kept with the answer: <see cref="SnapshotCharacters"/> small letters and digits.</param>
/// <param name="Question">The question, in full.</param>
/// <param name="Private">True when the answer is for the asker alone.</param>
internal sealed record ButtonId(string Snapshot, string Question, bool Private)
{
    /// <summary>Length of <see cref="Snapshot"/>: 40 bits, enough for one team's answers.</summary>
    public const int SnapshotCharacters = 8;

    private const string Digits = "abcdefghijklmnopqrstuvwxyz234567";

    /// <summary>Names the snapshot of the answer to an interaction; the same in every replica.</summary>
    public static string SnapshotOf(ulong interactionId)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(BitConverter.GetBytes(interactionId), hash);
        Span<char> name = stackalloc char[SnapshotCharacters];
        for (int i = 0; i < name.Length; i++)
        {
            name[i] = Digits[hash[i] % Digits.Length];
        }

        return new string(name);
    }

    /// <summary>As it is written; null when the question is too long for a button.</summary>
    public string? Write()
    {
        string text = $"{(Private ? "q1p" : "q1")}:{Snapshot}:{Question}";
        return text.Length <= DiscordLimits.CustomIdCharacters ? text : null;
    }

    /// <summary>Reads one back.</summary>
    public static bool TryRead(string customId, [NotNullWhen(true)] out ButtonId? id)
    {
        string[] parts = customId.Split(':', 3);
        id = parts is ["q1" or "q1p", { Length: SnapshotCharacters } snapshot, { Length: > 0 } question] && snapshot.All(c => Digits.Contains(c, StringComparison.Ordinal))
            ? new ButtonId(snapshot, question, parts[0] == "q1p")
            : null;
        return id is not null;
    }
}
