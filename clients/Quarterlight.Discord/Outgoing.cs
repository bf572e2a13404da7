namespace Quarterlight.Discord;

/// <summary>A message to show. Mentions in it never ping anybody: whoever sends it turns them off.</summary>
public sealed record OutgoingMessage
{
    /// <summary>Text, in the platform's markdown; at most <see cref="DiscordLimits.ContentCharacters"/>. Text of users must be escaped before.</summary>
    public string Content { get; init; } = "";

    /// <summary>Files, pictures among them; a picture is shown below the text.</summary>
    public IReadOnlyList<OutgoingFile> Files { get; init; } = [];

    /// <summary>Buttons, shown in rows of <see cref="DiscordLimits.ButtonsInRow"/>.</summary>
    public IReadOnlyList<OutgoingButton> Buttons { get; init; } = [];

    /// <summary>True when only the asker may see it. On an edit it stays as it was decided at the first answer.</summary>
    public bool Private { get; init; }

    /// <summary>True shows previews of links in the text. Off unless asked for: text of users may hold links, and a preview pushes the answer off a phone's screen.</summary>
    public bool LinkPreviews { get; init; }
}

/// <summary>A file to show or attach.</summary>
/// <param name="Name">File name: ASCII letters, digits, dashes, dots.</param>
/// <param name="MediaType">Media type, such as image/png.</param>
/// <param name="Bytes">Contents; not empty.</param>
/// <param name="AltText">The same in words; at most <see cref="DiscordLimits.AltTextCharacters"/>; null for files that are no pictures.</param>
public sealed record OutgoingFile(string Name, string MediaType, ReadOnlyMemory<byte> Bytes, string? AltText);

/// <summary>How a button looks (Button Styles).</summary>
public enum ButtonLook
{
    /// <summary>The one to press.</summary>
    Primary = 1,

    /// <summary>Any other.</summary>
    Secondary = 2,

    /// <summary>Does what cannot be taken back.</summary>
    Danger = 4,
}

/// <summary>A button.</summary>
/// <param name="Label">What it says; at most <see cref="DiscordLimits.ButtonLabelCharacters"/>.</param>
/// <param name="CustomId">Comes back when pressed; unique in the message; at most <see cref="DiscordLimits.CustomIdCharacters"/>.</param>
/// <param name="Look">How it looks.</param>
public sealed record OutgoingButton(string Label, string CustomId, ButtonLook Look = ButtonLook.Secondary);

/// <summary>A choice offered while an option is typed.</summary>
/// <param name="Name">What is shown.</param>
/// <param name="Value">What is sent.</param>
public sealed record OutgoingChoice(string Name, string Value);

/// <summary>A form to fill in.</summary>
/// <param name="CustomId">Comes back with it; at most <see cref="DiscordLimits.CustomIdCharacters"/>.</param>
/// <param name="Title">At most <see cref="DiscordLimits.FormTitleCharacters"/>.</param>
/// <param name="Fields">One to <see cref="DiscordLimits.FormFields"/>.</param>
public sealed record OutgoingForm(string CustomId, string Title, IReadOnlyList<OutgoingField> Fields);

/// <summary>A text field of a form.</summary>
/// <param name="Id">Comes back with what was written; at most <see cref="DiscordLimits.CustomIdCharacters"/>.</param>
/// <param name="Label">At most <see cref="DiscordLimits.FieldLabelCharacters"/>.</param>
public sealed record OutgoingField(string Id, string Label)
{
    /// <summary>Hint under the label; at most <see cref="DiscordLimits.FieldDescriptionCharacters"/>; null for none.</summary>
    public string? Description { get; init; }

    /// <summary>Example shown while empty; at most <see cref="DiscordLimits.FieldDescriptionCharacters"/>; null for none.</summary>
    public string? Placeholder { get; init; }

    /// <summary>What stands in it at first; null for nothing.</summary>
    public string? Value { get; init; }

    /// <summary>True when it must not be left empty.</summary>
    public bool Required { get; init; }

    /// <summary>True for several lines.</summary>
    public bool SeveralLines { get; init; }

    /// <summary>Longest text, characters.</summary>
    public int MostCharacters { get; init; } = DiscordLimits.FieldCharacters;
}
