using System.Text.RegularExpressions;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Conversations;

/// <summary>What a conversation may be, and how long it is kept.</summary>
public static partial class ConversationRules
{
    /// <summary>Length of an id.</summary>
    public static ValidRange IdLength { get; } = new(1, 128, "characters");

    /// <summary>Size of a state.</summary>
    public static ValidRange StateSize { get; } = new(1, 256 * 1024, "bytes");

    /// <summary>Most that are kept for a team.</summary>
    public const int MostKept = 2000;

    /// <summary>How many days one is kept after it was last saved.</summary>
    public const int DaysKept = 30;

    /// <summary>How long one is kept after it was last saved.</summary>
    public static TimeSpan TimeKept { get; } = TimeSpan.FromDays(DaysKept);

    /// <summary>True for letters of ASCII, digits, full stops, underscores, colons and dashes, starting with a letter or digit.</summary>
    public static bool IsId(string value) => value is not null && IdLength.Contains(value.Length) && IdPattern().IsMatch(value);

    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9._:-]*\z")]
    private static partial Regex IdPattern();
}
