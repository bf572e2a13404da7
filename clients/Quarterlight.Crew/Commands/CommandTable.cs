using Quarterlight.Crew.Commands.Options;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Topics;
using static Quarterlight.Crew.Commands.ReadableOption;

namespace Quarterlight.Crew.Commands;

/// <summary>A command that is read here: its options with their readers, and the request it makes.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Description">What it answers.</param>
/// <param name="Intent">What a refusal of it is about.</param>
/// <param name="Build">Makes the request.</param>
/// <param name="Options">Its options.</param>
internal sealed record ReadableCommand(string Name, string Description, CrewIntent Intent, Func<CommandSaid, CrewRequest> Build, params ReadableOption[] Options)
{
    public string? MessageMenuName { get; init; }

    public bool Private { get; init; }

    public bool Changes { get; init; }

    /// <summary>True when it takes a file.</summary>
    public bool TakesFile { get; init; }

    /// <summary>Says that at least one option is needed; empty when none is.</summary>
    public string NeedsOne { get; init; } = "";

    public CrewCommand Offered => new(Name, Description, [.. Options.Select(o => o.Option).OrderByDescending(o => o.Required)]) { MessageMenuName = MessageMenuName, Private = Private, Changes = Changes };
}

/// <summary>The commands that are read here, in the order they are offered.</summary>
internal static class CommandTable
{
    public static readonly ReadableOption File = new(new CrewOption("file", "Sound file to judge, up to 200 MiB", CrewOptionKind.File), "send a sound file with it", (_, said) => said);

    private static readonly ReadableOption Details = Flag("details", "Yes gives all figures", (said, on) => said with { Detailed = on });

    private static readonly ReadableOption Topic = Choice("topic", "What you want to know more about", [.. HelpTopic.Topics.Select(t => (t.Name, t.Value, t.Value))], (text, said) => said with { Topic = text.Text });

