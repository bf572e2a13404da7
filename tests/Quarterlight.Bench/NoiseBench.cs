using BenchmarkDotNet.Attributes;
using Quarterlight.Acoustics;
using Quarterlight.Placement;
using Quarterlight.Placement.Noise;

namespace Quarterlight.Bench;

/// <summary>
/// The table for the assistant director, five talkers planned: each cell traced anew by the planner's own sheet, against one trace for each state of the windows. The
/// survey does more than the plain way: the fastest speed of each row as well, and all words.
/// </summary>
[MemoryDiagnoser]
public class NoiseBench
{
    private static readonly PlacementTask s_task = BenchScene.FiveTalkers();

    private static readonly NoiseTask s_question = new()
    {
        Car = s_task.NoiseCar,
        Drive = s_task.Scene.Drive,
        Planned = new PlannedScene(s_task, PlacementPlanner.Plan(s_task)),
    };

    private static readonly RouteTask s_route = new(
        s_question,
        [.. Enumerable.Range(0, 200).Select(i => new RouteStretch($"{i}", 500, 30 + (10 * (i % 11)), (RoadSurface)(i % 5)))]);

    private DriveConditions[] _cells = null!;

    [GlobalSetup]
    public void Setup()
    {
        DriveConditions asked = s_question.Drive;
        WindowOpening[] Down(double fraction) => [.. s_task.Cabin.Windows.Where(w => w.Moves).Select(w => new WindowOpening(w.Id, fraction))];
        DriveConditions[] rows =
        [
            asked,
            asked with { OpenWindows = Down(0.5) },
            asked with { OpenWindows = Down(1) },
            asked with { Road = RoadSurface.CoarseAsphalt },
            asked with { Road = RoadSurface.Concrete },
            asked with { Rain = Rain.Light },
            asked with { Rain = Rain.Heavy },
            asked with { FanStep = 1 },
        ];
        _cells = [.. rows.SelectMany(r => s_question.TableSpeedsKmPerHour.Select(v => r with { SpeedKmPerHour = v }))];
        double[] survey = [.. NoiseSurvey.Run(s_question).Table.SelectMany(r => r.Cells).Select(c => c.WorstSnrDba!.Value)];
        for (int i = 0; i < _cells.Length; i++)
        {
            double anew = Anew(_cells[i]);
            if (Math.Abs(anew - survey[i]) > 1e-9)
            {
                throw new InvalidOperationException($"The two ways differ in cell {i}: {anew} and {survey[i]} dB.");
            }
        }
    }

    [Benchmark(Baseline = true)]
    public double TableTracedAnewForEachCell() => _cells.Sum(Anew);

    [Benchmark]
    public NoiseReport Survey() => NoiseSurvey.Run(s_question);

    [Benchmark]
    public RouteReport RouteOfTwoHundredStretches() => RouteSurvey.Run(s_route);

    private static double Anew(DriveConditions drive)
    {
        PlacementTask task = s_task with { Scene = s_task.Scene with { Drive = drive } };
        var sheet = new FigureSheet(new SpotFields(task, PlacementOptions.Default), PlacementOptions.Default);
        return s_question.Planned!.Plan.Best.Placements.Min(p =>
        {
            int talker = s_task.Scene.Talkers.ToList().FindIndex(t => t.Id == p.TalkerId);
            var spot = new MountSpot(p.Site, p.Capsule, p.Site.Id == BodyWorn.IdFor(p.TalkerId) ? talker : -1);
            return sheet.For(spot, s_task.Kit.Microphones.First(m => m.Id == p.MicrophoneId), p.Aim, talker, 0, 0, null).SnrDba.Value;
        });
    }
}
