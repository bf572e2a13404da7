using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>The link to the follow car: how far it may drop back, and on which FM channel.</summary>
internal static class LinkTopic
{
    private const int MostQuietChannels = 5;

    public static async Task<CrewAnswer> CheckAsync(Asked asked)
    {
        var assumed = new List<string>();
        if (LinkSetups.Gear(asked, assumed) is not { } gear)
        {
            return NoGear(asked);
        }

        if (LinkSetups.FollowCar(asked, null) is not { } followCar)
        {
            return NoFollowCar(asked);
        }

        var request = new CheckLinkRequest { Setup = LinkSetups.Setup(asked, gear, followCar), IncludePicture = asked.IncludePicture, PictureInFeet = asked.Units == UnitPreference.Imperial };
        CheckLinkResponse response = await asked.Planner.Radio.CheckLinkAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        LinkReport report = response.Report ?? new LinkReport();
        return asked.Answer(LinkText.Headline(report, request.Setup, asked.Request.Radio.GapM is not null, asked.Units), LinkText.Lines(report, request.Setup, asked.Units, asked.Request.Detailed)) with
        {
            Understood = Understood(asked, "link check", LinkSetups.Said(asked, request.Setup, assumed)),
            Pictures = Asked.Pictures(response.Picture, FileName(asked, "link"), asked.Units),
            FollowUps = FollowUps(gear, followCar),
            Data = new Dictionary<string, IMessage> { ["link"] = report, ["setup"] = request.Setup },
            Memory = Remember(asked),
        };
    }

    public static async Task<CrewAnswer> QuietAsync(Asked asked)
    {
        var assumed = new List<string>();
        if (LinkSetups.Gear(asked, assumed) is not { } gear)
        {
            return NoGear(asked);
        }

        if (gear.AnalogueFm is null)
        {
            return NotFm(asked);
        }

        FollowCar followCar = LinkSetups.FollowCar(asked, LinkSetups.NeutralGapM)!;
        var request = new FindQuietChannelsRequest { Setup = LinkSetups.Setup(asked, gear, followCar), ChannelCount = MostQuietChannels };
        FindQuietChannelsResponse response = await asked.Planner.Radio.FindQuietChannelsAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        List<CrewLine> lines = [.. ChannelText.Quiet(response.Channels, asked.Units).Select(l => new CrewLine(CrewLineKind.Figures, l))];
        if (followCar.Stations.Count == 0)
        {
            lines.Add(new(CrewLineKind.Plain, "No stations were given, so only noise counts: say what you hear, such as \"I hear 97.7 strong and 98.5 faint\"."));
        }

        if (response.Raster.Length > 0)
        {
            lines.Add(new(CrewLineKind.Plain, $"Channels looked at: {RadioWordings.Sentence(response.Raster, asked.Units)}."));
        }

        lines.AddRange(RadioWordings.Cautions(response.Advisories, asked.Units, 2));
        string heard = followCar.Stations.Count == 0 ? "no stations given" : "stations " + Join([.. followCar.Stations.Take(6).Select(Station)]);
        string first = response.Channels.Count > 0 ? Say($"what range do we get on {response.Channels[0].FrequencyMhz:0.0##}?") : "how far can we fall back?";
        return asked.Answer(ChannelText.Quietest(response.Channels), lines) with
        {
            Understood = Understood(asked, "quietest FM channel", $"{heard}, {(followCar.CountryCode.Length > 0 ? CountryReader.Say(followCar.CountryCode) : "country not known")}, gap {UnitText.Distance(followCar.GapM, asked.Units)}"),
            FollowUps = [first, "what can I legally radiate?"],
            Data = new Dictionary<string, IMessage> { ["quietChannels"] = response, ["setup"] = request.Setup },
            Memory = Remember(asked),
        };
    }

