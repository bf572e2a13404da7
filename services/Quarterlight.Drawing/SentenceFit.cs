namespace Quarterlight.Drawing;

/// <summary>Keeps a text alternative within its limit in whole sentences.</summary>
internal static class SentenceFit
{
    /// <summary>Joins sentences in their order and leaves out the least important ones until the rest fit.</summary>
    /// <param name="sentences">Sentences with their weight; the heaviest stay longest, and of equal ones the earlier.</param>
    /// <param name="maxLength">Most characters.</param>
    public static string Join(IReadOnlyList<(int Weight, string Words)> sentences, int maxLength = PlanText.MaxLength)
    {
        List<(int Weight, string Words)> kept = [.. sentences.Where(s => s.Words.Length > 0)];
        string text = Joined(kept);
        while (kept.Count > 1 && text.Length > maxLength)
        {
            int least = kept.Min(s => s.Weight);
            kept.RemoveAt(kept.FindLastIndex(s => s.Weight == least));
            text = Joined(kept);
        }

        return text.Length <= maxLength ? text : Cut(text, maxLength);
    }

    /// <summary>A sentence cut after a word so that it is no longer than so many characters, ellipsis included.</summary>
    public static string Cut(string sentence, int maxLength)
    {
        if (sentence.Length <= maxLength)
        {
            return sentence;
        }

        int space = sentence.LastIndexOf(' ', maxLength - 1);
        int end = space > 0 ? space : maxLength - 1;
        return sentence[..(char.IsHighSurrogate(sentence[end - 1]) ? end - 1 : end)] + "…";
    }

    /// <summary>Words as a sentence: with a full stop unless they end in one.</summary>
    public static string Stopped(string words)
    {
        string trimmed = words.Trim();
        return trimmed.Length == 0 || ".!?…".Contains(trimmed[^1], StringComparison.Ordinal) ? trimmed : trimmed + ".";
    }

    private static string Joined(IEnumerable<(int Weight, string Words)> sentences) => string.Join(' ', sentences.Select(s => s.Words));
}
