using System.Globalization;
using System.Text.Json;

namespace Quarterlight.Discord.Rest;

/// <summary>Writes commands as the platform registers them (Application Commands).</summary>
internal static class CommandJson
{
    /// <summary>A list of commands. Where a command may be used is said for all servers only: the platform takes it there alone (Application Command Structure, contexts).</summary>
    public static void Write(Utf8JsonWriter json, IReadOnlyList<CommandDefinition> commands, bool allServers)
    {
        json.WriteStartArray();
        foreach (CommandDefinition command in commands)
        {
            json.WriteStartObject();
            json.WriteNumber("type"u8, (int)command.Kind);
            json.WriteString("name"u8, command.Name);
            if (command.Kind == CommandKind.Slash)
            {
                json.WriteString("description"u8, command.Description);
                Options(json, command.Options);
            }

            if (command.DefaultMemberPermissions is { } bits)
            {
                json.WriteString("default_member_permissions"u8, bits.ToString(CultureInfo.InvariantCulture));
            }

            if (allServers)
            {
                // 0 in both: used in servers, installed by servers.
                Zero(json, "contexts");
                Zero(json, "integration_types");
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Options(Utf8JsonWriter json, IReadOnlyList<CommandOptionDefinition> options)
    {
        if (options.Count == 0)
        {
            return;
        }

        json.WriteStartArray("options"u8);
        foreach (CommandOptionDefinition option in options)
        {
            json.WriteStartObject();
            json.WriteNumber("type"u8, (int)option.Kind);
            json.WriteString("name"u8, option.Name);
            json.WriteString("description"u8, option.Description);
            if (option.Required)
            {
                json.WriteBoolean("required"u8, true);
            }

            Choices(json, option);
            if (option.Autocomplete)
            {
                json.WriteBoolean("autocomplete"u8, true);
            }

            if (option.Least is { } least)
            {
                json.WriteNumber("min_value"u8, least);
            }

            if (option.Most is { } most)
            {
                json.WriteNumber("max_value"u8, most);
            }

            if (option.MostCharacters is { } characters)
            {
                json.WriteNumber("max_length"u8, characters);
            }

            Options(json, option.Options);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Choices(Utf8JsonWriter json, CommandOptionDefinition option)
    {
        if (option.Choices.Count == 0)
        {
            return;
        }

        json.WriteStartArray("choices"u8);
        foreach (OutgoingChoice choice in option.Choices)
        {
            json.WriteStartObject();
            json.WriteString("name"u8, choice.Name);
            if (option.Kind is CommandOptionKind.WholeNumber or CommandOptionKind.Number)
            {
                json.WriteNumber("value"u8, double.Parse(choice.Value, NumberStyles.Float, CultureInfo.InvariantCulture));
            }
            else
            {
                json.WriteString("value"u8, choice.Value);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void Zero(Utf8JsonWriter json, string name)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(0);
        json.WriteEndArray();
    }
}
