using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests.Noise;

public class RouteSurveyTests
{
    private static readonly NoiseTask s_plain = Questions.Planned(Questions.Drive(0));

    [Fact]
    public void Run_RoomToSpare_DrivesAtTheLimitOrWithTraffic()
    {
        RouteReport report = Run(s_plain, new("a", 1000, 48.28), new("b", 1000, 50, null, 30), new("c", 1000, 40, null, 60));
        Assert.Equal([48.28, 30, 40], report.Stretches.Select(s => s.SpeedKmPerHour));
        Assert.All(report.Stretches, s => Assert.Equal(SceneVerdict.Works, s.Noise.Verdict));
        Assert.Equal([0, 1000, 2000], report.Stretches.Select(s => s.StartM));
        Assert.Equal(1000 / (30 / 3.6), report.Stretches[1].DurationS, 1e-9);
        QuietRun run = Assert.Single(report.QuietRuns);
        Assert.Equal(("a", "c", 0.0, 3000.0, SceneVerdict.Works), (run.FirstLabel, run.LastLabel, run.StartM, run.LengthM, run.Verdict));
        Assert.Equal(report.Stretches.Sum(s => s.DurationS), run.DurationS, 1e-9);
        Assert.DoesNotContain(report.Advisories, a => a.Code == "slower-than-traffic");
    }

    [Fact]
    public void Run_FastRoad_GoesAsFastAsItWorks()
    {
        double fastest = NoiseSurvey.Run(s_plain).FastestWorksKmPerHour!.Value;
        RouteReport report = Run(s_plain, new("motorway", 5000, 130), new("motorway", 5000, 130, null, null, true), new("queue", 500, 130, null, 25.5, true));
        Assert.Equal([fastest, 130, 25.5], report.Stretches.Select(s => s.SpeedKmPerHour));
        Assert.Equal([SceneVerdict.Works, SceneVerdict.Unusable, SceneVerdict.Works], report.Stretches.Select(s => s.Noise.Verdict!.Value));
        Assert.Contains("1 of 3", Assert.Single(report.Advisories, a => a.Code == "slower-than-traffic").Message, StringComparison.Ordinal);
        Assert.Equal([5000.0, 500], report.QuietRuns.Select(r => r.LengthM));
    }

    [Fact]
    public void Run_WorksNowhere_TakesCareElseGoesWithTheTraffic()
    {
        NoiseTask care = Questions.Covering(1, Questions.Drive(0)), hopeless = Questions.Planned(Questions.Louder(Questions.Drive(0), 40));
        double fastest = NoiseSurvey.Run(care).FastestWithCareKmPerHour!.Value;
        StretchNoise careful = Run(care, new RouteStretch("a", 100, 130)).Stretches[0];
        Assert.Equal((fastest, SceneVerdict.WithCare), (careful.SpeedKmPerHour, careful.Noise.Verdict));
        RouteReport none = Run(hopeless, new("a", 100, 70), new("b", 100, 50));
        Assert.Equal([70.0, 50], none.Stretches.Select(s => s.SpeedKmPerHour));
        Assert.Empty(none.QuietRuns);
        Assert.Contains(none.Advisories, a => a.Code == "no-quiet-stretch");
    }

    [Fact]
    public void Run_RoadOfAStretch_ReplacesTheScenes()
    {
        RouteReport report = Run(s_plain, new("a", 100, 60), new("b", 100, 60, RoadSurface.Concrete), new("c", 100, 60, RoadSurface.SmoothAsphalt));
        Assert.Equal(report.Stretches[0].Noise.NoiseDba, report.Stretches[2].Noise.NoiseDba);
        Assert.True(report.Stretches[1].SpeedKmPerHour < 60);
        Assert.Equal(SceneVerdict.Works, report.Stretches[1].Noise.Verdict);
    }

