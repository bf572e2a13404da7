using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>A figure with the spread to expect around it, in the unit its place names.</summary>
public readonly record struct Estimate(double Value, double PlusMinus);

/// <summary>What to expect of one talker on one microphone.</summary>
public sealed record PlacementFigures
{
    /// <summary>Speech over all noise, A-weighted, dB.</summary>
    public required Estimate SnrDba { get; init; }

    /// <summary>Speech intelligibility index, 0 to 1.</summary>
    public required double Sii { get; init; }

    /// <summary>Speech transmission index, 0 to 1.</summary>
    public required double Sti { get; init; }

    /// <summary>Direct and very early speech over late speech, dB.</summary>
    public required double DirectToReverberantDb { get; init; }

    /// <summary>Least lead in dB over any other open microphone; null with a single one.</summary>
    public double? SeparationDb { get; init; }

    /// <summary>Level of the loudest head pose over the quietest, dB.</summary>
    public required double PoseSwingDb { get; init; }

    /// <summary>Highest level at the capsule, dB re 20 µPa.</summary>
    public required Estimate PeakLevelDb { get; init; }

    /// <summary>Speech at the capsule by octave in the loudest head pose, dB re 20 µPa, rms and without pattern: overload is a matter of pressure.</summary>
    public required BandLevels CapsuleLevelsDb { get; init; }

    /// <summary>Noise through pattern and aim, dB(A).</summary>
    public required Estimate NoiseDba { get; init; }

    /// <summary>Speech through pattern and aim, dB(A), averaged over poses by their share.</summary>
    public required double SpeechDba { get; init; }

    /// <summary>Speech at the microphone's output by octave, averaged over poses by their share, dB re 20 µPa.</summary>
    public required BandLevels SpeechLevelsDb { get; init; }

    /// <summary>All noise at the microphone's output by octave, self-noise included, dB re 20 µPa.</summary>
    public required BandLevels NoiseLevelsDb { get; init; }

    /// <summary>Self-noise of the microphone by octave, dB re 20 µPa.</summary>
    public required BandLevels SelfNoiseLevelsDb { get; init; }

    /// <summary>Useful-to-detrimental ratio, dB, over poses, pulled toward the worst.</summary>
    public required double UsefulToDetrimentalDb { get; init; }

    /// <summary>The ratio less all penalties, dB.</summary>
    public required double ScoreDb { get; init; }

    /// <summary>Capsule to mouth at rest, metres.</summary>
    public required double MouthDistanceM { get; init; }
}

/// <summary>A named deduction from the score.</summary>
/// <param name="Code">Stable word, such as tone-change.</param>
/// <param name="Words">In words.</param>
/// <param name="CostDb">Positive dB.</param>
public sealed record Penalty(string Code, string Words, double CostDb);

/// <summary>One microphone for one talker.</summary>
public sealed record TalkerPlacement
{
    /// <summary>Talker served.</summary>
    public required string TalkerId { get; init; }

    /// <summary>Microphone of the kit.</summary>
    public required string MicrophoneId { get; init; }

    /// <summary>Recorder input, 1 = first.</summary>
    public required int RecorderInput { get; init; }

    /// <summary>How it is held; exactly one fixing.</summary>
    public required Fixings Fixing { get; init; }

    /// <summary>Where it is fixed.</summary>
    public required MountSite Site { get; init; }

    /// <summary>Where the capsule is, metres.</summary>
    public required Vector3D Capsule { get; init; }

    /// <summary>Unit vector where it points.</summary>
    public required Vector3D Aim { get; init; }

    /// <summary>Where it points, in words.</summary>
    public required string AimWords { get; init; }

    /// <summary>Where it is, in words with centimetres.</summary>
    public required string PlaceWords { get; init; }

    /// <summary>Radians between the aim and the engine.</summary>
    public required double AimToEngineRad { get; init; }

    /// <summary>Radians between the nearest null and the engine; null for a pattern without one.</summary>
    public double? NullToEngineRad { get; init; }

