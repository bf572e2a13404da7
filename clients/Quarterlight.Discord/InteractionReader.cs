using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json;

namespace Quarterlight.Discord;

/// <summary>
/// Reads an interaction from its JSON (Receiving and Responding, Interaction Object). Fields it does not know are passed over; what an answer
/// needs must be there. Never throws for what it reads.
/// </summary>
public static class InteractionReader
{
    // Longer than any language tag the platform lists.
    private const int MostLocaleCharacters = 16;

    /// <summary>Reads one interaction.</summary>
    /// <param name="utf8">The interaction object alone, without what a gateway frame puts around it.</param>
    /// <param name="receivedTimestamp">When it came in, of the <see cref="TimeProvider"/> in use.</param>
    /// <param name="interaction">What was read; null when it could not be.</param>
    /// <param name="flaw">Why it could not be read.</param>
    /// <returns>True when it could be read.</returns>
    public static bool TryRead(ReadOnlyMemory<byte> utf8, long receivedTimestamp, [NotNullWhen(true)] out Interaction? interaction, out InteractionFlaw flaw)
    {
        interaction = null;
        try
        {
            using JsonDocument document = JsonDocument.Parse(utf8);
            interaction = Read(document.RootElement, receivedTimestamp);
            flaw = InteractionFlaw.None;
            return true;
        }
        catch (FlawException flawed)
        {
            flaw = flawed.Flaw;
        }
        catch (Exception notJson) when (notJson is JsonException or InvalidOperationException)
        {
            // The second: an escaped half of a surrogate pair is valid JSON and no text.
            flaw = InteractionFlaw.NotJson;
        }

        return false;
    }

    private static Interaction Read(JsonElement root, long receivedTimestamp)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryId("id", out ulong id) || !root.TryId("application_id", out ulong application)
            || root.Text("token") is not { Length: > 0 } token)
        {
            throw new FlawException(InteractionFlaw.NoTicket);
        }

        InteractionKind kind = root.Number("type") is { } number && number is >= 1 and <= 5 ? (InteractionKind)number : throw new FlawException(InteractionFlaw.UnknownKind);
        JsonElement? member = root.Object("member");
        JsonElement? user = member?.Object("user") ?? root.Object("user");
        ulong userId = 0;
        if (kind != InteractionKind.Ping && (user is not { } who || !who.TryId("id", out userId)))
        {
            throw new FlawException(InteractionFlaw.NoUser);
        }

        JsonElement data = kind == InteractionKind.Ping ? default : root.Object("data") ?? throw new FlawException(InteractionFlaw.NoData);
        return new Interaction
        {
            Ticket = new InteractionTicket(application, id, token) { ReceivedTimestamp = receivedTimestamp },
            Kind = kind,
            GuildId = root.TryId("guild_id", out ulong guild) ? guild : null,
            ChannelId = root.TryId("channel_id", out ulong channel) || (root.Object("channel")?.TryId("id", out channel) ?? false) ? channel : null,
            UserId = userId,
            MemberPermissions = member is { } bits && bits.TryId("permissions", out ulong permissions) ? permissions : 0,
            AppPermissions = root.TryId("app_permissions", out ulong ours) ? ours : null,
            Locale = root.Text("locale") is { Length: > 0 and <= MostLocaleCharacters } locale ? locale : null,
            AttachmentSizeLimitBytes = root.Number("attachment_size_limit") is { } most && most > 0 ? most : DiscordLimits.DefaultAttachmentBytes,
            Command = kind is InteractionKind.Command or InteractionKind.Autocomplete ? CommandDataReader.Read(data) : null,
            Component = kind == InteractionKind.Component ? ReadComponent(root, data) : null,
            Form = kind == InteractionKind.FormSubmit ? FormDataReader.Read(data) : null,
            ReceivedTimestamp = receivedTimestamp,
        };
    }

    private static ComponentData ReadComponent(JsonElement root, JsonElement data) =>
        data.Text("custom_id") is { } customId && (root.Object("message")?.TryId("id", out ulong message) ?? Missing(out message))
            ? new ComponentData(customId, data.Texts("values"), message)
            : throw new FlawException(InteractionFlaw.BadComponent);

    private static bool Missing(out ulong id)
    {
        id = 0;
        return false;
    }

    /// <summary>The files an interaction refers to, by id.</summary>
    internal static IReadOnlyDictionary<ulong, DiscordAttachment> ReadAttachments(JsonElement data)
    {
        var files = new Dictionary<ulong, DiscordAttachment>();
        if (data.Object("resolved")?.Object("attachments") is { } resolved)
        {
            foreach (JsonProperty file in resolved.EnumerateObject())
            {
                DiscordAttachment attachment = ReadAttachment(file.Value);
                files[attachment.Id] = attachment;
            }
        }

        return files;
    }

    /// <summary>One file.</summary>
    internal static DiscordAttachment ReadAttachment(JsonElement file) =>
        file.ValueKind == JsonValueKind.Object && file.TryId("id", out ulong id) && file.Text("filename") is { } name && file.Number("size") is { } size && size >= 0
        && file.Text("url") is { } url
            ? new DiscordAttachment(id, name, size, url)
            : throw new FlawException(InteractionFlaw.BadAttachment);

    /// <summary>A value as text: numbers in invariant form, true or false.</summary>
    internal static string? ValueText(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Number => value.TryGetInt64(out long whole) ? whole.ToString(CultureInfo.InvariantCulture) : value.GetDouble().ToString("R", CultureInfo.InvariantCulture),
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => null,
    };
}
