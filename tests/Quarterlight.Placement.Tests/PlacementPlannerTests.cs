using Quarterlight.Acoustics;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

public class PlacementPlannerTests
{
    private static readonly DriveConditions s_drive = new() { SpeedKmPerHour = 50 };

    [Fact]
    public void Plan_ThreeTalkers_CoversAllProvesItAndOffersTwoOtherPlans()
    {
        PlacementTask task = Three();
        MountPlan plan = PlacementPlanner.Plan(task);
        Assert.Equal(["driver", "front", "back"], plan.Best.Placements.Select(p => p.TalkerId));
        Assert.Empty(plan.UncoveredTalkerIds);
        Assert.True(plan.Proof.ProvedOptimal);
        Assert.Equal(plan.Proof.WorstScoreDb, plan.Best.Placements.Min(p => p.Figures.ScoreDb), 1e-9);
        Assert.Equal(plan.Proof.SumScoreDb, plan.Best.Placements.Sum(p => p.Figures.ScoreDb), 1e-9);
        Assert.Equal(2, plan.RunnersUp.Count);
        string[] best = [.. plan.Best.Placements.Select(p => p.Site.Id)];
        Assert.All(plan.RunnersUp, r => Assert.DoesNotContain(r.Placements, p => best.Contains(p.Site.Id)));
        Assert.DoesNotContain(plan.RunnersUp[1].Placements, p => plan.RunnersUp[0].Placements.Any(q => q.Site.Id == p.Site.Id));
        Assert.All(plan.RunnersUp, r => Assert.True(r.WorstScoreDb <= plan.Best.WorstScoreDb + 1e-9));
        Assert.Equal(task.Cabin.Sites.Count + 3, plan.RefusedSites.Count + plan.UsableSiteCount);
    }

    [Fact]
    public void Plan_Twice_IsTheSame()
    {
        MountPlan a = PlacementPlanner.Plan(Three()), b = PlacementPlanner.Plan(Three());
        Assert.Equal(a.Best.Placements.Select(p => (p.Site.Id, p.MicrophoneId, p.Aim, p.Figures.ScoreDb)), b.Best.Placements.Select(p => (p.Site.Id, p.MicrophoneId, p.Aim, p.Figures.ScoreDb)));
    }

    // Symmetry is an outside check of the whole chain: the mirrored scene in the mirrored car has the mirrored plan.
    [Fact]
    public void Plan_MirroredCarAndScene_IsTheMirroredPlan()
    {
        MountPlan left = PlacementPlanner.Plan(Tasks.Saloon(DriveSide.Left, [], s_drive, Tasks.Talker("driver", "driver", Tasks.Turned(0, 0.5), Tasks.Turned(-50, 0.5)), Tasks.Talker("back", "rear-left")));
        MountPlan right = PlacementPlanner.Plan(Tasks.Saloon(DriveSide.Right, [], s_drive, Tasks.Talker("driver", "driver", Tasks.Turned(0, 0.5), Tasks.Turned(50, 0.5)), Tasks.Talker("back", "rear-right")));
        // The aim grid itself is not symmetric, hence the tenth of a decibel.
        Assert.Equal(left.Best.WorstScoreDb, right.Best.WorstScoreDb, 0.1);
        Assert.Equal(left.Best.SumScoreDb, right.Best.SumScoreDb, 0.2);
        Assert.Equal(left.UsableSiteCount, right.UsableSiteCount);
    }

