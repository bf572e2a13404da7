using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;
using static Quarterlight.Crew.Wording.Wordings;

namespace Quarterlight.Crew.Topics;

/// <summary>How long a take may run before it is too hot, and how long to cool.</summary>
internal static class HeatTopic
{
    // Judgement: less than a third of the day rolling is no day's work.
    private const double LittleFraction = 1.0 / 3;

    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        HeatSaid said = asked.Request.Forecast.Heat;
        if (Forecasts.CabinOf(asked) is not { } cabin)
        {
            return asked.NoScene();
        }

        var assumed = new List<string>();
        if (Forecasts.CabinGuessed(asked))
        {
            assumed.Add($"the {Name(cabin.DisplayName, cabin.Name)} taken for granted");
        }

        if (ShootDays.Of(asked, assumed) is not { } day)
        {
            return NoWeather(asked);
        }

        // What shade would buy is asked of the car as it stands, and of the car in that shade.
        ShootDay? tried = said.Aspect == HeatAspect.Gains && (said.Shade is not null || said.Cover is not null) ? day.Clone() : null;
        if (tried is not null)
        {
            (day.Shade, day.Cover) = (asked.Scene?.ShootDay?.Shade ?? CarShade.None, asked.Scene?.ShootDay?.Cover ?? SunCover.None);
        }

        DriveConditions drive = await Forecasts.DriveAsync(asked, cabin).ConfigureAwait(false);
        var request = new ForecastHeatRequest
        {
            Setup = new HeatSetup { Cabin = cabin, SpeedKmPerHour = drive.SpeedKmPerHour, OpenWindows = drive.OpenWindows.Sum(w => w.OpenFraction), Day = day },
            RhythmLimit = said.Limit ?? HeatLimitKind.Comfort,
            IncludePicture = asked.IncludePicture,
            PictureInFahrenheit = asked.Units == UnitPreference.Imperial,
        };
        if (said.RollMin is { } roll)
        {
            request.RollMin = roll;
        }

        ForecastHeatResponse response = await asked.Planner.Endurance.ForecastHeatAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        HeatReport report = response.Report ?? new HeatReport();
        var shown = new HeatShown(report, request.Setup, said, asked.Units)
        {
            Tried = tried is null ? null : await TryAsync(asked, request, tried).ConfigureAwait(false),
            Cautious = LittleComfort(report, said) ? await CautiousAsync(asked, request).ConfigureAwait(false) : null,
        };
        string rolling = $"{(drive.SpeedKmPerHour > 0 ? UnitText.Speed(drive.SpeedKmPerHour, asked.Units) : "standing")}, {(drive.OpenWindows.Count > 0 ? "windows open" : "windows shut")} and fan off while rolling";
        return asked.Answer(HeatText.Headline(shown), HeatText.Lines(shown, asked.Request.Detailed)) with
        {
            Understood = Forecasts.Understood(asked, "heat", string.Join(", ", [ShootDays.Say(day, asked.Units), rolling, .. assumed])),
            Pictures = Asked.Pictures(response.Picture, LinkTopic.FileName(asked, "heat"), asked.Units),
            FollowUps = FollowUps(said, day),
            Data = new Dictionary<string, IMessage> { ["heat"] = report, ["setup"] = request.Setup },
            Memory = Forecasts.Remember(asked),
        };
    }

    // Where comfort leaves little of the day, the crew's next question is what caution would leave.
    private static bool LittleComfort(HeatReport report, HeatSaid said) =>
        said.Limit is null && !report.Strictest && (report.Rhythm?.RollingFraction ?? 0) < LittleFraction && report.Limits is [{ HasMinutes: true } comfort, ..] && !HeatShown.IsCold(comfort);

    private static async Task<ShootingRhythm?> CautiousAsync(Asked asked, ForecastHeatRequest request) =>
        (await AlsoAsync(asked, request, other => other.RhythmLimit = HeatLimitKind.Caution).ConfigureAwait(false)).Rhythm;

    // The same question with one thing changed, for a line of the answer: no picture.
    private static async Task<HeatReport> AlsoAsync(Asked asked, ForecastHeatRequest request, Action<ForecastHeatRequest> change)
    {
        ForecastHeatRequest other = request.Clone();
        other.IncludePicture = false;
        change(other);
        return (await asked.Planner.Endurance.ForecastHeatAsync(other, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false)).Report ?? new HeatReport();
    }

    private static async Task<HeatOption> TryAsync(Asked asked, ForecastHeatRequest request, ShootDay tried)
    {
        HeatReport report = await AlsoAsync(asked, request, other => other.Setup.Day = tried).ConfigureAwait(false);
        HeatLimitKind kept = request.RhythmLimit;
        var option = new HeatOption { Words = asked.Request.Forecast.Heat.Shade is { } shade ? ForecastWordings.Shade(shade) : ForecastWordings.Cover(tried.Cover), RollingFraction = report.Rhythm?.RollingFraction ?? 0 };
        if (report.Limits.FirstOrDefault(l => l.Kind == kept) is { HasMinutes: true } limit)
        {
            option.Minutes = limit.Minutes;
        }

        if (report.HasPrecoolMin)
        {
            option.PrecoolMin = report.PrecoolMin;
        }

        return option;
    }

    private static CrewAnswer NoWeather(Asked asked)
    {
        string example = asked.Units == UnitPreference.Imperial ? "it's 95 out, 40 % humidity, how long can we roll?" : "it's 35 C out, 40 % humidity, how long can we roll?";
        string who = asked.Scene is { } scene ? $"{Name(scene.DisplayName, scene.Name)} has no shoot day" : "There is no scene";
        return asked.Answer($"{who}, so how warm it is outside is not known.", [new(CrewLineKind.Plain, $"Say it with the question, such as \"{example}\". The time helps too: \"at 14:00\".")]) with
        {
            Outcome = CrewOutcome.Refused,
            Private = true,
            FollowUps = [example, .. Forecasts.OtherScenes(asked, s => s.ShootDay is not null).Select(s => $"how long can we roll in the {s}?")],
            Memory = Forecasts.Remember(asked),
        };
    }

    private static IReadOnlyList<string> FollowUps(HeatSaid said, ShootDay day)
    {
        string how = said.Aspect == HeatAspect.Rhythm ? "how long do we cool first?" : "what rhythm of rolling and cooling?";
        string shade = day.Shade <= CarShade.None && day.Cover <= SunCover.None ? said.Aspect == HeatAspect.Gains ? "and under the pop-up?" : "what would shade buy us?" : "and in full sun?";
        int hour = ForecastWordings.Start(day)!.Value.Hour;
        return [how, shade, hour is >= 11 and < 18 ? "and at 09:00?" : "and at 14:00?"];
    }
}
