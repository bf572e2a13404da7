using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Commands;

/// <summary>What the options of a command say, read so far.</summary>
/// <param name="Vocabulary">The team's own words.</param>
/// <param name="Memory">What the conversation remembers.</param>
/// <param name="Units">Units a bare number is in.</param>
internal sealed record CommandSaid(CrewVocabulary Vocabulary, CrewMemory Memory, UnitPreference Units)
{
    /// <summary>Sites of the car in question; empty when they were not asked for or the planner is away.</summary>
    public IReadOnlyList<MountSite> Sites { get; init; } = [];

    public Scene? SceneNamed { get; init; }

    public Cabin? CabinNamed { get; init; }

    public Kit? KitNamed { get; init; }

    public UnitPreference? UnitsNamed { get; init; }

    public string? TalkerId { get; init; }

    public SiteMention? Site { get; init; }

    public SiteMention? SiteLeftOut { get; init; }

    public ConditionChanges Drive { get; init; } = new();

    public IReadOnlyList<string> MicrophonesLeftOut { get; init; } = [];

    public IReadOnlyList<string> OnlyMicrophones { get; init; } = [];

    public IReadOnlyList<string> ShotsLeftOut { get; init; } = [];

    public RadioSaid Radio { get; init; } = new();

    public ForecastSaid Forecast { get; init; } = new();

    public ClipSaid Clip { get; init; } = new();

    /// <summary>Which of several answers is wanted; empty for the usual one.</summary>
    public string Show { get; init; } = "";

    public string Topic { get; init; } = "";

    public bool Detailed { get; init; }

    /// <summary>Scene it is about: the one named, else the one talked about, else the last written.</summary>
    public Scene? Scene => SceneNamed ?? Vocabulary.Scenes.FirstOrDefault(s => s.Name == Memory.SceneName) ?? RequestReader.Latest(Vocabulary.Scenes);

    /// <summary>Kit it is about: the one named, else the scene's.</summary>
    public Kit? Kit => KitNamed ?? Vocabulary.KitOf(Scene);

    public bool DriverOnLeft => Vocabulary.CabinOf(Scene)?.DriveSide != DriveSide.Right;

    /// <summary>The request that all intents start from.</summary>
    public CrewRequest Request(CrewIntent intent) => new()
    {
        Intent = intent,
        SceneName = Scene?.Name,
        SceneSaid = SceneNamed is not null,
        Units = UnitsNamed,
        TalkerId = TalkerId,
        Site = Site,
        Clip = Clip,
        Detailed = Detailed,
    };
}
