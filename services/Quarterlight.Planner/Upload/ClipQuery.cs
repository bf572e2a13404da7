using System.Globalization;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;

namespace Quarterlight.Planner.Upload;

/// <summary>The header of a clip out of the query of an HTTP upload: the same fields by the same names, without the thresholds and a plan sent whole.</summary>
internal static class ClipQuery
{
    /// <summary>Name, kind as OpenAPI has it, and meaning of each parameter.</summary>
    public static IReadOnlyList<(string Name, string Kind, string Words)> Parameters { get; } =
    [
        ("file_name", "string", "Name of the file, for words only."),
        ("plan", "string", "Kept plan to compare with, plans/{plan}."),
        ("scene", "string", "Kept scene to plan and compare with, scenes/{scene}."),
        ("talker_id", "string", "Talker whose microphone a clip of one channel is."),
        ("cylinders", "integer", "Cylinders of the engine, 2 to 12."),
        ("full_scale_spl_db", "number", "Sound pressure level in dB of a sine that reads 0 dBFS, 60 to 180."),
        ("include_picture", "boolean", "True adds the picture."),
        ("picture_channel", "integer", "Channel to draw, 1 is the first; 0 takes the one that the verdict speaks of."),
    ];

    /// <summary>Reads the query; refuses with every violation at once.</summary>
    public static ClipHeader Read(IQueryCollection query)
    {
        var reader = new FieldReader();
        foreach (string unknown in query.Keys.Where(k => Parameters.All(p => p.Name != k)))
        {
            reader.Add(unknown.Length <= 40 ? unknown : "query", "there is no such parameter", $"Use {string.Join(", ", Parameters.Select(p => p.Name))}");
        }

        var header = new ClipHeader { FileName = Text("file_name"), TalkerId = Text("talker_id"), IncludePicture = Truth("include_picture") };
        header.PictureChannel = Whole("picture_channel") ?? 0;
        if (Whole("cylinders") is { } cylinders)
        {
            header.Cylinders = cylinders;
        }

        if (Text("full_scale_spl_db") is { Length: > 0 } level)
        {
            header.FullScaleSplDb = double.TryParse(level, NumberStyles.Float, CultureInfo.InvariantCulture, out double db) ? db : Wrong("full_scale_spl_db", "a number such as 120");
        }

        (string plan, string scene) = (Text("plan"), Text("scene"));
        if (plan.Length > 0 && scene.Length > 0)
        {
            reader.Add("scene", "a plan is named too", "Name a plan or a scene");
        }
        else if (plan.Length > 0)
        {
            header.Plan = plan;
        }
        else if (scene.Length > 0)
        {
            header.Scene = scene;
        }

        reader.ThrowIfAny();
        return header;

        string Text(string name)
        {
            if (query[name].Count > 1)
            {
                reader.Add(name, "it is there more than once", "Give it once");
            }

            return query[name].FirstOrDefault() ?? "";
        }

        bool Truth(string name) => Text(name) switch
        {
            "" or "false" => false,
            "true" => true,
            _ => Wrong(name, "true or false") > 0,
        };

        int? Whole(string name) => Text(name) is not { Length: > 0 } text ? null
            : int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) ? value
            : (int)Wrong(name, "a whole number");

        double Wrong(string name, string right)
        {
            reader.Add(name, "this cannot be read", $"Give {right}");
            return 0;
        }
    }
}
