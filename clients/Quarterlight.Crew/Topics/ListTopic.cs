using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>Lists of what the team keeps, and one thing of them.</summary>
internal static class ListTopic
{
    private const int Most = 20;

    public static async Task<CrewAnswer> SitesAsync(Asked asked)
    {
        string? cabinName = asked.Request.CabinName ?? asked.Scene?.Cabin ?? (asked.Vocabulary.Cabins.Count > 0 ? asked.Vocabulary.Cabins[0].Name : null);
        if (cabinName is null)
        {
            return asked.NoScene();
        }

        ListMountSitesResponse all = await asked.SitesAsync(cabinName).ConfigureAwait(false);
        string car = Name(asked.Vocabulary.Cabins.FirstOrDefault(c => c.Name == cabinName)?.DisplayName ?? "", cabinName);
        IGrouping<MountFamily, MountSite>[] families = [.. all.Sites.GroupBy(s => s.Family)];
        List<CrewLine> lines =
        [
            new(CrewLineKind.Plain, $"{Capital(Join([.. families.Select(g => Say($"{SiteWords.Say(g.Key)} {g.Count()}"))]))}."),
            .. families.Select(g => new CrewLine(CrewLineKind.RunnerUp, $"{Capital(SiteWords.Say(g.Key))}: {string.Join("; ", g.Select(s => Name(s.Words)))}.")),
        ];
        return asked.Answer(Say($"{car}: {all.Sites.Count} mount sites."), lines) with
        {
            Understood = $"mount sites of the {car}",
            FollowUps = ["mount plan", "why not the visor for the driver?"],
            Data = new Dictionary<string, IMessage> { ["sites"] = all },
        };
    }

    public static CrewAnswer Scenes(Asked asked) => List(asked, "scene", asked.Vocabulary.Scenes.Count, asked.Vocabulary.Scenes.Select(s =>
        Say($"{Name(s.DisplayName, s.Name)}: {s.Talkers.Count} {(s.Talkers.Count == 1 ? "talker" : "talkers")}, {s.Shots.Count} {(s.Shots.Count == 1 ? "camera" : "cameras")}, {DriveText.Whole(s.DriveConditions, asked.Units)}")),
        asked.Vocabulary.Scenes.Select(s => (s.Name, (IMessage)s)), "mount plan for " + Name(asked.Scene?.DisplayName ?? "the scene"));

    public static CrewAnswer Cabins(Asked asked) => List(asked, "car", asked.Vocabulary.Cabins.Count, asked.Vocabulary.Cabins.Select(Line),
        asked.Vocabulary.Cabins.Select(c => (c.Name, (IMessage)c)), "what sites are there?");

    public static CrewAnswer Kits(Asked asked) => List(asked, "kit", asked.Vocabulary.Kits.Count, asked.Vocabulary.Kits.Select(Line),
        asked.Vocabulary.Kits.Select(k => (k.Name, (IMessage)k)), asked.Vocabulary.Kits.Count > 0 ? "show " + Name(asked.Vocabulary.Kits[0].DisplayName, asked.Vocabulary.Kits[0].Name) : "load demo");

    public static CrewAnswer Show(Asked asked)
    {
        string name = asked.Request.ShownName ?? "";
        if (asked.Vocabulary.Kits.FirstOrDefault(k => k.Name == name) is { } kit)
        {
            List<CrewLine> lines = [.. kit.Microphones.Select(m => new CrewLine(CrewLineKind.Plain,
                Say($"{m.Count} × {Name(m.DisplayName, m.Id)}: {Pattern(m.Pattern)}, {UnitText.Length(m.BodyLengthM, asked.Units)} long, {m.SensitivityMvPerPa:0.#} mV/Pa, self-noise {m.SelfNoiseDba:0} dB(A), up to {m.MaxLevelDb:0} dB; held by {Join([.. m.Fixings.Select(Fixing)])}")))];
            lines.Add(new(CrewLineKind.Plain, $"Fixings: {Join([.. kit.Fixings.Select(f => Say($"{f.Count} × {Fixing(f.Fixing)}"))])}"));
            lines.AddRange(KitRadio(kit).Select(l => new CrewLine(CrewLineKind.Plain, l)));
            return Shown(asked, Line(kit), lines, kit);
        }

        if (asked.Vocabulary.Cabins.FirstOrDefault(c => c.Name == name) is { } cabin)
        {
            return Shown(asked, Line(cabin), [], cabin);
        }

        if (asked.Vocabulary.Scenes.FirstOrDefault(s => s.Name == name) is not { } scene)
        {
            return asked.NoScene();
        }

        List<CrewLine> about = [.. scene.Talkers.Select(t => new CrewLine(CrewLineKind.Plain,
            Say($"{Name(t.DisplayName, t.Id)}: seat {Seat(t.SeatId)}, {Effort(t.VocalEffort)}, {t.HeadPoses.Count} head pose{(t.HeadPoses.Count == 1 ? "" : "s")}{(t.NoBodyWorn ? ", nothing worn" : "")}")))];
        about.AddRange(scene.Shots.Select(s => new CrewLine(CrewLineKind.Plain, Say($"Camera {Name(s.Id)}: {s.FocalLengthMm:0.#} mm on a {s.SensorWidthMm:0.##} × {s.SensorHeightMm:0.##} mm sensor"))));
        about.Add(new(CrewLineKind.Plain, Capital(DriveText.Whole(scene.DriveConditions, asked.Units))));
        if (scene.FollowCar is { } follow)
        {
            string country = follow.CountryCode.Length > 0 ? CountryReader.Say(follow.CountryCode) : "country not known";
            about.Add(new(CrewLineKind.Plain, Say($"Follow car: {UnitText.Distance(follow.GapM, asked.Units)} behind, {RadioWordings.Surroundings(follow.Surroundings)}, {country}, {follow.Stations.Count} stations heard")));
        }

        return Shown(asked, $"{Name(scene.DisplayName, scene.Name)}: {Name(asked.Cabin?.DisplayName ?? "", scene.Cabin)}, {Name(asked.Vocabulary.KitOf(scene)?.DisplayName ?? "", scene.Kit)}.", about, scene);
    }