    [Fact]
    public void Run_NobodyTalks_DrivesAtTheLimitWithoutVerdict()
    {
        RouteReport report = Run(Questions.Unplanned(Questions.Drive(0)), new("a", 100, 90), new("b", 100, 130));
        Assert.Equal([90.0, 130], report.Stretches.Select(s => s.SpeedKmPerHour));
        Assert.All(report.Stretches, s => Assert.Null(s.Noise.Verdict));
        Assert.Empty(report.QuietRuns);
        Assert.DoesNotContain(report.Advisories, a => a.Code == "no-quiet-stretch");
    }

    // A run to be used with care holds the runs that work; each is listed once, longest in time first.
    [Fact]
    public void Run_MixedRoute_JoinsStretchesThatWorkAndThatWorkWithCare()
    {
        RouteReport report = Run(
            s_plain,
            new("1", 1000, 30), new("2", 1000, 30), new("3", 1000, 95, null, null, true), new("4", 1000, 30),
            new("5", 1000, 130, null, null, true), new("6", 3000, 30));
        Assert.Equal(
            [("1", "4", SceneVerdict.WithCare), ("6", "6", SceneVerdict.Works), ("1", "2", SceneVerdict.Works), ("4", "4", SceneVerdict.Works)],
            report.QuietRuns.Select(r => (r.FirstLabel, r.LastLabel, r.Verdict)));
        Assert.Equal(report.QuietRuns.OrderByDescending(r => r.DurationS), report.QuietRuns);
    }

    // Seeded: no whole speed up to what limit and traffic allow is better, or as good and faster.
    [Fact]
    public void Run_AnyRoute_AdvisesTheBestSpeedThereIs()
    {
        var random = new Random(11);
        for (int i = 0; i < 6; i++)
        {
            NoiseTask task = Questions.Planned(Questions.Louder(Questions.Drive(0), random.Next(14)));
            RouteStretch[] route =
            [
                .. Enumerable.Range(0, 30).Select(n => new RouteStretch($"{n}", 10 + random.Next(5000), 5 + random.Next(126), (RoadSurface)random.Next(5), random.Next(2) == 0 ? null : 5 + random.Next(126), random.Next(4) == 0)),
            ];
            foreach (StretchNoise stretch in Run(task, route).Stretches)
            {
                double top = Math.Min(stretch.Stretch.SpeedLimitKmPerHour, stretch.Stretch.TrafficSpeedKmPerHour ?? 130);
                Assert.InRange(stretch.SpeedKmPerHour, Math.Min(top, RouteSurvey.SlowestKmPerHour), top);
                Assert.Equal(stretch.SpeedKmPerHour, stretch.Noise.SpeedKmPerHour);
                if (stretch.Stretch.KeepWithTraffic)
                {
                    Assert.Equal(top, stretch.SpeedKmPerHour);
                    continue;
                }

                NoiseTask there = task with { Drive = task.Drive with { Road = stretch.Stretch.Road!.Value } };
                for (double speed = RouteSurvey.SlowestKmPerHour; speed <= top; speed++)
                {
                    SceneVerdict verdict = Questions.At(there, speed).Verdict!.Value;
                    Assert.True(speed <= stretch.SpeedKmPerHour ? verdict >= stretch.Noise.Verdict : verdict > stretch.Noise.Verdict, $"{stretch}: {speed} {verdict}");
                }
            }
        }
    }

    [Fact]
    public void Run_AnyRoute_PutsTheDriverAndTheLawFirst()
    {
        RouteReport report = Run(s_plain, new RouteStretch("a", 100, 30));
        Assert.Equal(("drive-first", AdvisorySeverity.Safety), (report.Advisories[0].Code, report.Advisories[0].Severity));
        Assert.Contains("endangers", report.Advisories[0].Message, StringComparison.Ordinal);
        Assert.Contains("police", report.Advisories[0].Message, StringComparison.Ordinal);
        Assert.Contains(report.Advisories, a => a.Code == "absolute-level-uncertain");
    }

    private static RouteReport Run(NoiseTask noise, params RouteStretch[] stretches) => RouteSurvey.Run(new RouteTask(noise, stretches));
}
