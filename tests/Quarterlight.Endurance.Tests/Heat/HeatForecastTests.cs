using CsCheck;
using Quarterlight.Endurance.Heat;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Tests.Heat;

public class HeatForecastTests
{
    private static readonly HeatTask s_hot = HeatTasks.HotDay with { DurationMin = 120 };

    private static readonly Gen<HeatTask> s_tasks =
        Gen.Select(Gen.Double[-10, 45], Gen.Double[5, 95], Gen.Double[0, 1], Gen.Int[0, 23], Gen.Enum<CarShade>(), Gen.Double[0, 100], Gen.Int[1, 4], Gen.Bool)
            .Select((air, humidity, cloud, hour, shade, speed, adults, caution) => s_hot with
            {
                Start = s_hot.Start.AddHours(hour),
                Air = new OutsideAir(air, humidity, 2, cloud),
                Shade = shade,
                SpeedKmPerHour = speed,
                Occupants = new Occupants { AdultCount = adults },
                RhythmLimit = caution ? HeatLimitKind.Caution : HeatLimitKind.Comfort,
                DurationMin = 90,
                SoakMin = 45,
            });

    [Fact]
    public void Run_AnyDay_KeepsItsPromises() => s_tasks.Sample(
        task =>
        {
            HeatReport report = HeatForecast.Run(task);

            Assert.Equal([HeatLimitKind.Comfort, HeatLimitKind.Caution, HeatLimitKind.Stop], report.Limits.Select(l => l.Kind));
            for (int i = 0; i < 3; i++)
            {
                double at = report.Limits[i].Minutes ?? 1e9, worst = report.Limits[i].MinutesAtWorst ?? 1e9;
                Assert.True(at >= 0 && worst <= at);
                Assert.True(i == 0 || at >= (report.Limits[i - 1].Minutes ?? 1e9));
                Assert.Equal(report.Limits[i].Minutes is null, report.Limits[i].Reason.Length == 0);
            }

            Assert.Equal(91, report.Samples.Count);
            Assert.All(report.Samples, s =>
            {
                Assert.True(s.Co2Ppm >= CarbonDioxide.OutsidePpm - 1e-6);
                Assert.InRange(s.RelativeHumidityPercent, 0, 100);
                Assert.InRange(s.AirC, -12, 110);
                Assert.Equal(s.Pmv is null, s.PpdPercent is null);
                Assert.True(s.Pmv is null or (>= -2 and <= 2));
            });
            Assert.Equal(Enumerable.Range(0, 91).Select(m => (double)m), report.Samples.Select(s => s.Minute));
            Assert.Equal(report.PrecoolMin is null, report.LowestAirC is not null);
            Check(task, report);
        },
        iter: 150);

    private static void Check(HeatTask task, HeatReport report)
    {
        ShootingRhythm rhythm = report.Rhythm;
        Assert.Equal(rhythm.Possible, rhythm.Blocks.Count > 0);
        if (!rhythm.Possible)
        {
            Assert.Equal((0.0, 0.0, 0, 0.0), (rhythm.RollMin, rhythm.CoolMin, rhythm.TakeCount, rhythm.RollingFraction));
            return;
        }

        double at = 0, rolled = 0;
        foreach (HeatBlock block in rhythm.Blocks)
        {
            Assert.Equal(at, block.StartMin, 1e-9);
            Assert.True(block.EndMin > block.StartMin);
            at = block.EndMin;
            rolled += block.Kind == HeatBlockKind.Roll ? block.EndMin - block.StartMin : 0;
        }

        Assert.Equal(task.DurationMin, at, 1e-9);
        Assert.Equal(rolled / task.DurationMin, rhythm.RollingFraction, 1e-9);
        Assert.True(rhythm.CoolMin <= 60);

        // The times are of the very cabin the first take starts in: a reader must not find "roll 3" beside "2.7 to the limit".
        Assert.True((report.Limits[(int)rhythm.Limit].Minutes ?? 1e9) >= Math.Min(rhythm.RollMin, rolled) - 0.1, $"{task} {report.Limits[(int)rhythm.Limit]} {rhythm.RollMin}");
        Assert.True(report.PrecoolMin is null || Math.Abs(report.PrecoolMin.Value - rhythm.Blocks[0].EndMin) < 1e-9 || (report.PrecoolMin == 0 && rhythm.Blocks[0].Kind == HeatBlockKind.Roll));

        // What is found is proved by the steps of the report, at every half minute: nothing may lie between them.
        var limits = new HeatLimits(task);
        foreach (HeatSample sample in report.Samples.Where(s => rhythm.Blocks.Any(b => b.Kind == HeatBlockKind.Roll && s.Minute > b.StartMin && s.Minute <= b.EndMin)))
        {
            Assert.True(sample.Co2Ppm < CarbonDioxide.StalePpm, $"{task} {sample}");
            Assert.True(sample.WbgtC < limits.CautionWbgtC, $"{task} {sample}");
            Assert.True(task.RhythmLimit == HeatLimitKind.Caution || (sample.AirC <= ThermalComfort.AirC.Max && sample.Pmv is not > HeatLimits.ComfortVote), $"{task} {sample}");
        }
    }

