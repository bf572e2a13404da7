namespace Quarterlight.Acoustics;

/// <summary>Vocal efforts by how loud they are; the values of the enumeration are not in that order.</summary>
public static class VocalEfforts
{
    private static readonly VocalEffort[] s_quietestFirst =
        [VocalEffort.Whisper, VocalEffort.Relaxed, VocalEffort.Normal, VocalEffort.Raised, VocalEffort.Loud, VocalEffort.Shout];

    /// <summary>Every effort, whisper to shout.</summary>
    public static IReadOnlyList<VocalEffort> QuietestFirst => s_quietestFirst;

    /// <summary>The next louder effort; a shout stays a shout.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The effort is none of the six.</exception>
    public static VocalEffort Louder(VocalEffort effort) => s_quietestFirst[Math.Min(Rank(effort) + 1, s_quietestFirst.Length - 1)];

    /// <summary>Place in <see cref="QuietestFirst"/>, 0 to 5.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The effort is none of the six.</exception>
    public static int Rank(VocalEffort effort)
    {
        int rank = Array.IndexOf(s_quietestFirst, effort);
        return rank >= 0 ? rank : throw new ArgumentOutOfRangeException(nameof(effort), effort, "One of the six efforts.");
    }
}
