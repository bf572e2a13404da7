using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Topics;

/// <summary>A question on its way to an answer: the request and all that topics need to answer it.</summary>
internal sealed record Asked(PlannerClients Planner, CrewRequest Request, CrewVocabulary Vocabulary, CrewMemory Memory, UnitPreference Units, bool IncludePicture, CancellationToken Cancellation)
{
    public CrewAttachment? Attachment { get; init; }

    public IProgress<CrewClipProgress>? Progress { get; init; }

    /// <summary>Country where neither question nor scene names one; empty when the team has none.</summary>
    public string TeamCountry { get; init; } = "";

    /// <summary>Country it is about: the one said, else the scene's, else the team's; empty when none is known.</summary>
    public string Country => Request.Radio.Country ?? (Scene?.FollowCar?.CountryCode is { Length: > 0 } kept ? kept : TeamCountry);

    public Scene? Scene => Vocabulary.Scenes.FirstOrDefault(s => s.Name == Request.SceneName);

    public Cabin? Cabin => Vocabulary.CabinOf(Scene);

    public bool DriverOnLeft => Cabin?.DriveSide != DriveSide.Right;

    /// <summary>The scene was neither named nor talked about, and there are others.</summary>
    public bool SceneGuessed => !Request.SceneSaid && Memory.SceneName is null && Vocabulary.Scenes.Count > 1;

    public CrewAnswer Answer(string headline, IReadOnlyList<CrewLine> lines) => new()
    {
        Intent = Request.Intent,
        Headline = headline,
        Lines = lines,
        Memory = Memory with { SceneName = Request.SceneName },
    };

    public CrewAnswer NoScene() => Answer("There is no scene to plan yet.", [new(CrewLineKind.Plain, "Say \"load demo\" for invented scenes to try, or make your own with \"scene new\".")]) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = ["load demo"],
    };

    /// <summary>Plans the scene, with changes or without.</summary>
    public async Task<PlanPlacementResponse> PlanAsync(SceneChanges? changes, bool picture)
    {
        var request = new PlanPlacementRequest { Scene = Request.SceneName, Changes = changes, IncludePicture = picture };
        return await Planner.Placement.PlanPlacementAsync(request, Planner.Options(Cancellation)).ConfigureAwait(false);
    }

    public async Task<ListMountSitesResponse> SitesAsync(string cabinName) =>
        await Planner.Placement.ListMountSitesAsync(new() { Name = cabinName }, Planner.Options(Cancellation)).ConfigureAwait(false);

    public static IReadOnlyList<CrewPicture> Pictures(Picture? picture, string fileName, UnitPreference units) => picture is not { Png.IsEmpty: false } ? [] :
    [
        new CrewPicture(picture.Png.Memory, UnitText.Rewrite(CrewText.Clean(picture.TextAlternative, 1024), units), FileName(fileName)),
    ];

    private static string FileName(string name)
    {
        string id = ResourceName.IdOf(name);
        string safe = new([.. id.Select(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) ? c : '-')]);
        return $"{safe.Trim('-')}.png";
    }
}
