using System.Globalization;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Wording;

/// <summary>The contract's enumerations and names in words.</summary>
internal static class Wordings
{
    public static string Fixing(Fixing fixing) => fixing switch
    {
        V1.Fixing.SpringClip => "spring clip",
        V1.Fixing.SuctionCup => "suction cup with tether",
        V1.Fixing.ArticulatedArm => "articulated arm",
        V1.Fixing.PaperTape => "matt paper tape",
        V1.Fixing.ElasticTie => "elastic tie",
        V1.Fixing.WeightedBase => "weighted base",
        V1.Fixing.BodyMount => "body mount",
        _ => "fixing",
    };

    public static string Reason(RefusalReason reason) => reason switch
    {
        RefusalReason.InShot => "in shot",
        RefusalReason.InMirror => "seen in the mirror",
        RefusalReason.Airbag => "in an airbag's way",
        RefusalReason.DriverView => "in the driver's view",
        RefusalReason.Fixing => "no fixing in the kit for it",
        RefusalReason.HeadClearance => "too near a head",
        RefusalReason.FreeDepth => "no room",
        RefusalReason.MovingGlass => "on glass that winds down",
        RefusalReason.BodyWorn => "nothing may be worn",
        _ => "ruled out",
    };

    public static string Pattern(PolarPattern pattern) => pattern switch
    {
        PolarPattern.Omni => "omni",
        PolarPattern.Subcardioid => "wide cardioid",
        PolarPattern.Cardioid => "cardioid",
        PolarPattern.Supercardioid => "supercardioid",
        PolarPattern.Hypercardioid => "hypercardioid",
        PolarPattern.FigureEight => "figure-eight",
        PolarPattern.InterferenceTube => "interference tube",
        _ => "pattern not stated",
    };

    public static string Effort(VocalEffort effort) => effort switch
    {
        VocalEffort.Relaxed => "relaxed",
        VocalEffort.Normal => "normal",
        VocalEffort.Raised => "raised",
        VocalEffort.Loud => "loud",
        VocalEffort.Shout => "shouting",
        VocalEffort.Whisper => "whispering",
        _ => "not stated",
    };

    public static string Body(BodyStyle body) => body switch
    {
        BodyStyle.SmallHatch => "small hatchback",
        BodyStyle.Saloon => "saloon",
        BodyStyle.Estate => "estate",
        BodyStyle.Coupe => "coupe",
        BodyStyle.Suv => "sport utility car",
        BodyStyle.PeopleCarrier => "people carrier",
        BodyStyle.Pickup => "double-cab pickup",
        BodyStyle.PanelVan => "panel van",
        BodyStyle.BenchSeatClassic => "bench-seat classic",
        _ => "car",
    };

    public static string Engine(EngineLayout engine) => engine switch
    {
        EngineLayout.Front => "engine in front",
        EngineLayout.Middle => "engine in the middle",
        EngineLayout.Rear => "engine in the rear",
        EngineLayout.Electric => "electric",
        _ => "engine not stated",
    };

    public static string Seat(string seatId) => Name(seatId).Replace('-', ' ');

    /// <summary>A name of the team's, safe to repeat.</summary>
    public static string Name(string name) => CrewText.Clean(name, CrewText.LongestName);

    public static string Name(string display, string resource) => Name(string.IsNullOrWhiteSpace(display) ? ResourceName.IdOf(resource) : display);

    public static string Talker(Scene scene, string talkerId) =>
        scene.Talkers.FirstOrDefault(t => t.Id == talkerId) is { } talker ? Name(talker.DisplayName, talker.Id) : Name(talkerId);

    public static string Microphone(Kit? kit, string microphoneId) =>
        kit?.Microphones.FirstOrDefault(m => m.Id == microphoneId) is { } microphone ? Name(microphone.DisplayName, microphone.Id) : Name(microphoneId);

    /// <summary>"a, b and c".</summary>
    public static string Join(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "",
        1 => items[0],
        _ => string.Join(", ", items.Take(items.Count - 1)) + " and " + items[^1],
    };

    public static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    public static string Capital(string text) => text.Length > 0 ? char.ToUpperInvariant(text[0]) + text[1..] : text;
}