    /// <summary>What to expect.</summary>
    public required PlacementFigures Figures { get; init; }

    /// <summary>Deductions from the score.</summary>
    public required IReadOnlyList<Penalty> Penalties { get; init; }

    /// <summary>What to be careful about.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }
}

/// <summary>Why a site is out of the question.</summary>
public enum RefusalReason
{
    /// <summary>A camera sees it.</summary>
    InShot,

    /// <summary>A camera sees it in the mirror.</summary>
    InMirror,

    /// <summary>In an airbag's way.</summary>
    Airbag,

    /// <summary>In the driver's view.</summary>
    DriverView,

    /// <summary>No fixing of the kit is permitted there.</summary>
    Fixing,

    /// <summary>Too near a head.</summary>
    HeadClearance,

    /// <summary>Not enough room in front of the surface.</summary>
    FreeDepth,

    /// <summary>On glass that is down.</summary>
    MovingGlass,

    /// <summary>Not allowed on this talker.</summary>
    BodyWorn,
}

/// <summary>A site ruled out for every microphone of the kit.</summary>
/// <param name="Site">The site.</param>
/// <param name="Reasons">Every reason that applies; at least one.</param>
/// <param name="Explanation">The reasons in one sentence.</param>
public sealed record RefusedSite(MountSite Site, IReadOnlyList<RefusalReason> Reasons, string Explanation);

/// <summary>How good the choice is proved to be.</summary>
public sealed record OptimalityProof(
    bool ProvedOptimal,
    int CandidateCount,
    long NodeCount,
    double WorstScoreDb,
    double WorstScoreBoundDb,
    double SumScoreDb,
    double SumScoreBoundDb);

/// <summary>A complete choice.</summary>
/// <param name="Placements">In the order of the scene's talkers that are covered.</param>
/// <param name="WorstScoreDb">Score of the worst placed talker.</param>
/// <param name="SumScoreDb">Sum of scores.</param>
/// <param name="Difference">What sets it apart from the plan; empty for the plan itself.</param>
public sealed record PlanOption(IReadOnlyList<TalkerPlacement> Placements, double WorstScoreDb, double SumScoreDb, string Difference);

/// <summary>A mount plan.</summary>
public sealed record MountPlan
{
    /// <summary>The best choice.</summary>
    public required PlanOption Best { get; init; }

    /// <summary>Up to two that differ from the best and from each other.</summary>
    public required IReadOnlyList<PlanOption> RunnersUp { get; init; }

    /// <summary>Talkers no microphone could be found for.</summary>
    public required IReadOnlyList<string> UncoveredTalkerIds { get; init; }

    /// <summary>Sites ruled out.</summary>
    public required IReadOnlyList<RefusedSite> RefusedSites { get; init; }

    /// <summary>Number of sites that stayed in.</summary>
    public required int UsableSiteCount { get; init; }

    /// <summary>The proof.</summary>
    public required OptimalityProof Proof { get; init; }

    /// <summary>What to be careful about, most important first.</summary>
    public required IReadOnlyList<Advisory> Advisories { get; init; }

    /// <summary>All noise at the driver's ear, dB(A).</summary>
    public required Estimate CabinNoiseDba { get; init; }
}

/// <summary>Why a site was or was not chosen for a talker.</summary>
public sealed record SiteExplanation
{
    /// <summary>True when it is the site chosen for the talker.</summary>
    public required bool Chosen { get; init; }

    /// <summary>The answer in one sentence.</summary>
    public required string Summary { get; init; }

    /// <summary>Set when a hard limit rules it out.</summary>
    public RefusedSite? Refused { get; init; }

    /// <summary>Best placement there, on its own; null when refused.</summary>
    public TalkerPlacement? There { get; init; }

    /// <summary>What was chosen for the talker; null when the talker is uncovered.</summary>
    public TalkerPlacement? Picked { get; init; }
}