    [Fact]
    public void Plan_NoChosenSite_BreaksAHardLimit()
    {
        Shot[] shots = [Tasks.Shot("A", new(1.9, 0, 1.1), new(-0.2, 0, 1.0)), Tasks.Shot("B", new(0.1, -1.7, 1.1), new(-0.2, 0.3, 1.0), 50)];
        MountPlan plan = PlacementPlanner.Plan(Three(shots));
        Assert.NotEmpty(plan.Best.Placements);
        Assert.All(plan.Best.Placements, p =>
        {
            Assert.Null(p.Site.AirbagZone);
            Assert.False(p.Site.InDriverView);
            Assert.NotEqual(Fixings.None, p.Fixing & p.Site.PermittedFixings);
        });
        Assert.Contains(plan.RefusedSites, r => r.Reasons.Contains(RefusalReason.InShot) && r.Explanation.Contains("shot A", StringComparison.Ordinal));
        Assert.Contains(plan.RefusedSites, r => r.Reasons.Contains(RefusalReason.Airbag));
        Assert.Contains(plan.RefusedSites, r => r.Reasons.Contains(RefusalReason.DriverView));
        Assert.All(plan.RefusedSites, r => Assert.NotEmpty(r.Reasons));
    }

    [Fact]
    public void Plan_MoreShots_NeverFreesASiteNorImprovesThePlan()
    {
        Shot a = Tasks.Shot("A", new(1.9, 0, 1.1), new(-0.2, 0, 1.0)), b = Tasks.Shot("B", new(0.1, -1.7, 1.1), new(-0.2, 0.3, 1.0), 50);
        MountPlan none = PlacementPlanner.Plan(Three()), one = PlacementPlanner.Plan(Three([a])), two = PlacementPlanner.Plan(Three([a, b]));
        Assert.True(none.UsableSiteCount > one.UsableSiteCount && one.UsableSiteCount >= two.UsableSiteCount);
        Assert.True(none.Best.WorstScoreDb >= one.Best.WorstScoreDb - 1e-9 && one.Best.WorstScoreDb >= two.Best.WorstScoreDb - 1e-9);
    }

    [Fact]
    public void Plan_LouderCar_LowersEveryRatio()
    {
        MountPlan slow = PlacementPlanner.Plan(Three()), fast = PlacementPlanner.Plan(Three() with { Scene = Three().Scene with { Drive = s_drive with { SpeedKmPerHour = 110 } } });
        Assert.True(fast.Best.SumScoreDb < slow.Best.SumScoreDb);
        Assert.All(fast.Best.Placements.Zip(slow.Best.Placements), p => Assert.True(p.First.Figures.SnrDba.Value < p.Second.Figures.SnrDba.Value));
    }

    [Fact]
    public void Plan_OneInput_SharesOneMicrophone()
    {
        PlacementTask task = Three() with { Kit = Tasks.Kit with { RecorderInputCount = 1 } };
        MountPlan plan = PlacementPlanner.Plan(task);
        Assert.Equal(3, plan.Best.Placements.Count);
        Assert.Single(plan.Best.Placements.Select(p => p.Site.Id).Distinct());
        Assert.All(plan.Best.Placements, p => Assert.Equal(1, p.RecorderInput));
        Assert.All(plan.Best.Placements, p => Assert.Null(p.Figures.SeparationDb));
        Assert.All(plan.Best.Placements, p => Assert.Contains(p.Advisories, a => a.Code == "shared"));
    }

    [Fact]
    public void Plan_KitCounts_AreKept()
    {
        Kit kit = Tasks.Kit with
        {
            Microphones = [Tasks.Supercardioid with { Count = 1 }, Tasks.Cardioid with { Count = 1 }, Tasks.Lav with { Count = 1 }],
            FixingCounts = new Dictionary<Fixings, int> { [Fixings.SpringClip] = 1, [Fixings.PaperTape] = 2, [Fixings.ElasticTie] = 1 },
        };
        MountPlan plan = PlacementPlanner.Plan(Three() with { Kit = kit });
        TalkerPlacement[] rigs = [.. plan.Best.Placements.DistinctBy(p => p.RecorderInput)];
        Assert.All(rigs.GroupBy(p => p.MicrophoneId), g => Assert.Single(g));
        Assert.All(rigs.GroupBy(p => p.Fixing), g => Assert.True(g.Count() <= kit.FixingCounts[g.Key]));
    }

