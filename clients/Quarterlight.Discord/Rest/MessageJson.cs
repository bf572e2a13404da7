using System.Globalization;
using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>Writes first answers and messages (Receiving and Responding; Message resource; Component reference).</summary>
internal static class MessageJson
{
    private const int SuppressEmbeds = 1 << 2;
    private const int Ephemeral = 1 << 6;

    /// <summary>First answer with a message, type 4.</summary>
    public static void Reply(Utf8JsonWriter json, OutgoingMessage message)
    {
        BeginAnswer(json, 4);
        Create(json, message);
        json.WriteEndObject();
    }

    /// <summary>First answer "thinking", type 5. It may say whether the answer is private and nothing else.</summary>
    public static void Defer(Utf8JsonWriter json, bool isPrivate)
    {
        json.WriteStartObject();
        json.WriteNumber("type"u8, 5);
        if (isPrivate)
        {
            json.WriteStartObject("data"u8);
            json.WriteNumber("flags"u8, Ephemeral);
            json.WriteEndObject();
        }

        json.WriteEndObject();
    }

    /// <summary>First answer to typing, type 8.</summary>
    public static void Choices(Utf8JsonWriter json, IReadOnlyList<OutgoingChoice> choices)
    {
        BeginAnswer(json, 8);
        json.WriteStartObject();
        json.WriteStartArray("choices"u8);
        foreach (OutgoingChoice choice in choices)
        {
            json.WriteStartObject();
            json.WriteString("name"u8, choice.Name);
            json.WriteString("value"u8, choice.Value);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>First answer with a form, type 9: each field a label around a text input.</summary>
    public static void Form(Utf8JsonWriter json, OutgoingForm form)
    {
        BeginAnswer(json, 9);
        json.WriteStartObject();
        json.WriteString("custom_id"u8, form.CustomId);
        json.WriteString("title"u8, form.Title);
        json.WriteStartArray("components"u8);
        foreach (OutgoingField field in form.Fields)
        {
            Field(json, field);
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    /// <summary>A new message.</summary>
    public static void Create(Utf8JsonWriter json, OutgoingMessage message)
    {
        json.WriteStartObject();
        if (message.Content.Length > 0)
        {
            json.WriteString("content"u8, message.Content);
        }

        int flags = (message.Private ? Ephemeral : 0) | (message.LinkPreviews ? 0 : SuppressEmbeds);
        if (flags != 0)
        {
            json.WriteNumber("flags"u8, flags);
        }

        Mentions(json);
        if (message.Files.Count > 0)
        {
            Attachments(json, message.Files);
        }

        if (message.Buttons.Count > 0)
        {
            Buttons(json, message.Buttons);
        }

        json.WriteEndObject();
    }

    /// <summary>A change of a message: everything is written, because what is left out would stay. Whether it is private cannot be changed.</summary>
    public static void Edit(Utf8JsonWriter json, OutgoingMessage message)
    {
        json.WriteStartObject();
        json.WriteString("content"u8, message.Content);
        json.WriteNumber("flags"u8, message.LinkPreviews ? 0 : SuppressEmbeds);
        Mentions(json);
        Attachments(json, message.Files);
        Buttons(json, message.Buttons);
        json.WriteEndObject();
    }

    private static void BeginAnswer(Utf8JsonWriter json, int type)
    {
        json.WriteStartObject();
        json.WriteNumber("type"u8, type);
        json.WritePropertyName("data"u8);
    }

    // Without it the platform falls back on its own rule, which pings: on edits as well (Message resource, Edit Message).
    private static void Mentions(Utf8JsonWriter json)
    {
        json.WriteStartObject("allowed_mentions"u8);
        json.WriteStartArray("parse"u8);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    // The id is the n of files[n]. The list is all that the message keeps.
    private static void Attachments(Utf8JsonWriter json, IReadOnlyList<OutgoingFile> files)
    {
        json.WriteStartArray("attachments"u8);
        for (int i = 0; i < files.Count; i++)
        {
            json.WriteStartObject();
            json.WriteString("id"u8, i.ToString(CultureInfo.InvariantCulture));
            json.WriteString("filename"u8, MultipartPieces.SafeName(files[i].Name, i));
            if (files[i].AltText is { Length: > 0 } text)
            {
                json.WriteString("description"u8, text);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Buttons(Utf8JsonWriter json, IReadOnlyList<OutgoingButton> buttons)
    {
        json.WriteStartArray("components"u8);
        for (int i = 0; i < buttons.Count; i++)
        {
            if (i % DiscordLimits.ButtonsInRow == 0)
            {
                json.WriteStartObject();
                json.WriteNumber("type"u8, 1);
                json.WriteStartArray("components"u8);
            }

            json.WriteStartObject();
            json.WriteNumber("type"u8, 2);
            json.WriteNumber("style"u8, (int)buttons[i].Look);
            json.WriteString("label"u8, buttons[i].Label);
            json.WriteString("custom_id"u8, buttons[i].CustomId);
            json.WriteEndObject();
            if (i % DiscordLimits.ButtonsInRow == DiscordLimits.ButtonsInRow - 1 || i == buttons.Count - 1)
            {
                json.WriteEndArray();
                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }

    private static void Field(Utf8JsonWriter json, OutgoingField field)
    {
        json.WriteStartObject();
        json.WriteNumber("type"u8, 18);
        json.WriteString("label"u8, field.Label);
        Optional(json, "description", field.Description);
        json.WriteStartObject("component"u8);
        json.WriteNumber("type"u8, 4);
        json.WriteString("custom_id"u8, field.Id);
        json.WriteNumber("style"u8, field.SeveralLines ? 2 : 1);
        json.WriteBoolean("required"u8, field.Required);
        json.WriteNumber("max_length"u8, field.MostCharacters);
        Optional(json, "placeholder", field.Placeholder);
        Optional(json, "value", field.Value);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void Optional(Utf8JsonWriter json, string name, string? text)
    {
        if (!string.IsNullOrEmpty(text))
        {
            json.WriteString(name, text);
        }
    }
}