    [Fact]
    public void Run_MoreShadeOrPeople_NeverTurnsTheWrongWay() => s_tasks.Sample(
        task =>
        {
            HeatReport open = HeatForecast.RunWithoutOptions(task with { Shade = CarShade.None }), broken = HeatForecast.RunWithoutOptions(task with { Shade = CarShade.Broken });
            HeatReport under = HeatForecast.RunWithoutOptions(task with { Shade = CarShade.PopUp }), deep = HeatForecast.RunWithoutOptions(task with { Shade = CarShade.Full });
            Assert.True(open.SoakedAirC >= broken.SoakedAirC && broken.SoakedAirC >= under.SoakedAirC && under.SoakedAirC >= deep.SoakedAirC);
            Assert.True(open.SunAtStart.GainW >= broken.SunAtStart.GainW && under.SunAtStart.GainW >= deep.SunAtStart.GainW && deep.SunAtStart.GainW >= 0);

            HeatReport fuller = HeatForecast.RunWithoutOptions(task with { Occupants = task.Occupants with { AdultCount = task.Occupants.AdultCount + 1 } });
            HeatReport now = HeatForecast.RunWithoutOptions(task);
            for (int i = 1; i < 3; i++)
            {
                Assert.True((fuller.Limits[i].Minutes ?? 1e9) <= (now.Limits[i].Minutes ?? 1e9));
            }
        },
        iter: 60);

    public static TheoryData<HeatTask> Compared =>
    [
        HeatTasks.HotDay with { DurationMin = 120, RhythmLimit = HeatLimitKind.Caution },
        HeatTasks.HotDay with { DurationMin = 150, Shade = CarShade.PopUp },
        HeatTasks.HotDay with { DurationMin = 120, Glass = GlassKind.SolarControl, SpeedKmPerHour = 40, HeadingDeg = 150, RhythmLimit = HeatLimitKind.Caution, Cover = SunCover.AllGlass },
    ];

    [Theory]
    [MemberData(nameof(Compared))]
    public void Run_AgainstEulerAndEveryPair_GivesTheSame(HeatTask task)
    {
        PlainHeat plain = new PlainHeat(task).Run();
        HeatReport report = HeatForecast.RunWithoutOptions(task);

        // Within 10 s for the limits, and 3 % of the day for the rolling time: the search looks at half minutes and at the best of a sweep.
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(plain.LimitS[i] is null, report.Limits[i].Minutes is null);
            Assert.Equal(plain.LimitS[i] ?? 0, 60 * (report.Limits[i].Minutes ?? 0), 10.0);
        }

