using System.Text.Json;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Interactions;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Chat.Emulator.Checks;

/// <summary>The rules of first answers (Interactions: Interaction Callback Type and Data Structure).</summary>
internal static class CallbackChecks
{
    /// <summary>Checks a first answer against what it answers.</summary>
    public static void Check(SentInteraction asked, RequestBody body, MessageWriter writer, FormErrors errors)
    {
        if (body.Json is not { ValueKind: JsonValueKind.Object } json)
        {
            errors.Add("type", "BASE_TYPE_REQUIRED", "This field is required");
            return;
        }

        FirstAnswerKind[] legal = Legal(asked);
        if (json.Whole("type") is not { } number || !legal.Contains((FirstAnswerKind)number))
        {
            errors.Add("type", "BASE_TYPE_CHOICES", $"Value must be one of ({string.Join(", ", legal.Select(k => (int)k))}).");
            return;
        }

        JsonElement data = json.Field("data") ?? default;
        var kind = (FirstAnswerKind)number;
        if (data.ValueKind is not (JsonValueKind.Object or JsonValueKind.Undefined) || (data.ValueKind == JsonValueKind.Undefined && NeedsData(kind)))
        {
            errors.Add("data", "BASE_TYPE_REQUIRED", "This field is required");
            return;
        }

        switch (kind)
        {
            case FirstAnswerKind.Message:
                writer.Checks.Check(data, "data", body.Files, null, MessageFlags.OfAnswer, errors);
                break;
            case FirstAnswerKind.Update:
                writer.Checks.Check(data, "data", body.Files, asked.On!.Files, MessageFlags.OfEdit, errors);
                break;
            case FirstAnswerKind.DeferredMessage:
                if (((data.Whole("flags") ?? 0) & ~MessageFlags.Ephemeral) != 0)
                {
                    errors.Add("data.flags", "BASE_TYPE_CHOICES", "A deferral may carry the flag EPHEMERAL only.");
                }

                break;
            case FirstAnswerKind.Choices:
                IReadOnlyList<JsonElement> choices = errors.CheckList(data, "choices", "data", 0, 25);
                if (!data.Has("choices"))
                {
                    errors.Add("data.choices", "BASE_TYPE_REQUIRED", "This field is required");
                }

                CommandChecks.CheckChoices(choices, asked.FocusedOptionType, "data.choices", errors);
                break;
            case FirstAnswerKind.Form:
                ModalChecks.Check(data, "data", errors);
                break;
        }
    }

    private static bool NeedsData(FirstAnswerKind kind) => kind is not (FirstAnswerKind.DeferredMessage or FirstAnswerKind.DeferredUpdate);

    private static FirstAnswerKind[] Legal(SentInteraction asked) => asked.Kind switch
    {
        SentKind.Command => [FirstAnswerKind.Message, FirstAnswerKind.DeferredMessage, FirstAnswerKind.Form],
        SentKind.Autocomplete => [FirstAnswerKind.Choices],
        SentKind.Component =>
            [FirstAnswerKind.Message, FirstAnswerKind.DeferredMessage, FirstAnswerKind.DeferredUpdate, FirstAnswerKind.Update, FirstAnswerKind.Form],

        // A form opened from a message can change that message; no form follows a form.
        SentKind.FormSubmit when asked.On is not null =>
            [FirstAnswerKind.Message, FirstAnswerKind.DeferredMessage, FirstAnswerKind.DeferredUpdate, FirstAnswerKind.Update],
        _ => [FirstAnswerKind.Message, FirstAnswerKind.DeferredMessage],
    };
}
