using System.Text.Json;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>The rules of components in a message (Components reference; the legacy behaviour, without IS_COMPONENTS_V2).</summary>
internal sealed class ComponentChecks(FormErrors errors, bool allowV2)
{
    private const int Row = 1;
    private const int Button = 2;
    private const int TextSelect = 3;
    private const int TextInput = 4;
    private const int LastSelect = 8;
    private const int LinkStyle = 5;
    private const int PremiumStyle = 6;
    private const int MostRows = 5;
    private const int MostInRow = 5;
    private const int MostComponentsV2 = 40;
    private readonly HashSet<string> customIds = [];
    private int count;

    /// <summary>Checks the field "components" of a message.</summary>
    public void Check(JsonElement message, string path, bool v2)
    {
        IReadOnlyList<JsonElement> rows = errors.CheckList(message, "components", path, 0, v2 ? MostComponentsV2 : MostRows);
        for (int i = 0; i < rows.Count; i++)
        {
            string at = $"{JsonFields.Join(path, "components")}.{i}";
            if (rows[i].Whole("type") == Row)
            {
                CheckRow(rows[i], at);
            }
            else if (!v2 || !allowV2)
            {
                errors.Add($"{at}.type", "UNION_TYPE_CHOICES", "Value of field \"type\" must be one of (1,).");
            }
            else
            {
                CountV2(rows[i], at);
            }
        }

        if (v2 && count > MostComponentsV2)
        {
            errors.Add(JsonFields.Join(path, "components"), "BASE_TYPE_BAD_LENGTH", $"Must be {MostComponentsV2} or fewer components in all.");
        }
    }

    private void CountV2(JsonElement component, string at)
    {
        count++;
        CustomId(component, at, required: false);
        foreach (JsonElement child in component.List("components"))
        {
            CountV2(child, at);
        }
    }

    private void CheckRow(JsonElement row, string at)
    {
        count++;
        IReadOnlyList<JsonElement> parts = errors.CheckList(row, "components", at, 1, MostInRow);
        for (int i = 0; i < parts.Count; i++)
        {
            string part = $"{at}.components.{i}";
            count++;
            switch (parts[i].Whole("type"))
            {
                case Button:
                    CheckButton(parts[i], part);
                    break;
                case >= TextSelect and <= LastSelect and not TextInput:
                    CheckSelect(parts[i], part);
                    if (parts.Count > 1)
                    {
                        errors.Add(part, "COMPONENT_LAYOUT_WIDTH_EXCEEDED", "The specified component exceeds the maximum width");
                    }

                    break;
                default:
                    errors.Add($"{part}.type", "UNION_TYPE_CHOICES", "Value of field \"type\" must be one of (2, 3, 5, 6, 7, 8).");
                    break;
            }
        }
    }

    private void CheckButton(JsonElement button, string at)
    {
        long style = errors.CheckWhole(button, "style", at, 1, PremiumStyle, required: true) ?? 0;
        errors.CheckText(button, "label", at, 0, 80);
        if (style == LinkStyle)
        {
            string? url = errors.CheckText(button, "url", at, 1, 512, required: true);
            if (button.Has("custom_id"))
            {
                errors.Add($"{at}.custom_id", "BUTTON_COMPONENT_CUSTOM_ID_URL_MUTUALLY_EXCLUSIVE", "A custom id and url cannot both be specified");
            }

            if (url is not null && !(Uri.TryCreate(url, UriKind.Absolute, out Uri? target) && target.Scheme is "http" or "https" or "discord"))
            {
                errors.Add($"{at}.url", "URL_TYPE_INVALID_SCHEME", "Scheme must be one of ('http', 'https', 'discord').");
            }
        }
        else if (style != PremiumStyle)
        {
            CustomId(button, at, required: true);
            if (button.Has("url"))
            {
                errors.Add($"{at}.url", "BUTTON_COMPONENT_CUSTOM_ID_URL_MUTUALLY_EXCLUSIVE", "A custom id and url cannot both be specified");
            }

            if (button.Text("label") is not { Length: > 0 } && button.Field("emoji") is null)
            {
                errors.Add($"{at}.label", "BASE_TYPE_REQUIRED", "A button has a label or an emoji");
            }
        }
    }

    private void CheckSelect(JsonElement select, string at)
    {
        CustomId(select, at, required: true);
        errors.CheckText(select, "placeholder", at, 0, 150);
        if (select.Whole("type") != TextSelect)
        {
            return;
        }

        var values = new HashSet<string>();
        IReadOnlyList<JsonElement> options = errors.CheckList(select, "options", at, 1, 25);
        for (int i = 0; i < options.Count; i++)
        {
            string option = $"{at}.options.{i}";
            errors.CheckText(options[i], "label", option, 1, 100, required: true);
            errors.CheckText(options[i], "description", option, 0, 100);
            if (errors.CheckText(options[i], "value", option, 1, 100, required: true) is { } value && !values.Add(value))
            {
                errors.Add($"{option}.value", "SELECT_COMPONENT_OPTION_VALUE_DUPLICATED", "The specified option value is already used");
            }
        }

        errors.CheckWhole(select, "min_values", at, 0, 25);
        errors.CheckWhole(select, "max_values", at, 1, Math.Max(options.Count, 1));
    }

    private void CustomId(JsonElement component, string at, bool required)
    {
        if (errors.CheckText(component, "custom_id", at, 1, 100, required) is { } id && !customIds.Add(id))
        {
            errors.Add($"{at}.custom_id", "COMPONENT_CUSTOM_ID_DUPLICATED", "Component custom id cannot be duplicated");
        }
    }
}