    [Fact]
    public void Plan_NothingToHoldAMicrophone_IsAClearPartialAnswer()
    {
        MountPlan plan = PlacementPlanner.Plan(Three() with { Kit = Tasks.Kit with { FixingCounts = new Dictionary<Fixings, int>() } });
        Assert.Empty(plan.Best.Placements);
        Assert.Equal(["driver", "front", "back"], plan.UncoveredTalkerIds);
        Assert.Contains(plan.Advisories, a => a.Code == "talker-uncovered" && a.Message.Contains("driver", StringComparison.Ordinal));
        Assert.All(plan.RefusedSites, r => Assert.True(r.Reasons.Contains(RefusalReason.Fixing) || r.Reasons.Contains(RefusalReason.BodyWorn)));
    }

    [Fact]
    public void Plan_TubeMicrophone_IsScoredByTheDirectSum()
    {
        PlacementTask task = Tasks.Saloon(Tasks.Talker("driver", "driver")) with { Kit = Tasks.Kit with { Microphones = [Tasks.Tube] } };
        MountPlan plan = PlacementPlanner.Plan(task);
        TalkerPlacement placed = Assert.Single(plan.Best.Placements);
        Assert.Equal("short-tube", placed.MicrophoneId);
        Assert.Equal(placed.Figures.UsefulToDetrimentalDb, placed.Figures.ScoreDb + placed.Penalties.Sum(p => p.CostDb), 1e-9);
    }

    [Fact]
    public void Plan_Figures_AreConsistent()
    {
        MountPlan plan = PlacementPlanner.Plan(Three());
        Assert.All(plan.Best.Placements, p =>
        {
            PlacementFigures f = p.Figures;
            Assert.Equal(f.SpeechDba - f.NoiseDba.Value, f.SnrDba.Value, 1e-9);
            Assert.Equal(f.UsefulToDetrimentalDb, f.ScoreDb + p.Penalties.Sum(x => x.CostDb), 1e-9);
            Assert.InRange(f.Sii, 0, 1);
            Assert.InRange(f.Sti, 0, 1);
            Assert.InRange(f.SnrDba.PlusMinus, 3, 8);
            Assert.True(f.PeakLevelDb.Value > f.SpeechDba);
            Assert.InRange(f.MouthDistanceM, 0.05, 2.5);
            Assert.Equal(f.SpeechDba, f.SpeechLevelsDb.AWeightedDb(), 1e-9);
            Assert.Equal(f.NoiseDba.Value, f.NoiseLevelsDb.AWeightedDb(), 1e-9);
            for (int b = 0; b < OctaveBands.Count; b++)
            {
                Assert.True(f.SelfNoiseLevelsDb[b] <= f.NoiseLevelsDb[b]);
            }
        });
    }

    [Fact]
    public void Plan_NoiseCorrection_RaisesTheNoiseAndSaysWhereFrom()
    {
        PlacementTask task = Tasks.Saloon(Tasks.Talker("driver", "driver"));
        var correction = new NoiseCorrection(BandLevels.Flat(6), "scene 12");
        MountPlan plain = PlacementPlanner.Plan(task);
        MountPlan corrected = PlacementPlanner.Plan(task with { Scene = task.Scene with { Drive = task.Scene.Drive with { NoiseCorrection = correction } } });
        Assert.Equal(6, corrected.CabinNoiseDba.Value - plain.CabinNoiseDba.Value, 1e-9);
        Assert.Equal(2.5, corrected.CabinNoiseDba.PlusMinus, 1e-9);
        Advisory note = Assert.Single(corrected.Advisories, a => a.Code == "noise-from-clip");
        Assert.Equal(AdvisorySeverity.Note, note.Severity);
        Assert.Contains("scene 12", note.Message, StringComparison.Ordinal);
        Assert.DoesNotContain(plain.Advisories, a => a.Code == "noise-from-clip");
    }

