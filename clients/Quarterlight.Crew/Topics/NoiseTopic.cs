using Google.Protobuf;
using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Topics;

/// <summary>How loud it is in the car, and how fast the scene still works.</summary>
internal static class NoiseTopic
{
    public static async Task<CrewAnswer> AnswerAsync(Asked asked)
    {
        NoiseSaid said = asked.Request.Forecast.Noise;
        if (Forecasts.CabinOf(asked) is not { } cabin)
        {
            return asked.NoScene();
        }

        DriveConditions drive = await Forecasts.DriveAsync(asked, cabin).ConfigureAwait(false);
        var request = new ForecastNoiseRequest { IncludePicture = asked.IncludePicture, PictureInMph = asked.Units == UnitPreference.Imperial };
        if (asked.Scene is { } scene)
        {
            (request.Scene, request.Changes) = (scene.Name, await Forecasts.ChangesAsync(asked).ConfigureAwait(false));
        }
        else
        {
            request.Setup = new NoiseSetup { Cabin = cabin, DriveConditions = drive };
        }

        ForecastNoiseResponse response = await asked.Planner.Noise.ForecastNoiseAsync(request, asked.Planner.Options(asked.Cancellation)).ConfigureAwait(false);
        NoiseReport report = response.Report ?? new NoiseReport();
        var shown = new NoiseShown(report, drive, said, asked.Units);
        return asked.Answer(NoiseText.Headline(shown), NoiseText.Lines(shown, asked.Request.Detailed)) with
        {
            Understood = Forecasts.Understood(asked, "noise", DriveText.Whole(drive, asked.Units)),
            Pictures = Asked.Pictures(response.Picture, LinkTopic.FileName(asked, "noise"), asked.Units),
            FollowUps = FollowUps(asked, said, drive),
            Data = new Dictionary<string, IMessage> { ["noise"] = report },
            Memory = Forecasts.Remember(asked),
        };
    }

    private static IReadOnlyList<string> FollowUps(Asked asked, NoiseSaid said, DriveConditions drive)
    {
        string change = drive.Rain is Rain.Light or Rain.Heavy ? "and dry?" : drive.OpenWindows.Count == 0 ? "and with the windows half down?" : "and in the rain?";
        string next = said.Aspect == NoiseAspect.Fastest ? "give the AD a table" : "how fast can we go?";
        return [next, change, asked.Scene is { Route.Count: > 0 } ? "where on the route is it quiet?" : "what's the loudest noise?"];
    }
}
