using System.Text.Json;
using System.Text.RegularExpressions;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>The rules of application commands (Application Commands: structure, option structure, naming, limits).</summary>
internal static partial class CommandChecks
{
    private const int Subcommand = 1;
    private const int SubcommandGroup = 2;
    private const int Text = 3;
    private const int Whole = 4;
    private const int Channel = 7;
    private const int Number = 10;
    private const int Attachment = 11;
    private const int MostOptions = 25;
    private const int MostChoices = 25;
    private const int MostCharacters = 8000;
    private const int MostTextLength = 6000;
    private const int MostChat = 100;
    private const int MostMenu = 15;
    private const double LargestWhole = 9_007_199_254_740_992;

    /// <summary>Checks a whole list as PUT takes it.</summary>
    public static void CheckAll(IReadOnlyList<JsonElement> commands, FormErrors errors)
    {
        var seen = new HashSet<(long, string)>();
        for (int i = 0; i < commands.Count; i++)
        {
            Check(commands[i], $"{i}", errors);
            if (commands[i].Text("name") is { } name && !seen.Add((commands[i].Whole("type") ?? 1, name)))
            {
                errors.Add($"{i}.name", "APPLICATION_COMMANDS_DUPLICATE_NAME", "Application command names must be unique");
            }
        }

        // 100 chat commands; the figure for menu commands is from memory.
        foreach (IGrouping<long, JsonElement> kind in commands.GroupBy(c => c.Whole("type") ?? 1))
        {
            if (kind.Count() > (kind.Key == 1 ? MostChat : MostMenu))
            {
                errors.Add("", "APPLICATION_COMMANDS_TOO_MANY", "Maximum number of application commands reached");
            }
        }
    }

    /// <summary>Checks one command.</summary>
    public static void Check(JsonElement command, string path, FormErrors errors)
    {
        if (command.ValueKind != JsonValueKind.Object)
        {
            errors.Add(path, "DICT_TYPE_CONVERT", "Only dictionaries may be used in a DictType");
            return;
        }

        long type = errors.CheckWhole(command, "type", path, 1, 3) ?? 1;
        string? name = errors.CheckText(command, "name", path, 1, 32, required: true);
        if (type == 1)
        {
            CheckName(name, JsonFields.Join(path, "name"), errors);
            errors.CheckText(command, "description", path, 1, 100, required: true);
            CheckOptions(command, path, 0, errors);
        }
        else
        {
            if (command.Text("description") is { Length: > 0 })
            {
                errors.Add(JsonFields.Join(path, "description"), "APPLICATION_COMMAND_CONTEXT_MENU_DESCRIPTION_CANNOT_BE_SET", "Context menu commands cannot have description");
            }

            if (command.List("options").Count > 0)
            {
                errors.Add(JsonFields.Join(path, "options"), "APPLICATION_COMMAND_CONTEXT_MENU_CANNOT_HAVE_OPTIONS", "Context menu commands cannot have options");
            }
        }

        if (command.Field("default_member_permissions") is { } bits && (bits.ValueKind != JsonValueKind.String || !ulong.TryParse(bits.GetString(), out _)))
        {
            errors.Add(JsonFields.Join(path, "default_member_permissions"), "STRING_TYPE_CONVERT", "Must be permission bits, written as text.");
        }

        if (CharactersOf(command) > MostCharacters)
        {
            errors.Add(path, "APPLICATION_COMMAND_TOO_LARGE", $"Command exceeds maximum size ({MostCharacters})");
        }
    }

    private static void CheckName(string? name, string path, FormErrors errors)
    {
        if (name is not null && (!Name().IsMatch(name) || name.EnumerateRunes().Any(r => System.Text.Rune.ToLowerInvariant(r) != r)))
        {
            errors.Add(path, "STRING_TYPE_REGEX", "String value did not match validation regex.");
        }
    }