    /// <summary>The conversation from now on, with the question to go on from.</summary>
    public static CrewMemory Remember(Asked asked) => asked.Memory with { SceneName = asked.Request.SceneName, LastRadio = new RadioMemory(asked.Request.Intent, asked.Request.Radio) };

    /// <summary>What was understood, with the scene it is about, if any.</summary>
    public static string Understood(Asked asked, string what, string details)
    {
        string scene = asked.Scene is { } s ? $" for {Name(s.DisplayName, s.Name)}" : "";
        string kit = asked.Request.Radio.KitName is not null && LinkSetups.KitOf(asked) is { } k ? $" with the {Name(k.DisplayName, k.Name)}" : "";
        return PlanTopic.Understood(asked, $"{what}{scene}{kit}: {details}");
    }

    public static string FileName(Asked asked, string what) => asked.Scene is { } scene ? $"{scene.Name}-{what}" : what;

    private static CrewAnswer NoFollowCar(Asked asked) => asked.Answer($"{SceneName(asked)} has no follow car, so the gap is not known.",
        [new(CrewLineKind.Plain, asked.Units == UnitPreference.Imperial ? "Say the gap with the question, such as \"will the link hold at 50 yards?\"." : "Say the gap with the question, such as \"will the link hold at 50 m?\".")]) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = [asked.Units == UnitPreference.Imperial ? "will the link hold at 50 yards?" : "will the link hold at 50 m?", "what can I legally radiate?"],
        Memory = Remember(asked),
    };

    private static CrewAnswer NoGear(Asked asked) => asked.Answer($"{KitName(asked)} has no transmitter for a follow car.",
        [new(CrewLineKind.Plain, "Say its frequency and power with the question, such as \"will the link hold at 50 m on 98.1 MHz with 50 mW?\", or name another kit.")]) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = ["will the link hold at 50 m on 98.1 MHz with 50 mW?", "is 50 mW on 98.1 MHz legal?", "list kits"],
        Memory = Remember(asked),
    };

    private static CrewAnswer NotFm(Asked asked)
    {
        Kit? other = asked.Vocabulary.Kits.FirstOrDefault(k => k.LinkGear?.AnalogueFm is not null);
        string? next = other is null ? null : $"which FM channel is quietest with the {Name(other.DisplayName, other.Name)}?";
        return asked.Answer($"The link of {KitName(asked, lower: true)} is not analogue FM, so no FM channel is needed.", next is null ? [] : [new(CrewLineKind.Plain, $"Ask \"{next}\" for one that is.")]) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = [.. new[] { next, "how far can we fall back?" }.OfType<string>()],
            Memory = Remember(asked),
        };
    }

    private static string SceneName(Asked asked) => asked.Scene is { } scene ? $"The scene {Name(scene.DisplayName, scene.Name)}" : "The team";

    private static string KitName(Asked asked, bool lower = false) => LinkSetups.KitOf(asked) is { } kit ? $"{(lower ? "the" : "The")} {Name(kit.DisplayName, kit.Name)}" : lower ? "this scene" : "This scene";

    private static string Station(HeardStation station) => Say($"{RadioWordings.Frequency(station.FrequencyMhz)} {(station.HasFieldDbuvPerM ? Say($"at {station.FieldDbuvPerM:0} dBµV/m") : station.Strength switch { StationStrength.Faint => "faint", StationStrength.Strong => "strong", _ => "clear" })}");

    private static IReadOnlyList<string> FollowUps(LinkGear gear, FollowCar followCar)
    {
        bool inside = gear.TransmitAntenna?.Place is AntennaPlace.InCabin or AntennaPlace.OnGlass;
        string change = inside ? "and with the antenna on the roof?" : gear.AnalogueFm is { Stereo: true } ? "and in mono?" : followCar.Sight <= LinkSight.Clear ? "and with a truck between?" : "and with nothing between?";
        return [change, "what can I legally radiate?", gear.AnalogueFm is null ? "and in a tunnel?" : "which FM channel is quietest?"];
    }
}
