using System.Globalization;
using System.Text.Json;
using Google.Protobuf.Reflection;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Keeping;

/// <summary>Holds JSON against messages of the contract and notes everything that does not fit, in words.</summary>
internal sealed class KeptFileCheck
{
    private const int MostProblems = 12;
    private const int LongestText = 1000;

    private readonly List<string> problems = [];

    /// <summary>What does not fit, in sentences.</summary>
    public IReadOnlyList<string> Problems => problems;

    /// <summary>Notes a problem.</summary>
    public void Add(string sentence)
    {
        if (problems.Count < MostProblems)
        {
            problems.Add(Wordings.Capital(sentence) + ".");
        }
    }

    /// <summary>Notes names that are unknown or there twice.</summary>
    public void Names(JsonElement thing, string at, IReadOnlyList<string> known)
    {
        var seen = new HashSet<string>();
        foreach (JsonProperty property in thing.EnumerateObject())
        {
            if (!known.Contains(property.Name))
            {
                Add($"{Path(at, property.Name)} is not known here; take it out");
            }
            else if (!seen.Add(property.Name))
            {
                Add($"{Path(at, property.Name)} is there twice; keep one");
            }
        }
    }

    /// <summary>Notes what does not fit a message.</summary>
    public void Message(JsonElement value, MessageDescriptor descriptor, string at)
    {
        if (descriptor.FullName is "google.protobuf.Timestamp" or "google.protobuf.Duration")
        {
            Expect(value.ValueKind == JsonValueKind.String && value.GetString()!.Length <= 40, at, "a time in quotes, such as \"2026-07-14T09:30:00Z\"");
            return;
        }

        if (value.ValueKind != JsonValueKind.Object)
        {
            Expect(false, at, "an object in braces");
            return;
        }

        var seen = new HashSet<int>();
        foreach (JsonProperty property in value.EnumerateObject())
        {
            FieldDescriptor? field = descriptor.Fields.InDeclarationOrder().FirstOrDefault(f => f.JsonName == property.Name || f.Name == property.Name);
            string path = Path(at, property.Name);
            if (field is null)
            {
                Add($"{path} is not known here; take it out");
            }
            else if (!seen.Add(field.FieldNumber))
            {
                Add($"{path} is there twice; keep one");
            }
            else if (field.Name is not ("revision" or "update_time"))
            {
                Field(property.Value, field, path);
            }
        }
    }

    private void Field(JsonElement value, FieldDescriptor field, string at)
    {
        if (!field.IsRepeated)
        {
            One(value, field, at);
        }
        else if (value.ValueKind != JsonValueKind.Array)
        {
            Expect(false, at, "a list in square brackets");
        }
        else
        {
            int index = 0;
            foreach (JsonElement item in value.EnumerateArray())
            {
                One(item, field, string.Create(CultureInfo.InvariantCulture, $"{at}[{index++}]"));
            }
        }
    }

    private void One(JsonElement value, FieldDescriptor field, string at)
    {
        switch (field.FieldType)
        {
            case FieldType.Message:
                Message(value, field.MessageType, at);
                break;
            case FieldType.Enum:
                bool named = value.ValueKind == JsonValueKind.String && field.EnumType.FindValueByName(value.GetString()!) is not null;
                Expect(named, at, $"one of {string.Join(", ", field.EnumType.Values.Where(v => v.Number != 0).Select(v => v.Name))}");
                break;
            case FieldType.Bool:
                Expect(value.ValueKind is JsonValueKind.True or JsonValueKind.False, at, "true or false");
                break;
            case FieldType.String:
                Expect(value.ValueKind == JsonValueKind.String && value.GetString() is { Length: <= LongestText } text && !text.Any(char.IsControl), at, $"text in quotes of at most {LongestText} characters without control characters");
                break;
            case FieldType.Double or FieldType.Float:
                Expect(value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number) && double.IsFinite(number), at, "a number");
                break;
            case FieldType.Int32 or FieldType.UInt32 or FieldType.SInt32 or FieldType.Fixed32 or FieldType.SFixed32:
                Expect(value.ValueKind == JsonValueKind.Number && value.TryGetInt32(out _), at, "a whole number");
                break;
            case FieldType.Int64 or FieldType.UInt64 or FieldType.SInt64 or FieldType.Fixed64 or FieldType.SFixed64:
                bool whole = value.ValueKind == JsonValueKind.Number ? value.TryGetInt64(out _) : value.ValueKind == JsonValueKind.String && long.TryParse(value.GetString(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _);
                Expect(whole, at, "a whole number");
                break;
            default:
                Expect(value.ValueKind == JsonValueKind.String, at, "text in quotes");
                break;
        }
    }

    private void Expect(bool fits, string at, string right)
    {
        if (!fits)
        {
            Add($"{at} must be {right}");
        }
    }

    private static string Path(string at, string name)
    {
        string clean = CrewText.Clean(name, 60);
        return at.Length == 0 ? $"\"{clean}\"" : $"{at}.{clean}";
    }
}