    public static CrewAnswer Use(Asked asked) => asked.Scene is not { } scene ? asked.NoScene()
        : asked.Answer($"Talking about {Name(scene.DisplayName, scene.Name)} from now on.", []) with
        {
            Understood = $"scene {Name(scene.DisplayName, scene.Name)}",
            FollowUps = ["where do the mics go?", "show the scene"],
            Memory = asked.Memory with { SceneName = scene.Name, Plan = null, LastChanges = null },
        };

    private static CrewAnswer Shown(Asked asked, string headline, IReadOnlyList<CrewLine> lines, IMessage shown) => asked.Answer(headline, lines) with
    {
        Understood = "show " + shown switch
        {
            Scene scene => Name(scene.DisplayName, scene.Name),
            Cabin cabin => Name(cabin.DisplayName, cabin.Name),
            Kit kit => Name(kit.DisplayName, kit.Name),
            _ => asked.Request.ShownName,
        },
        FollowUps = ["mount plan"],
        Data = new Dictionary<string, IMessage> { ["shown"] = shown },
    };

    private static CrewAnswer List(Asked asked, string what, int count, IEnumerable<string> items, IEnumerable<(string Name, IMessage Message)> messages, string next)
    {
        if (count == 0)
        {
            return asked.Answer($"No {what}s are kept yet.", [new(CrewLineKind.Plain, "Say \"load demo\" for invented ones to try.")]) with { FollowUps = ["load demo"] };
        }

        List<CrewLine> lines = [.. items.Take(Most).Select(i => new CrewLine(CrewLineKind.Plain, i))];
        if (count > Most)
        {
            lines.Add(new(CrewLineKind.Plain, Say($"And {count - Most} more; name one to see it.")));
        }

        return asked.Answer(Say($"{count} {what}{(count == 1 ? "" : "s")}."), lines) with
        {
            Understood = $"list {what}s",
            FollowUps = [next],
            Data = messages.ToDictionary(m => m.Name, m => m.Message),
        };
    }

    private static string Line(Cabin cabin) =>
        $"{Name(cabin.DisplayName, cabin.Name)}: {Body(cabin.BodyStyle)}, {(cabin.DriveSide == DriveSide.Right ? "right" : "left")}-hand drive, {Engine(cabin.EngineLayout)}{(cabin.Measurements is null ? ", typical sizes" : ", measured")}.";

    private static IEnumerable<string> KitRadio(Kit kit)
    {
        if (kit.LinkGear is { } gear)
        {
            yield return $"Link to the follow car: {RadioWordings.Frequency(gear.FrequencyMhz)}, {RadioWordings.Power(gear)}, {(gear.AnalogueFm is null ? "digital" : "analogue FM")}";
        }

        foreach (WirelessTransmitter t in kit.WirelessTransmitters)
        {
            yield return Say($"{t.Count} × {Name(t.DisplayName, t.Id)}: {Join([.. t.TuningRanges.Select(r => Say($"{r.LowMhz:0.###} to {r.HighMhz:0.###} MHz"))])}, steps of {t.StepKhz:0.###} kHz");
        }
    }

    private static string Line(Kit kit) =>
        Say($"{Name(kit.DisplayName, kit.Name)}: {kit.Microphones.Sum(m => m.Count)} microphones of {kit.Microphones.Count} kinds, {kit.RecorderInputCount} recorder inputs.");
}
