using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>How long batteries and media last, and when to swap.</summary>
internal static class RunTimeTopic
{
    // The meal break comes six hours after the call at the latest: common practice, no source.
    private const double LunchMin = 360;

    private const int MinutesPerDay = 24 * 60;

    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        RunTimeSaid said = asked.Request.Forecast.RunTime;
        if (Forecasts.KitOf(asked) is not { } kept)
        {
            return asked.NoScene();
        }

        if (kept.PoweredDevices.Count == 0 && kept.RecordingMedia is null)
        {
            return NoGear(asked, kept);
        }

        ShootDay? day = asked.Scene?.ShootDay;
        DateTimeOffset? start = ForecastWordings.Start(day);
        if (said.UntilMinute is not null && start is null)
        {
            return NoDay(asked);
        }

        var details = new List<string>();
        Kit kit = WithMedia(kept, said, details);
        var request = new ForecastRunTimeRequest { Setup = new RunTimeSetup { Kit = kit, Day = day }, TakesOnly = said.TakesOnly ?? false, IncludePicture = asked.IncludePicture };
        if (NeedMin(said, start, details) is { } need)
        {
            request.DurationMin = need;
        }

        if (said.BatteryC is { } battery)
        {
            request.BatteryC = battery;
        }

        if (said.MarginFraction is { } margin)
        {
            request.MarginFraction = margin;
        }

        ForecastRunTimeResponse response = await asked.Planner.Endurance.ForecastRunTimeAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        RunTimeReport report = response.Report ?? new RunTimeReport();
        details.Insert(0, Say($"{ForecastWordings.Span(report.DurationMin)}{(start is { } from ? $" from {ForecastWordings.Clock(from)}" : "")}, batteries at {UnitText.Temperature(report.BatteryC, asked.Units)}, {(request.HasMarginFraction ? request.MarginFraction : UsualMarginFraction) * 100:0} % kept back, {(request.TakesOnly ? "recording in takes only" : "recording all the time")}"));
        var shown = new RunTimeShown(report, said, start, asked.Units) { Copies = kit.RecordingMedia is { HasCopyCount: true } media ? media.CopyCount : 1 };
        return asked.Answer(RunTimeText.Headline(shown), RunTimeText.Lines(shown, asked.Request.Detailed)) with
        {
            Understood = Forecasts.Understood(asked, "run time", $"{Name(kit.DisplayName, kit.Name)}, {string.Join(", ", details)}"),
            Pictures = Asked.Pictures(response.Picture, LinkTopic.FileName(asked, "run-time"), asked.Units),
            FollowUps = FollowUps(asked, said, request.TakesOnly, day),
            Data = new Dictionary<string, IMessage> { ["runTime"] = report, ["setup"] = request.Setup },
            Memory = Forecasts.Remember(asked),
        };
    }

    // What the contract takes when nothing is said.
    private const double UsualMarginFraction = 0.2;

    private static Kit WithMedia(Kit kept, RunTimeSaid said, List<string> details)
    {
        if (said is { TrackCount: null, SampleRateHz: null, CardSizeGb: null } || kept.RecordingMedia is null)
        {
            return kept;
        }

        Kit kit = kept.Clone();
        if (said.TrackCount is { } tracks)
        {
            kit.RecordingMedia.TrackCount = tracks;
            details.Add(Say($"{tracks} tracks"));
        }

        if (said.SampleRateHz is { } rate)
        {
            kit.RecordingMedia.SampleRateHz = rate;
            details.Add(Say($"{rate / 1000.0:0.###} kHz"));
        }

        if (said.CardSizeGb is { } size)
        {
            kit.RecordingMedia.CardSizeGb = size;
            details.Add(Say($"cards of {size:0.#} GB"));
        }

        return kit;
    }

    private static double? NeedMin(RunTimeSaid said, DateTimeOffset? start, List<string> details)
    {
        if (said.UntilMinute is { } until && start is { } from)
        {
            double length = (until - from.TimeOfDay.TotalMinutes + MinutesPerDay) % MinutesPerDay;
            return length > 0 ? length : MinutesPerDay;
        }

        if (said.UntilLunch)
        {
            details.Add("lunch taken as 6 h after the start");
            return LunchMin;
        }

        return said.NeedMin;
    }

    private static IReadOnlyList<string> FollowUps(Asked asked, RunTimeSaid said, bool takesOnly, ShootDay? day)
    {
        string swaps = said.Aspect == RunTimeAspect.Swaps ? "how many cards do I need?" : "when do I swap batteries?";
        string takes = !takesOnly && day is { Takes.Count: > 0 } ? "and only rolling in takes?" : "and for 10 hours?";
        return [swaps, takes, said.BatteryC is null ? asked.Units == UnitPreference.Imperial ? "how long will the batteries last at 14 F?" : "how long will the batteries last at -10 C?" : "what runs out first?"];
    }

    private static CrewAnswer NoGear(Asked asked, Kit kit)
    {
        string[] others = [.. asked.Vocabulary.Kits.Where(k => k.PoweredDevices.Count > 0 || k.RecordingMedia is not null).Take(1).Select(k => $"what runs out first with the {Name(k.DisplayName, k.Name)}?")];
        return asked.Answer($"The {Name(kit.DisplayName, kit.Name)} says nothing of batteries and cards.", [new(CrewLineKind.Plain, "Give the kit its devices with their batteries, or what it records onto, through the planner's API, or name another kit.")]) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = [.. others, "list kits"],
            Memory = Forecasts.Remember(asked),
        };
    }

    private static CrewAnswer NoDay(Asked asked) => asked.Answer("The scene has no shoot day, so how long it is until then is not known.", [new(CrewLineKind.Plain, "Say how long it has to last, such as \"does everything last 6 hours on these batteries?\".")]) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
        FollowUps = ["do the batteries last 6 hours?"],
        Memory = Forecasts.Remember(asked with { Request = asked.Request with { Forecast = asked.Request.Forecast with { RunTime = asked.Request.Forecast.RunTime with { UntilMinute = null } } } }),
    };
}
