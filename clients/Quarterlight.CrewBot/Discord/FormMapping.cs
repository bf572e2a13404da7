using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Forms of the desk as forms of the platform, and back.</summary>
internal static class FormMapping
{
    private const string Prefix = "q1f:";

    /// <summary>The form to open; null when it cannot be shown on this platform, which is a mistake of whoever made it.</summary>
    public static OutgoingForm? ToPlatform(CrewForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        string id = Prefix + form.Id;
        if (id.Length > DiscordLimits.CustomIdCharacters || form.Fields.Count is 0 or > DiscordLimits.FormFields)
        {
            return null;
        }

        return new OutgoingForm(id, Shown(form.Title, DiscordLimits.FormTitleCharacters), [.. form.Fields.Select(Field)]);
    }

    /// <summary>The form as filled in; null when it is none of ours.</summary>
    public static CrewFormEntry? FromPlatform(FormData form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return form.CustomId.StartsWith(Prefix, StringComparison.Ordinal) && form.CustomId.Length > Prefix.Length ? new CrewFormEntry(form.CustomId[Prefix.Length..], form.Fields) : null;
    }

    private static OutgoingField Field(CrewFormField field)
    {
        int most = Math.Clamp(field.MostCharacters, 1, DiscordLimits.FieldCharacters);
        string hint = Shown(field.Hint, DiscordLimits.FieldDescriptionCharacters);
        return new OutgoingField(field.Id, Shown(field.Label, DiscordLimits.FieldLabelCharacters))
        {
            Description = hint.Length == 0 ? null : hint,
            // What stands in it must fit, or the platform refuses the whole form.
            Value = field.Value.Length == 0 ? null : field.Value[..CutText.WholeCharacters(field.Value, Math.Min(field.Value.Length, most))],
            Required = field.Required,
            SeveralLines = field.SeveralLines,
            MostCharacters = most,
        };
    }

    // Titles and labels show no markup, so nothing is escaped in them.
    private static string Shown(string text, int most) => CutText.AtWord(Markdown.Plain(text), most);
}
