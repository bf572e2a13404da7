using System.Text.Json;
using Quarterlight.Chat.Emulator.Checks;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>A message as people see it, at the moment it was looked at: it does not change any more.</summary>
public sealed record VisibleMessage
{
    /// <summary>Its id.</summary>
    public required ulong Id { get; init; }

    /// <summary>True when the bot wrote it.</summary>
    public required bool ByBot { get; init; }

    /// <summary>Its text.</summary>
    public required string Content { get; init; }

    /// <summary>True when only the asker sees it (ephemeral).</summary>
    public required bool IsPrivate { get; init; }

    /// <summary>True while it shows nothing but "thinking".</summary>
    public required bool IsLoading { get; init; }

    /// <summary>True once it was taken away.</summary>
    public required bool IsDeleted { get; init; }

    /// <summary>Times it was changed after it was first readable.</summary>
    public required int Edits { get; init; }

    /// <summary>Its embeds, as sent.</summary>
    public required IReadOnlyList<JsonElement> Embeds { get; init; }

    /// <summary>Its rows of components, as sent.</summary>
    public required IReadOnlyList<JsonElement> Components { get; init; }

    /// <summary>Its buttons, row by row.</summary>
    public required IReadOnlyList<VisibleButton> Buttons { get; init; }

    /// <summary>Its files.</summary>
    public required IReadOnlyList<VisibleFile> Files { get; init; }

    /// <summary>Mentions that pinged somebody, as written; empty is how it should be.</summary>
    public required IReadOnlyList<string> Pings { get; init; }

    /// <summary>The message as the platform writes it.</summary>
    public required string Json { get; init; }

    /// <summary>Content and the text of all embeds, line by line.</summary>
    public string AllText => string.Join('\n', ((string[])[Content]).Concat(Embeds.SelectMany(TextsOf)).Where(t => t.Length > 0));

    private static IEnumerable<string> TextsOf(JsonElement embed) =>
        ((string[])[embed.Text("title") ?? "", embed.Text("description") ?? ""])
            .Concat(embed.List("fields").Select(f => $"{f.Text("name")}: {f.Text("value")}"))
            .Append(embed.Field("footer")?.Text("text") ?? "");
}

/// <summary>A button.</summary>
/// <param name="Label">What it says.</param>
/// <param name="CustomId">Its id; null for a link.</param>
/// <param name="Style">Its style, 1 to 6.</param>
/// <param name="Disabled">True when it cannot be pressed.</param>
/// <param name="Url">Where a link leads; null for other buttons.</param>
public sealed record VisibleButton(string Label, string? CustomId, int Style, bool Disabled, string? Url)
{
    internal static VisibleButton Of(JsonElement button) =>
        new(button.Text("label") ?? "", button.Text("custom_id"), (int)(button.Whole("style") ?? 0), button.Flag("disabled"), button.Text("url"));
}

/// <summary>A file of a message.</summary>
/// <param name="Name">Its name.</param>
/// <param name="ContentType">Its media type.</param>
/// <param name="Bytes">Its contents.</param>
/// <param name="AltText">Its text alternative; null for none.</param>
/// <param name="Url">A signed link to it.</param>
public sealed record VisibleFile(string Name, string ContentType, ReadOnlyMemory<byte> Bytes, string? AltText, string Url);