        Assert.Equal(plain.RolledS / (60 * task.DurationMin), report.Rhythm.RollingFraction, 0.03);
    }

    [Fact]
    public void Run_RollGiven_TakesTheLeastCooling()
    {
        HeatTask task = s_hot with { RhythmLimit = HeatLimitKind.Caution, RollMin = 4 };
        ShootingRhythm rhythm = HeatForecast.Run(task).Rhythm;

        Assert.Equal(4, rhythm.RollMin);
        var of = new HeatCase(task, new SunTable(task, null, -60, 120));
        var precooling = new Precooling(of);
        var limits = new HeatLimits(task);
        var proof = new RhythmProof(of, precooling, (state, second) => limits.Over(HeatLimitKind.Caution, state, of.Roll.SunW(second), of.IsSunlit(second)) != HeatCause.None);
        var found = new Rhythm((int)(rhythm.Blocks[0].EndMin * 60), 240, (int)(rhythm.CoolMin * 60));
        Assert.True(proof.Keeps(found));
        Assert.False(proof.Keeps(found with { CoolS = found.CoolS - 30 }));
    }

    [Fact]
    public void Run_ChildInTheCar_HasOneLimitAndSaysSoFirst()
    {
        HeatReport report = HeatForecast.Run(s_hot with { Shade = CarShade.Full, Occupants = new Occupants { AdultCount = 1, ChildCount = 1 } });
        HeatReport adults = HeatForecast.Run(s_hot with { Shade = CarShade.Full });

        Assert.True(report.Strictest);
        Assert.False(adults.Strictest);
        Assert.Single(report.Limits.Select(l => (l.Minutes, l.MinutesAtWorst, l.Reason)).Distinct());
        Assert.Equal("never-alone", report.Advisories[0].Code);
        Assert.Equal(AdvisorySeverity.Safety, report.Advisories[0].Severity);
        Assert.Contains("Never leave a child alone", report.Advisories[0].Message, StringComparison.Ordinal);
        Assert.True(report.Limits[2].Minutes < adults.Limits[2].Minutes);
    }

    [Fact]
    public void Run_NobodyCanOpenADoor_SaysThatFirst() =>
        Assert.Equal("shut-in", HeatForecast.Run(s_hot with { Occupants = new Occupants { NobodyCanOpenADoor = true } }).Advisories[0].Code);

    [Fact]
    public void Run_WeakCooling_SaysHowFarItGets()
    {
        HeatReport report = HeatForecast.Run(s_hot with { Cooling = new CoolingSystem { PowerW = 500 } });

        Assert.Null(report.PrecoolMin);
        Assert.InRange(report.LowestAirC!.Value, 25, report.SoakedAirC);
        Assert.Contains(report.Advisories, a => a.Code == "set-point-not-reached");
        Assert.Equal(0, report.Limits[0].Minutes);
    }

    [Fact]
    public void Run_ColdDay_SaysColdAndAdvisesWarmth()
    {
        HeatReport report = HeatForecast.Run(s_hot with { Air = new OutsideAir(2, 60, 2, 1) });

        Assert.Equal(0, report.Limits[0].Minutes);
        Assert.StartsWith("cold", report.Limits[0].Reason, StringComparison.Ordinal);
        Assert.Contains(report.Advisories, a => a.Code == "cold");
        Assert.False(report.Rhythm.Possible);
    }

    [Fact]
    public void Run_Acclimatised_HaveLaterOrTheSameCaution()
    {
        var used = new HeatLimits(s_hot with { Occupants = new Occupants { Acclimatised = true } });
        var fresh = new HeatLimits(s_hot);

        Assert.True(used.CautionWbgtC > fresh.CautionWbgtC);
        Assert.Equal(used.StopWbgtC, fresh.StopWbgtC);
    }

    [Fact]
    public void Run_Options_AreSortedAndOnlyThoseThatHelpOrHurt()
    {
        IReadOnlyList<HeatOption> options = HeatForecast.Run(s_hot with { HeadingDeg = 180, RhythmLimit = HeatLimitKind.Caution }).Options;

        Assert.Equal(options.OrderByDescending(o => o.Minutes ?? 1e9).Select(o => o.Code), options.Select(o => o.Code));
        Assert.Contains(options, o => o.Code == "full-shade");
        Assert.DoesNotContain(HeatForecast.Run(s_hot with { Shade = CarShade.Full, Cover = SunCover.AllGlass, Start = s_hot.Start.AddHours(13) }).Options, o => o.Code != "solar-glass");
    }

    [Fact]
    public void Run_MirroredHemisphere_SoaksTheSame()
    {
        HeatTask north = s_hot with { Start = new DateTimeOffset(2026, 6, 21, 12, 0, 0, TimeSpan.Zero), LatitudeDeg = 30, LongitudeDeg = 0 };
        HeatTask south = north with { Start = new DateTimeOffset(2026, 12, 21, 12, 0, 0, TimeSpan.Zero), LatitudeDeg = -30 };

        Assert.Equal(HeatForecast.Run(north).SoakedAirC, HeatForecast.Run(south).SoakedAirC, 0.1);
    }

    [Fact]
    public void Run_DayShorterThanTheCooling_HasNoRhythmAndSaysWhy()
    {
        HeatReport report = HeatForecast.Run(s_hot with { DurationMin = 10 });

        Assert.False(report.Rhythm.Possible);
        Assert.Contains(report.Advisories, a => a.Code == "no-rhythm" && a.Message.Contains("earlier", StringComparison.Ordinal));
        Assert.Equal(11, report.Samples.Count);
    }

    [Fact]
    public void Run_RollingAir_FollowsTheClosedFormOfItsMassBalance()
    {
        var of = new HeatCase(s_hot, new SunTable(s_hot, null, -60, 120));
        CabinState state = of.Outside;
        of.Roll.Advance(ref state, 0, 1500);
        double changes = AirChange.FlowM3PerS(3, s_hot.Air.WindSpeedMPerS, 0, 0, true) * 1200;

        Assert.Equal(CarbonDioxide.After(420, 2 * CarbonDioxide.AdultLPerS, 3, changes, 25), state.Co2Ppm, 1e-6);
    }

    [Fact]
    public void Run_OneSecondOrHalfMinuteSteps_EndAlike()
    {
        var of = new HeatCase(s_hot, new SunTable(s_hot, null, -60, 120));
        foreach (CabinPhase phase in new[] { of.Soak, of.Precool, of.Cool, of.Roll })
        {
            CabinState coarse = of.Outside with { AirC = 30, InteriorC = 40, Co2Ppm = 900 }, fine = coarse;
            phase.Advance(ref coarse, 0, 1200);
            phase.Advance(ref fine, 0, 1200, fine: true);
            Assert.Equal(fine.AirC, coarse.AirC, 0.1);
            Assert.Equal(fine.InteriorC, coarse.InteriorC, 0.2);
            Assert.Equal(fine.Co2Ppm, coarse.Co2Ppm, 1.0);
            Assert.Equal(fine.WaterRatio, coarse.WaterRatio, 2e-4);
        }
    }
}
