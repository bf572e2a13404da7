using System.Globalization;

using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing;

/// <summary>Says in words what the picture shows.</summary>
public static class PlanText
{
    /// <summary>Most characters of a text alternative.</summary>
    public const int MaxLength = 1024;

    private const int MostDetail = 5;

    /// <summary>
    /// The picture in complete sentences, at most <see cref="MaxLength"/> characters. With many talkers the lesser details
    /// go first: centimetres, then the long form of aims and the lenses, then nulls, aims and places; talkers and microphones stay.
    /// </summary>
    public static string Of(CabinGeometry cabin, Kit kit, Scene scene, PlanOption option)
    {
        ArgumentNullException.ThrowIfNull(cabin);
        ArgumentNullException.ThrowIfNull(kit);
        ArgumentNullException.ThrowIfNull(scene);
        ArgumentNullException.ThrowIfNull(option);
        for (int detail = MostDetail; detail >= 0; detail--)
        {
            string text = string.Join(' ', Sentences(cabin, kit, scene, option, detail));
            if (text.Length <= MaxLength)
            {
                return text;
            }
        }

        return Fitting(Sentences(cabin, kit, scene, option, 0));
    }

    private static List<string> Sentences(CabinGeometry cabin, Kit kit, Scene scene, PlanOption option, int detail)
    {
        List<string> sentences = [$"The picture shows a {BodyWords(cabin.Spec.Body)} from above and from the side, with its front to the right."];
        foreach (Talker talker in scene.Talkers)
        {
            TalkerPlacement? placement = option.Placements.FirstOrDefault(p => p.TalkerId == talker.Id);
            string who = string.Create(CultureInfo.InvariantCulture, $"Talker {TalkerNumbers.Of(scene, talker.Id)}, {talker.DisplayName},");
            sentences.Add(placement is null ? $"{who} has no microphone." : OfPlacement(who, kit, placement, detail));
        }

        sentences.Add(OfShots(scene.Shots, detail));
        if (detail > 1 && scene.Drive.OpenWindows.Any(w => w.OpenFraction > 0))
        {
            string panes = string.Join(", ", scene.Drive.OpenWindows.Where(w => w.OpenFraction > 0).Select(w => w.PaneId.Replace('-', ' ')));
            sentences.Add($"These windows are open: {panes}.");
        }

        if (detail > 2)
        {
            sentences.Add(scene.Drive.Engine == EngineState.Off ? "The engine is off." : $"The {EngineWords(cabin.Spec.Engine)} is running.");
        }

        return sentences;
    }

    private static string OfPlacement(string talker, Kit kit, TalkerPlacement placement, int detail)
    {
        List<string> parts = [];
        if (detail >= 1)
        {
            parts.Add($"its place is {(detail >= MostDetail ? Bare(placement.PlaceWords) : placement.Site.Words)}");
        }

        if (detail >= 2)
        {
            parts.Add($"it is aimed {(detail >= 4 || !HasAim(kit, placement) ? Aimed(placement.AimWords) : AimText.Short(placement.Aim))}");
        }

        if (detail >= 3 && placement.NullToEngineRad is { } rad)
        {
            parts.Add($"its null is {Degrees(rad)} from the engine");
        }

        string rest = string.Join("; ", parts);
        return $"{talker} has the {MicrophoneName(kit, placement)}." + (rest.Length == 0 ? "" : $" {Capital(rest)}.");
    }

    /// <summary>Place and aim of one microphone for the legend.</summary>
    internal static string Rigging(TalkerPlacement placement)
    {
        string nulls = placement.NullToEngineRad is { } rad ? $"; null {Degrees(rad)} from the engine" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{Capital(placement.Site.Words)}, {100 * placement.Figures.MouthDistanceM:0} cm from the mouth; aimed {Aimed(placement.AimWords)}{nulls}.");
    }

    private static string OfShots(IReadOnlyList<Shot> shots, int detail) => shots.Count switch
    {
        0 => "There is no camera.",
        1 => $"There is one camera, {Camera(shots[0], detail)}.",
        _ => string.Create(CultureInfo.InvariantCulture, $"There are {shots.Count} cameras: {string.Join(", ", shots.Select(s => Camera(s, detail)))}."),
    };

    private static string Camera(Shot shot, int detail) =>
        detail >= 4 ? string.Create(CultureInfo.InvariantCulture, $"{shot.Id} ({shot.FocalLengthMm:0.#} mm)") : shot.Id;

    /// <summary>Whole sentences as long as they fit, and how many were left out.</summary>
    private static string Fitting(List<string> sentences)
    {
        string text = "";
        for (int kept = sentences.Count; kept >= 0; kept--)
        {
            int left = sentences.Count - kept;
            string end = left > 0 ? string.Create(CultureInfo.InvariantCulture, $"The picture shows {left} more.") : "";
            text = string.Join(' ', [.. sentences.Take(kept), end]).Trim();
            if (text.Length <= MaxLength)
            {
                break;
            }
        }

        return text;
    }

    internal static string MicrophoneName(Kit kit, TalkerPlacement placement) =>
        kit.Microphones.FirstOrDefault(m => m.Id == placement.MicrophoneId)?.DisplayName ?? placement.MicrophoneId;

    private static string Degrees(double rad) => string.Create(CultureInfo.InvariantCulture, $"{Angles.RadToDeg(rad):0}°");

    private static bool HasAim(Kit kit, TalkerPlacement placement) =>
        kit.Microphones.FirstOrDefault(m => m.Id == placement.MicrophoneId) is not { Pattern.B: 0 };

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    private static string Bare(string words) => words.Trim().TrimEnd('.');

    private static string Aimed(string aimWords)
    {
        string bare = Bare(aimWords);
        return bare.StartsWith("aimed ", StringComparison.OrdinalIgnoreCase) ? bare["aimed ".Length..] : bare;
    }

    private static string BodyWords(BodyStyle body) => body switch
    {
        BodyStyle.SmallHatch => "small hatchback",
        BodyStyle.Suv => "sport utility car",
        BodyStyle.PeopleCarrier => "people carrier",
        BodyStyle.PanelVan => "panel van",
        BodyStyle.BenchSeatClassic => "bench-seat classic",
        _ => body.ToString().ToLowerInvariant(),
    };

    private static string EngineWords(EngineLayout engine) => engine switch
    {
        EngineLayout.Front => "engine in front",
        EngineLayout.Middle => "engine behind the front seats",
        EngineLayout.Rear => "engine at the rear",
        _ => "electric motor",
    };
}