    public static IReadOnlyList<ReadableCommand> All { get; } =
    [
        new("plan", "Where the microphones go, with a picture", CrewIntent.Plan, CommandRequests.Plan, TeamOptions.Scene, CommandShow.Plan),
        new("why", "Why a place is, or is not, a good one for a microphone", CrewIntent.WhySite, CommandRequests.Why, TeamOptions.Site.Required(), TeamOptions.Talker, TeamOptions.Scene),
        new("what-if", "The plan again under other conditions, beside the plan as it stands", CrewIntent.WhatIf, CommandRequests.WhatIf,
            DriveOptions.Windows, DriveOptions.Speed, DriveOptions.Road, DriveOptions.Rain, DriveOptions.Fan, DriveOptions.Engine,
            TeamOptions.WithoutMic, TeamOptions.OnlyMic, TeamOptions.WithoutShot, TeamOptions.WithoutSite, TeamOptions.Kit, TeamOptions.Car, TeamOptions.Scene)
        { NeedsOne = "Say what is to change, such as windows: down or speed: 60 km/h." },
        new("sites", "All places in the car that can hold a microphone", CrewIntent.ListSites, CommandRequests.Sites, TeamOptions.Car, TeamOptions.Scene),
        new("link", "How far the follow car can fall back before the radio link fails", CrewIntent.LinkCheck, CommandRequests.Link,
            LinkOptions.Distance, LinkOptions.Surroundings, LinkOptions.Between, DriveOptions.Speed, LinkOptions.Country, LinkOptions.Frequency, LinkOptions.Power, LinkOptions.Stereo,
            LinkOptions.Antenna, LinkOptions.FollowAntenna, LinkOptions.Reliability, Details, TeamOptions.Kit, TeamOptions.Scene),
        new("law", "What you may radiate where you are, and who to ask", CrewIntent.LinkLaw, CommandRequests.Law,
            LinkOptions.Country, LinkOptions.Frequency, LinkOptions.Power, LinkOptions.OfMicrophones, Details, TeamOptions.Kit, TeamOptions.Scene),
        new("channels", "Channels for the radio microphones that do not disturb each other", CrewIntent.Channels, CommandRequests.Channels,
            ChannelOptions.Count, ChannelOptions.Range, ChannelOptions.Check, ChannelOptions.Avoid, ChannelOptions.Spacing, ChannelOptions.Step, ChannelOptions.FifthOrder, LinkOptions.Country, Details, TeamOptions.Kit, TeamOptions.Scene),
        new("quiet-channel", "FM channels for the link that are least disturbed", CrewIntent.QuietChannel, CommandRequests.QuietChannel,
            LinkOptions.Heard, LinkOptions.Distance, LinkOptions.Country, TeamOptions.Kit, TeamOptions.Scene),
        new("heat", "How long a take may run with the fan off before it is too hot", CrewIntent.HeatForecast, CommandRequests.Heat,
            HeatOptions.Start, HeatOptions.Outside, HeatOptions.Humidity, HeatOptions.Clouds, HeatOptions.Shade, HeatOptions.Cover, HeatOptions.Facing, HeatOptions.People, HeatOptions.Roll, HeatOptions.Day,
            HeatOptions.ParkedSince, HeatOptions.ParkedFor, HeatOptions.LockedIn, HeatOptions.Limit, HeatOptions.CoolTo, DriveOptions.Speed, DriveOptions.Windows, CommandShow.Heat, Details, TeamOptions.Car, TeamOptions.Scene),
        new("levels", "Gain, pad and safety track for each microphone", CrewIntent.Levels, CommandRequests.Levels,
            GearOptions.Effort, TeamOptions.Talker, GearOptions.Headroom, GearOptions.Wireless, CommandShow.Levels, Details, TeamOptions.Kit, TeamOptions.Scene),
        new("run-time", "How long batteries and cards last, and when to swap", CrewIntent.RunTime, CommandRequests.RunTime,
            GearOptions.Until, GearOptions.For, GearOptions.TakesOnly, GearOptions.BatteryTemperature, GearOptions.Reserve, GearOptions.Tracks, GearOptions.SampleRate, GearOptions.CardSize, CommandShow.RunTime, Details, TeamOptions.Kit, TeamOptions.Scene),
        new("noise", "How loud it is in the car, and how fast the scene still works", CrewIntent.NoiseForecast, CommandRequests.Noise,
            DriveOptions.Speed, DriveOptions.Road, DriveOptions.Windows, DriveOptions.Fan, DriveOptions.Rain, DriveOptions.Engine, CommandShow.Noise, Details, TeamOptions.Car, TeamOptions.Scene),
        new("route", "Which stretches of the route are quiet enough to roll on", CrewIntent.QuietStretches, CommandRequests.Route,
            DriveOptions.Windows, DriveOptions.Fan, DriveOptions.Rain, Details, TeamOptions.Scene),
        new("clip", "Whether a test clip can be used, why, and what to change", CrewIntent.JudgeClip, CommandRequests.Clip, File.Required(), TeamOptions.Talker, GearOptions.Cylinders, TeamOptions.Scene)
        { MessageMenuName = "Judge this clip", TakesFile = true },
        new("scene list", "The team's scenes", CrewIntent.ListScenes, said => said.Request(CrewIntent.ListScenes)),
        new("scene show", "A scene: who talks, cameras, driving", CrewIntent.Show, CommandRequests.ShowScene, TeamOptions.Scene),
        new("scene use", "Talk about this scene from now on", CrewIntent.UseScene, said => said.Request(CrewIntent.UseScene), TeamOptions.Scene.Required().Described("Scene to talk about")),
        new("car list", "The team's cars", CrewIntent.ListCabins, said => said.Request(CrewIntent.ListCabins)),
        new("car show", "A car: shape, driver's side, engine", CrewIntent.Show, CommandRequests.ShowCar, TeamOptions.Car.Described("Car to show; the scene's when left out")),
        new("kit list", "The team's kits", CrewIntent.ListKits, said => said.Request(CrewIntent.ListKits)),
        new("kit show", "A kit: microphones, fixings, radio gear", CrewIntent.Show, CommandRequests.ShowKit, TeamOptions.Kit.Described("Kit to show; the scene's when left out")),
        new("demo", "Loads invented scenes, cars and kits to try things on", CrewIntent.LoadDemo, said => said.Request(CrewIntent.LoadDemo)) { Changes = true },
        new("help", "What can be asked, with examples", CrewIntent.Help, said => said.Request(CrewIntent.Help) with { HelpTopic = said.Topic }, Topic) { Private = true },
    ];
}
