using System.Text.Json;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>The rules of forms (Interactions: Modal; Components: Label, Text Input, File Upload).</summary>
internal static class ModalChecks
{
    private const int Row = 1;
    private const int TextInput = 4;
    private const int TextDisplay = 10;
    private const int Label = 18;
    private const int FileUpload = 19;
    private const int MostText = 4000;

    /// <summary>Checks the data of callback type 9.</summary>
    public static void Check(JsonElement data, string path, FormErrors errors)
    {
        errors.CheckText(data, "custom_id", path, 1, 100, required: true);
        errors.CheckText(data, "title", path, 1, 45, required: true);
        var ids = new HashSet<string>();
        IReadOnlyList<JsonElement> parts = errors.CheckList(data, "components", path, 1, 5);
        for (int i = 0; i < parts.Count; i++)
        {
            string at = $"{JsonFields.Join(path, "components")}.{i}";
            switch (parts[i].Whole("type"))
            {
                case Label:
                    errors.CheckText(parts[i], "label", at, 1, 45, required: true);
                    errors.CheckText(parts[i], "description", at, 0, 100);
                    CheckField(parts[i].Field("component"), $"{at}.component", inLabel: true, ids, errors);
                    break;
                case Row:
                    IReadOnlyList<JsonElement> inner = errors.CheckList(parts[i], "components", at, 1, 1);
                    CheckField(inner.Count > 0 ? inner[0] : null, $"{at}.components.0", inLabel: false, ids, errors);
                    break;
                case TextDisplay:
                    errors.CheckText(parts[i], "content", at, 1, MostText, required: true);
                    break;
                default:
                    errors.Add($"{at}.type", "UNION_TYPE_CHOICES", "Value of field \"type\" must be one of (1, 10, 18).");
                    break;
            }
        }
    }

    private static void CheckField(JsonElement? given, string at, bool inLabel, HashSet<string> ids, FormErrors errors)
    {
        if (given is not { } field)
        {
            errors.Add(at, "BASE_TYPE_REQUIRED", "This field is required");
            return;
        }

        if (errors.CheckText(field, "custom_id", at, 1, 100, required: true) is { } id && !ids.Add(id))
        {
            errors.Add($"{at}.custom_id", "COMPONENT_CUSTOM_ID_DUPLICATED", "Component custom id cannot be duplicated");
        }

        switch (field.Whole("type"))
        {
            case TextInput:
                CheckTextInput(field, at, inLabel, errors);
                break;
            case FileUpload when inLabel:
                errors.CheckWhole(field, "min_values", at, 0, 10);
                errors.CheckWhole(field, "max_values", at, 1, 10);
                break;
            case (>= 3 and <= 8) or (>= 21 and <= 23) when inLabel:
                break;
            default:
                errors.Add($"{at}.type", "UNION_TYPE_CHOICES", "A form has no component of this type here.");
                break;
        }
    }

    private static void CheckTextInput(JsonElement field, string at, bool inLabel, FormErrors errors)
    {
        errors.CheckWhole(field, "style", at, 1, 2, required: true);
        errors.CheckText(field, "placeholder", at, 0, 100);
        long least = errors.CheckWhole(field, "min_length", at, 0, MostText) ?? 0;
        long most = errors.CheckWhole(field, "max_length", at, 1, MostText) ?? MostText;
        errors.CheckText(field, "value", at, 0, (int)Math.Clamp(most, 1, MostText));
        if (least > most)
        {
            errors.Add($"{at}.min_length", "NUMBER_TYPE_RANGE", "min_length must not be above max_length");
        }

        if (inLabel && field.Has("label"))
        {
            errors.Add($"{at}.label", "COMPONENT_LABEL_NOT_ALLOWED", "Inside a label a text input has no label of its own");
        }
        else if (!inLabel)
        {
            errors.CheckText(field, "label", at, 1, 45, required: true);
        }
    }
}
