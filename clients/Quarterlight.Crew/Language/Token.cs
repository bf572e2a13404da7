namespace Quarterlight.Crew.Language;

/// <summary>One word or number of a question.</summary>
/// <param name="Word">Lower-case word, spelling corrected; digits for a number.</param>
/// <param name="Number">Value when it is a number, else null.</param>
/// <param name="Possessive">True when it was written with 's.</param>
public sealed record Token(string Word, double? Number = null, bool Possessive = false)
{
    /// <summary>True for the word.</summary>
    public bool Is(string word) => Number is null && Word == word;

    /// <summary>True for any of the words.</summary>
    public bool IsAny(IReadOnlySet<string> words) => Number is null && words.Contains(Word);
}
