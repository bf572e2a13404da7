using System.CommandLine;
using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>What the command line asked for.</summary>
internal sealed record CrewBotSettings
{
    public string? Scene { get; init; }

    public bool Json { get; init; }

    public UnitPreference? Units { get; init; }

    public required string PictureFolder { get; init; }

    public Uri? Server { get; init; }

    public string? Key { get; init; }

    public string? Clip { get; init; }

    public required string DataFolder { get; init; }

    public CrewQuestion Question(string text) => new() { Text = text, Scene = Scene, Units = Units };
}

/// <summary>The options of every command.</summary>
internal sealed class CrewBotOptions
{
    private readonly Option<string?> scene = new("--scene") { Description = "Scene the question is about: its id or name." };
    private readonly Option<bool> json = new("--json") { Description = "Prints the answer as one JSON object, for scripts." };
    private readonly Option<string?> units = new("--units") { Description = "metric or imperial." };
    private readonly Option<string?> pictures = new("--pictures") { Description = "Folder for pictures; ./quarterlight-pictures when not given." };
    private readonly Option<string?> server = new("--server") { Description = "Address of a planner, such as http://127.0.0.1:5180; without it one is started in this process." };
    private readonly Option<string?> key = new("--key") { Description = "Team's key for the planner; or the environment variable " + CrewBotProgram.KeyVariable + "." };
    private readonly Option<string?> data = new("--data") { Description = "Folder of the store of the planner in this process." };

    private readonly Option<string?> clip = new("--clip") { Description = "Sound file the question is about; its path may stand in the question instead." };

    public CrewBotOptions()
    {
        units.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is not (null or "metric" or "imperial"))
            {
                result.AddError("--units takes metric or imperial.");
            }
        });
        server.Validators.Add(result =>
        {
            string? given = result.GetValueOrDefault<string?>();
            if (given is not null && !(Uri.TryCreate(given, UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https"))
            {
                result.AddError("--server takes an address such as http://127.0.0.1:5180.");
            }
        });
    }

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { scene, json, units, pictures, server, key, data })
        {
            command.Options.Add(option);
        }
    }

    /// <summary>The option of commands that ask about one thing.</summary>
    public void AddClipTo(Command command) => command.Options.Add(clip);

    public CrewBotSettings Read(ParseResult parsed, CrewBotSurroundings surroundings) => new()
    {
        Scene = parsed.GetValue(scene),
        Json = parsed.GetValue(json),
        Units = parsed.GetValue(units) switch
        {
            "imperial" => UnitPreference.Imperial,
            "metric" => UnitPreference.Metric,
            _ => null,
        },
        PictureFolder = parsed.GetValue(pictures) ?? surroundings.DefaultPictureFolder,
        Server = parsed.GetValue(server) is { } address ? new Uri(address) : null,
        Key = parsed.GetValue(key) ?? surroundings.Environment(CrewBotProgram.KeyVariable),
        Clip = parsed.GetValue(clip),
        DataFolder = parsed.GetValue(data) ?? surroundings.DefaultDataFolder,
    };
}