    [Fact]
    public void Explain_ChosenRefusedAndWorseSites_EachGetTheirAnswer()
    {
        PlacementTask task = Three();
        MountPlan plan = PlacementPlanner.Plan(task);
        TalkerPlacement driver = plan.Best.Placements[0];
        Assert.True(PlacementPlanner.Explain(task, plan, driver.Site.Id, "driver").Chosen);
        RefusedSite refused = plan.RefusedSites.First(r => r.Reasons.Contains(RefusalReason.Airbag));
        SiteExplanation airbag = PlacementPlanner.Explain(task, plan, refused.Site.Id, "driver");
        Assert.False(airbag.Chosen);
        Assert.Contains("airbag", airbag.Summary, StringComparison.Ordinal);
        SiteExplanation floor = PlacementPlanner.Explain(task, plan, task.Cabin.Sites.First(s => s.Family == MountFamily.Floor).Id, "back");
        Assert.NotNull(floor.There ?? (object?)floor.Refused);
        SiteExplanation worn = PlacementPlanner.Explain(task, plan, "body-worn", "driver");
        Assert.Equal([RefusalReason.BodyWorn], worn.Refused!.Reasons);
    }

    // What the sentence adds up must be the difference of the scores: nobody should have to guess where the rest went.
    [Fact]
    public void Explain_WorseSite_AccountsForTheWholeDifference()
    {
        PlacementTask task = Three();
        MountPlan plan = PlacementPlanner.Plan(task);
        int compared = 0;
        foreach (MountSite site in task.Cabin.Sites.Where((_, i) => i % 10 == 0))
        {
            SiteExplanation why = PlacementPlanner.Explain(task, plan, site.Id, "back");
            if (why is { There: { } there, Picked: { } picked, Chosen: false })
            {
                double[] parts = [.. System.Text.RegularExpressions.Regex.Matches(why.Summary, @"([+-]?\d+\.\d) dB(?=[,.])").Select(m => double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture))];
                double noise = there.Figures.NoiseDba.Value - picked.Figures.NoiseDba.Value;
                Assert.Equal(there.Figures.ScoreDb - picked.Figures.ScoreDb, parts.Sum() - (2 * noise), 1.1);
                compared++;
            }
        }

        Assert.True(compared >= 2, $"{compared}");
    }

    [Fact]
    public void Explain_UnknownSiteOrTalker_NamesTheFieldAndTheWayOut()
    {
        PlacementTask task = Three();
        MountPlan plan = PlacementPlanner.Plan(task);
        Assert.Equal("site_id", Assert.Single(Assert.Throws<InvalidInputException>(() => PlacementPlanner.Explain(task, plan, "nowhere", "driver")).Violations).Field);
        Violation talker = Assert.Single(Assert.Throws<InvalidInputException>(() => PlacementPlanner.Explain(task, plan, "nowhere", "nobody")).Violations);
        Assert.Equal("talker_id", talker.Field);
        Assert.Contains("driver, front, back", talker.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Options_Defaults_ArePinned()
    {
        PlacementOptions d = PlacementOptions.Default;
        Assert.Equal((35.0, 12.0, 60.0), (d.MostOffAxisDeg, d.MostOffAxisTubeDeg, d.MostOffAxisSharedDeg));
        Assert.Equal((3, 1.7, 0.3, 0.3, 0.05, 0.08, 0.03, 0.10, 400_000L), (d.ImageOrder, d.EarlyPathExcessM, d.OverlapFraction, d.WorstPosePull, d.FrameMarginFraction, d.HeadClearanceM, d.StandoffM, d.ArmStandoffM, d.NodeLimit));
    }

    private static PlacementTask Three(IReadOnlyList<Shot>? shots = null) => Tasks.Saloon(
        DriveSide.Left, shots ?? [], s_drive, Tasks.Talker("driver", "driver", Tasks.Turned(0, 0.7), Tasks.Turned(-40, 0.3)), Tasks.Talker("front", "front-passenger", Tasks.Turned(30)), Tasks.Talker("back", "rear-right"));
}
