namespace Quarterlight.Discord;

/// <summary>Limits of the platform's API, version 10 (Message, Application Commands, Components and Interactions references).</summary>
public static class DiscordLimits
{
    /// <summary>Longest text of a message, characters.</summary>
    public const int ContentCharacters = 2000;

    /// <summary>Longest description of an embed, characters.</summary>
    public const int EmbedDescriptionCharacters = 4096;

    /// <summary>Longest text alternative of a file, characters.</summary>
    public const int AltTextCharacters = 1024;

    /// <summary>Longest id of a component, characters.</summary>
    public const int CustomIdCharacters = 100;

    /// <summary>Longest label of a button the platform takes, characters.</summary>
    public const int ButtonLabelCharacters = 80;

    /// <summary>Most buttons of a row.</summary>
    public const int ButtonsInRow = 5;

    /// <summary>Most choices offered.</summary>
    public const int Choices = 25;

    /// <summary>Longest name or text value of a choice, characters.</summary>
    public const int ChoiceCharacters = 100;

    /// <summary>Longest title of a form, characters.</summary>
    public const int FormTitleCharacters = 45;

    /// <summary>Longest label of a form's field, characters.</summary>
    public const int FieldLabelCharacters = 45;

    /// <summary>Longest description or placeholder of a form's field, characters.</summary>
    public const int FieldDescriptionCharacters = 100;

    /// <summary>Most fields of a form.</summary>
    public const int FormFields = 5;

    /// <summary>Longest text of a form's field, characters.</summary>
    public const int FieldCharacters = 4000;

    /// <summary>Largest file when the interaction does not say, bytes.</summary>
    public const long DefaultAttachmentBytes = 10L * 1024 * 1024;

    /// <summary>The platform drops an interaction without a first answer after this.</summary>
    public static readonly TimeSpan FirstAnswer = TimeSpan.FromSeconds(3);

    /// <summary>The token of an interaction lives this long.</summary>
    public static readonly TimeSpan TokenLife = TimeSpan.FromMinutes(15);
}
