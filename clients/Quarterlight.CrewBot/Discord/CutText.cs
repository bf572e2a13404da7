namespace Quarterlight.CrewBot.Discord;

/// <summary>Cuts text to a length without breaking words or characters.</summary>
internal static class CutText
{
    private const string More = "…";

    /// <summary>The text, or as many whole words as fit with "…" behind.</summary>
    public static string AtWord(string text, int most)
    {
        if (text.Length <= most)
        {
            return text;
        }

        int space = text.LastIndexOf(' ', most - More.Length);
        return text[..(space >= most / 2 ? space : WholeCharacters(text, most - More.Length))].TrimEnd() + More;
    }

    /// <summary>The text, or as many whole sentences as fit; if not even one fits, whole words.</summary>
    public static string AtSentence(string text, int most)
    {
        if (text.Length <= most)
        {
            return text;
        }

        int end = text.LastIndexOf(". ", most - 1, StringComparison.Ordinal);
        return end > 0 ? text[..(end + 1)] : AtWord(text, most);
    }

    /// <summary>The greatest length up to the one given that does not split a surrogate pair.</summary>
    public static int WholeCharacters(string text, int length) => length > 0 && length < text.Length && char.IsHighSurrogate(text[length - 1]) ? length - 1 : length;
}
