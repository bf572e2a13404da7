using System.Text.Json;
using Google.Protobuf;
using Quarterlight.Crew.Commands;

namespace Quarterlight.Crew;

/// <summary>An answer as JSON for scripts. Fields keep their names and order within a version.</summary>
public static class CrewAnswerJson
{
    /// <summary>Version of the layout; grows when a field changes its meaning or goes away.</summary>
    public const int Version = 1;

    /// <summary>Writes an answer as one JSON object, indented.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="pictureFiles">Where each picture was written, in order; null where it was not.</param>
    /// <param name="otherFiles">Where each other file was written, in order; null where it was not.</param>
    public static string Write(CrewAnswer answer, IReadOnlyList<string?> pictureFiles, IReadOnlyList<string?> otherFiles)
    {
        ArgumentNullException.ThrowIfNull(otherFiles);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(pictureFiles);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("version", Version);
            json.WriteString("outcome", Word(answer.Outcome.ToString()));
            json.WriteString("intent", Word(answer.Intent.ToString()));
            json.WriteString("understood", answer.Understood);
            json.WriteString("headline", answer.Headline);
            json.WriteStartArray("lines");
            foreach (CrewLine line in answer.Lines)
            {
                json.WriteStartObject();
                json.WriteString("kind", Word(line.Kind.ToString()));
                json.WriteString("text", line.Text);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            WritePictures(json, answer, pictureFiles);
            WriteFiles(json, answer, otherFiles);
            json.WriteStartArray("followUps");
            foreach (string next in answer.FollowUps)
            {
                json.WriteStringValue(next);
            }

            json.WriteEndArray();
            json.WriteBoolean("private", answer.Private);
            json.WriteStartObject("data");
            foreach ((string name, IMessage message) in answer.Data.OrderBy(d => d.Key, StringComparer.Ordinal))
            {
                json.WritePropertyName(name);
                json.WriteRawValue(JsonFormatter.Default.Format(message));
            }

            json.WriteEndObject();
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray());
    }

    /// <summary>Writes a form to fill in as one JSON object, indented.</summary>
    public static string Write(CrewForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("version", Version);
            json.WriteStartObject("form");
            json.WriteString("id", form.Id);
            json.WriteString("title", form.Title);
            json.WriteStartArray("fields");
            foreach (CrewFormField field in form.Fields)
            {
                json.WriteStartObject();
                json.WriteString("id", field.Id);
                json.WriteString("label", field.Label);
                json.WriteString("hint", field.Hint);
                json.WriteString("value", field.Value);
                json.WriteBoolean("required", field.Required);
                json.WriteNumber("mostCharacters", field.MostCharacters);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray());
    }

    private static void WriteFiles(Utf8JsonWriter json, CrewAnswer answer, IReadOnlyList<string?> files)
    {
        json.WriteStartArray("files");
        for (int i = 0; i < answer.Files.Count; i++)
        {
            json.WriteStartObject();
            json.WriteString("file", i < files.Count ? files[i] : null);
            json.WriteString("mediaType", answer.Files[i].MediaType);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WritePictures(Utf8JsonWriter json, CrewAnswer answer, IReadOnlyList<string?> files)
    {
        json.WriteStartArray("pictures");
        for (int i = 0; i < answer.Pictures.Count; i++)
        {
            json.WriteStartObject();
            json.WriteString("file", i < files.Count ? files[i] : null);
            json.WriteString("textAlternative", answer.Pictures[i].TextAlternative);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    // PlannerUnreachable -> plannerUnreachable
    private static string Word(string name) => char.ToLowerInvariant(name[0]) + name[1..];
}
