namespace Quarterlight.Clips.Judgement;

/// <summary>The decision in one line, short enough for a phone.</summary>
internal static class Headline
{
    /// <summary>Longest line aimed at, characters.</summary>
    public const int Longest = 110;

    /// <summary>Decision, what was found, the way out; what does not fit is left out from the end.</summary>
    /// <param name="finding">The worst of all.</param>
    /// <param name="channel">The channel in words, when there are several; null otherwise.</param>
    public static string Of(Finding finding, string? channel)
    {
        string decision = finding.Reason.Outcome switch
        {
            ClipOutcome.Redo => "Redo",
            ClipOutcome.UseWithCare => "Use with care",
            _ => "Use",
        };
        if (finding.Short.Length == 0)
        {
            return decision + ".";
        }

        // The pair of channels is named already in what was found.
        string where = channel is null || finding.Short.StartsWith("channel", StringComparison.Ordinal) ? "" : channel + ": ";
        string found = $"{decision}: {where}{finding.Short}.";
        string all = finding.Mend.Length == 0 ? found : $"{found} {finding.Mend}.";
        return all.Length <= Longest ? all : found.Length <= Longest ? found : found[..(Longest - 3)].TrimEnd() + "...";
    }
}
