using System.Text.Json;
using Quarterlight.Chat.Emulator.Checks;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>A form that was opened to a user.</summary>
/// <param name="CustomId">Its id.</param>
/// <param name="Title">Its title.</param>
/// <param name="Fields">Its fields.</param>
public sealed record OpenedForm(string CustomId, string Title, IReadOnlyList<OpenedField> Fields)
{
    internal static OpenedForm Of(JsonElement data) => new(
        data.Text("custom_id")!,
        data.Text("title")!,
        [.. data.List("components").Where(c => c.Whole("type") is 1 or 18).Select(OpenedField.Of)]);
}

/// <summary>A field of a form.</summary>
/// <param name="CustomId">Its id.</param>
/// <param name="Type">Type of its component: 4 text, 19 files.</param>
/// <param name="Label">Its label.</param>
public sealed record OpenedField(string CustomId, int Type, string Label)
{
    private const int MostText = 4000;

    /// <summary>Hint under the label; null for none.</summary>
    public string? Description { get; init; }

    /// <summary>Example; null for none.</summary>
    public string? Placeholder { get; init; }

    /// <summary>What stands in it at first.</summary>
    public string Value { get; init; } = "";

    /// <summary>True when it must be filled in (the default of a text input is true).</summary>
    public bool Required { get; init; } = true;

    /// <summary>True for several lines.</summary>
    public bool SeveralLines { get; init; }

    /// <summary>Shortest text.</summary>
    public int MinLength { get; init; }

    /// <summary>Longest text.</summary>
    public int MaxLength { get; init; } = MostText;

    internal bool InLabel { get; init; }

    internal static OpenedField Of(JsonElement wrapper)
    {
        bool inLabel = wrapper.Whole("type") == 18;
        JsonElement field = inLabel ? wrapper.Field("component")!.Value : wrapper.List("components")[0];
        return new OpenedField(field.Text("custom_id")!, (int)field.Whole("type")!.Value, (inLabel ? wrapper : field).Text("label") ?? "")
        {
            Description = wrapper.Text("description"),
            Placeholder = field.Text("placeholder"),
            Value = field.Text("value") ?? "",
            Required = field.Field("required") is not { ValueKind: JsonValueKind.False },
            SeveralLines = field.Whole("style") == 2,
            MinLength = (int)(field.Whole("min_length") ?? 0),
            MaxLength = (int)(field.Whole("max_length") ?? MostText),
            InLabel = inLabel,
        };
    }
}
