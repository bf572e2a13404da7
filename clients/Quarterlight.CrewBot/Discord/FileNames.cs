namespace Quarterlight.CrewBot.Discord;

/// <summary>File names as the platform's upload takes them everywhere.</summary>
internal static class FileNames
{
    private const int Longest = 80;

    /// <summary>The name in ASCII letters, digits, dashes and dots; the other one when nothing is left of it.</summary>
    public static string Safe(string name, string otherwise)
    {
        string safe = string.Concat(name.Where(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '.')).Trim('.', '-');
        return safe.Length is > 0 and <= Longest ? safe : otherwise;
    }
}