    private static void CheckOptions(JsonElement owner, string path, int depth, FormErrors errors)
    {
        IReadOnlyList<JsonElement> options = errors.CheckList(owner, "options", path, 0, MostOptions);
        var seen = new HashSet<string>();
        bool optionalSeen = false;
        for (int i = 0; i < options.Count; i++)
        {
            JsonElement option = options[i];
            string at = $"{JsonFields.Join(path, "options")}.{i}";
            long type = errors.CheckWhole(option, "type", at, Subcommand, Attachment, required: true) ?? 0;
            string? name = errors.CheckText(option, "name", at, 1, 32, required: true);
            CheckName(name, $"{at}.name", errors);
            errors.CheckText(option, "description", at, 1, 100, required: true);
            if (name is not null && !seen.Add(name))
            {
                errors.Add($"{at}.name", "APPLICATION_COMMAND_OPTIONS_NAME_ALREADY_EXISTS", "Option with same name already exists");
            }

            if (type is Subcommand or SubcommandGroup)
            {
                CheckNesting(option, type, options, at, depth, errors);
                continue;
            }

            if (option.Flag("required") && optionalSeen)
            {
                errors.Add(at, "APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID", "Required options must be placed before non-required options");
            }

            optionalSeen |= !option.Flag("required");
            if (option.List("options").Count > 0)
            {
                errors.Add($"{at}.options", "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "Only subcommands have options");
            }

            CheckValues(option, type, at, errors);
        }
    }

    private static void CheckNesting(JsonElement option, long type, IReadOnlyList<JsonElement> siblings, string at, int depth, FormErrors errors)
    {
        if (siblings.Any(s => s.Whole("type") is not (Subcommand or SubcommandGroup)))
        {
            errors.Add(at, "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "Sub-command and sub-command group option types are mutually exclusive to all other types");
        }

        // Depth 0: groups and subcommands. Depth 1: subcommands of a group. A subcommand holds plain options only.
        bool fits = depth == 0 || (depth == 1 && type == Subcommand);
        if (!fits)
        {
            errors.Add(at, "APPLICATION_COMMAND_OPTIONS_TYPE_INVALID", "Sub-command groups and sub-commands cannot be nested like this");
        }

        CheckOptions(option, at, type == SubcommandGroup ? depth + 1 : 2, errors);
    }

    private static void CheckValues(JsonElement option, long type, string at, FormErrors errors)
    {
        IReadOnlyList<JsonElement> choices = errors.CheckList(option, "choices", at, 0, MostChoices);
        bool choosable = type is Text or Whole or Number;
        if (!choosable && (choices.Count > 0 || option.Flag("autocomplete")))
        {
            errors.Add(at, "APPLICATION_COMMAND_OPTIONS_CHOICES_INVALID", "Only strings, integers and numbers have choices or autocomplete");
        }

        if (choices.Count > 0 && option.Flag("autocomplete"))
        {
            errors.Add($"{at}.autocomplete", "APPLICATION_COMMAND_OPTIONS_AUTOCOMPLETE_INVALID", "Autocomplete options may not have choices");
        }

        CheckChoices(choices, type, $"{at}.choices", errors);
        CheckRange(option, at, "min_value", "max_value", type is Whole or Number, type == Whole ? LargestWhole : double.MaxValue, errors);
        CheckRange(option, at, "min_length", "max_length", type == Text, MostTextLength, errors);
        if (option.Has("channel_types") && type != Channel)
        {
            errors.Add($"{at}.channel_types", "APPLICATION_COMMAND_OPTIONS_CHANNEL_TYPES_INVALID", "Only channel options have channel types");
        }

        if (errors.CheckList(option, "file_types", at, 0, 10).Count > 0 && type != Attachment)
        {
            errors.Add($"{at}.file_types", "APPLICATION_COMMAND_OPTIONS_FILE_TYPES_INVALID", "Only attachment options have file types");
        }
    }

    private static void CheckRange(JsonElement option, string at, string leastName, string mostName, bool allowed, double bound, FormErrors errors)
    {
        double? least = Limit(leastName), most = Limit(mostName);
        if (least > most)
        {
            errors.Add($"{at}.{leastName}", "NUMBER_TYPE_RANGE", $"{leastName} must not be above {mostName}");
        }

        double? Limit(string name)
        {
            if (option.Field(name) is not { } value)
            {
                return null;
            }

            if (!allowed || value.ValueKind != JsonValueKind.Number || Math.Abs(value.GetDouble()) > bound || (bound == MostTextLength && value.GetDouble() < 0))
            {
                errors.Add($"{at}.{name}", "NUMBER_TYPE_RANGE", "This option type does not take this limit, or the limit is out of range");
                return null;
            }

            return value.GetDouble();
        }
    }

    /// <summary>Checks choices of an option, or those an autocomplete answers with.</summary>
    public static void CheckChoices(IReadOnlyList<JsonElement> choices, long type, string path, FormErrors errors)
    {
        var names = new HashSet<string>();
        for (int i = 0; i < choices.Count; i++)
        {
            if (errors.CheckText(choices[i], "name", $"{path}.{i}", 1, 100, required: true) is { } name && !names.Add(name))
            {
                errors.Add($"{path}.{i}.name", "APPLICATION_COMMAND_OPTIONS_CHOICE_NAME_ALREADY_EXISTS", "Choice with same name already exists");
            }

            bool fits = choices[i].Field("value") switch
            {
                { ValueKind: JsonValueKind.String } v => type == Text && JsonFields.Length(v.GetString()!) <= 100,
                { ValueKind: JsonValueKind.Number } v => type == Number || (type == Whole && v.TryGetInt64(out _)),
                _ => false,
            };
            if (!fits)
            {
                errors.Add($"{path}.{i}.value", "UNION_TYPE_CHOICES", "The value does not fit the option's type, or is above 100 characters");
            }
        }
    }

    private static int CharactersOf(JsonElement part)
    {
        int own = JsonFields.Length(part.Text("name") ?? "") + JsonFields.Length(part.Text("description") ?? "");
        return own
            + part.List("choices").Sum(c => JsonFields.Length(c.Text("name") ?? "") + (c.Field("value") is { } v ? JsonFields.Length(v.ToString()) : 0))
            + part.List("options").Sum(CharactersOf);
    }

    // The documented pattern with its two scripts written as ranges, for .NET knows no \p{sc=...}: Devanagari and Thai.
    [GeneratedRegex(@"^[-_'\p{L}\p{N}\u0900-\u0950\u0955-\u0963\u0966-\u097F\uA8E0-\uA8FF\u0E01-\u0E3A\u0E40-\u0E5B]{1,32}$")]
    private static partial Regex Name();
}
