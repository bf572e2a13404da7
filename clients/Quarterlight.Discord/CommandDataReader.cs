using System.Text.Json;

namespace Quarterlight.Discord;

/// <summary>Reads what a command or a message menu brings (Application Command Data, Application Command Interaction Data Option).</summary>
internal static class CommandDataReader
{
    private const int Subcommand = 1;
    private const int SubcommandGroup = 2;
    private const int Attachment = 11;

    /// <summary>Reads a command as sent or as far as it is typed.</summary>
    /// <exception cref="FlawException">What an answer needs is missing.</exception>
    public static CommandData Read(JsonElement data)
    {
        if (data.Text("name") is not { Length: > 0 } name || data.Number("type") is not ((int)CommandKind.Slash or (int)CommandKind.Message))
        {
            throw new FlawException(InteractionFlaw.BadCommand);
        }

        IReadOnlyDictionary<ulong, DiscordAttachment> files = InteractionReader.ReadAttachments(data);
        string? subcommand = null;
        JsonElement level = data;
        while (level.Objects("options").FirstOrDefault() is { ValueKind: JsonValueKind.Object } inner && inner.Number("type") is Subcommand or SubcommandGroup)
        {
            string step = inner.Text("name") ?? throw new FlawException(InteractionFlaw.BadOption);
            subcommand = subcommand is null ? step : $"{subcommand} {step}";
            level = inner;
        }

        return new CommandData
        {
            Name = name,
            Kind = (CommandKind)data.Number("type")!,
            Subcommand = subcommand,
            Options = [.. level.Objects("options").Select(o => ReadOption(o, files))],
            Attachments = files,
            TargetAttachments = ReadTarget(data),
        };
    }

    private static CommandOptionValue ReadOption(JsonElement option, IReadOnlyDictionary<ulong, DiscordAttachment> files)
    {
        if (option.Text("name") is not { Length: > 0 } name || !option.TryGetProperty("value", out JsonElement value) || InteractionReader.ValueText(value) is not { } text)
        {
            throw new FlawException(InteractionFlaw.BadOption);
        }

        if (option.Number("type") == Attachment && !(value.ValueKind == JsonValueKind.String && WireJson.TryId(value, out ulong id) && files.ContainsKey(id)))
        {
            throw new FlawException(InteractionFlaw.BadAttachment);
        }

        return new CommandOptionValue(name, text, option.TryGetProperty("focused", out JsonElement focused) && focused.ValueKind == JsonValueKind.True);
    }

    private static IReadOnlyList<DiscordAttachment> ReadTarget(JsonElement data) =>
        data.Text("target_id") is { } target && data.Object("resolved")?.Object("messages")?.Object(target) is { } message
            ? [.. message.Objects("attachments").Select(InteractionReader.ReadAttachment)]
            : [];
}
