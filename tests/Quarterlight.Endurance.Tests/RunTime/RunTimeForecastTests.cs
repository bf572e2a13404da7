using Quarterlight.Endurance.RunTime;
using Quarterlight.Quantities;

namespace Quarterlight.Endurance.Tests.RunTime;

public class RunTimeForecastTests
{
    // 98 Wh at 0 °C (share 0.85), 12 W, a tenth kept back: 6.25 hours, derived by hand.
    [Fact]
    public void Run_WorkedExample_LastsSixAndAQuarterHours()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task);
        RunTimeItem recorder = report.Items.Single(i => i.Id == "recorder");
        Assert.Equal(6.25, recorder.Hours, 0.005);
        Assert.Equal(6.94, recorder.HoursWithoutMargin, 0.005);
        Assert.Equal(0.85, recorder.DeratingFraction, 1e-9);
        Assert.Equal("recorder", report.FirstId);
        Assert.Equal(374.85, report.FirstOutMin, 1e-6);
        Assert.Equal((2, 2, true), (recorder.SetCount, recorder.SetsNeeded, recorder.Enough));
        Swap swap = Assert.Single(report.Swaps);
        Assert.Equal(374.85, swap.AtMin, 1e-6);
        Assert.Equal("New battery in Bag recorder", swap.Words);
        Assert.Equal("", swap.AfterTake);
        Assert.Equal(1.152, report.DataMBPerS, 1e-9);
        Assert.Equal(62.1, report.FileLimitMin, 0.05);
        Assert.Equal(64 / 4.1472 * 0.9, report.Items.Single(i => i.Id == "cards").Hours, 1e-6);
        Assert.DoesNotContain(report.Items, i => i.Kind == RunTimeKind.File);
        Assert.Equal(report.Items.OrderBy(i => i.Hours), report.Items);
    }

    [Fact]
    public void Run_Energy_IsConserved()
    {
        var random = new Random(11);
        for (int i = 0; i < 200; i++)
        {
            RunTimeTask task = Random(random);
            foreach (RunTimeItem item in RunTimeForecast.Run(task).Items.Where(x => x.Kind == RunTimeKind.Battery))
            {
                PoweredDevice device = task.Devices.Single(d => d.Id == item.Id);
                Battery battery = task.Batteries.Single(b => b.Id == device.BatteryId);
                double drawnWh = item.Hours * device.PowerW, thereWh = battery.EnergyWh * device.BatteryCount * item.DeratingFraction;
                Assert.Equal(thereWh * (1 - task.MarginFraction), drawnWh, 1e-6);
                Assert.Equal(thereWh, item.HoursWithoutMargin * device.PowerW, 1e-6);
            }

            foreach (Battery battery in task.Batteries)
            {
                int given = RunTimeForecast.Run(task).Items.Where(x => x.Kind == RunTimeKind.Battery).Sum(x => task.Devices.Where(d => d.Id == x.Id && d.BatteryId == battery.Id).Sum(d => x.SetCount * d.BatteryCount * d.Count));
                Assert.True(given <= battery.Count, "More batteries were handed out than there are.");
            }
        }
    }

    [Fact]
    public void Run_RandomCallSheets_NeverSwapsDuringATakeAndNothingRunsEmptyUnlessSaid()
    {
        var random = new Random(7);
        int swapsSeen = 0, brokenSeen = 0;
        for (int i = 0; i < 400; i++)
        {
            RunTimeTask task = Random(random);
            RunTimeReport report = RunTimeForecast.Run(task);
            swapsSeen += report.Swaps.Count;
            brokenSeen += report.BrokenTake.Length > 0 ? 1 : 0;
            Assert.Equal(report.Swaps.OrderBy(s => s.AtMin), report.Swaps);
            foreach (Swap swap in report.Swaps)
            {
                Assert.InRange(swap.AtMin, 0, task.DurationMin);
                Assert.DoesNotContain(task.Takes, t => swap.AtMin > t.StartMin + 1e-9 && swap.AtMin < t.EndMin - 1e-9);
                Assert.Equal(task.Takes.LastOrDefault(t => t.EndMin <= swap.AtMin)?.Label ?? "", swap.AfterTake);
                Assert.NotEmpty(swap.ItemIds);
            }

            if (report.BrokenTake.Length == 0)
            {
                foreach (RunTimeItem item in report.Items.Where(x => x.Hours * 60 >= 5 && !(x.Kind == RunTimeKind.File && task.TakesOnly && task.Takes.Count > 0)))
                {
                    CoversTheDay(task, report, item);
                }
            }
        }

        Assert.True(swapsSeen > 500 && brokenSeen > 20, $"{swapsSeen} swaps and {brokenSeen} broken takes say too little.");
    }

    // As late as possible needs the fewest sets: no other choice of swap moments, half a minute apart, needs fewer.
    [Fact]
    public void Run_OneDevice_NeedsNoMoreSetsThanTheBestOfAllSchedules()
    {
        var random = new Random(3);
        int compared = 0;
        for (int i = 0; i < 300; i++)
        {
            double day = 200 + (random.NextDouble() * 500);
            List<PlannedTake> takes = RunTimeSamples.Day(random, day, 60);
            double life = 20 + (random.NextDouble() * 100);
            RunTimeReport report = RunTimeForecast.Run(new RunTimeTask
            {
                Batteries = [new("b", "Battery", BatteryChemistry.LeadAcid, life / 30, 0, 200)],
                Devices = [new("d", "Device", 2, "b", 1, 1)],
                BatteryC = 25,
                MarginFraction = 0,
                DurationMin = day,
                Takes = takes,
            });
            if (FewestSets(day, takes, life) is { } best)
            {
                compared++;
                Assert.Equal("", report.BrokenTake);
                Assert.True(report.Items[0].SetsNeeded <= best);
            }
        }

        Assert.True(compared > 50);
    }

    [Fact]
    public void Run_MoreMargin_NeverLaterNorLonger()
    {
        var random = new Random(5);
        for (int i = 0; i < 200; i++)
        {
            RunTimeTask task = Random(random) with { MarginFraction = random.NextDouble() * 0.5 };
            RunTimeReport less = RunTimeForecast.Run(task), more = RunTimeForecast.Run(task with { MarginFraction = task.MarginFraction + 0.1 });
            Assert.True(more.FirstOutMin <= less.FirstOutMin + 1e-9);
            foreach (RunTimeItem item in less.Items)
            {
                RunTimeItem other = more.Items.Single(x => x.Id == item.Id);
                Assert.True(other.Hours <= item.Hours);
                Assert.Equal(item.HoursWithoutMargin, other.HoursWithoutMargin, 1e-9);
            }
        }
    }

    [Fact]
    public void Run_TakesOnly_CardsLastLongerThanAllDayAndBatteriesTheSame()
    {
        PlannedTake[] takes = [RunTimeSamples.Take("1", 10, 20), RunTimeSamples.Take("2", 100, 20), RunTimeSamples.Take("3", 300, 60)];
        RunTimeTask task = RunTimeSamples.Task with { Takes = takes, Media = RunTimeSamples.Media with { CardSizeGB = 2, CardCount = 12, LargeFiles = false } };
        RunTimeReport allDay = RunTimeForecast.Run(task), takesOnly = RunTimeForecast.Run(task with { TakesOnly = true });

        // 2 GB at 1.152 MB/s, a tenth kept back, is 26.04 minutes.
        Assert.Equal(26.04, allDay.FirstOutMin, 0.01);
        Assert.Equal(100 + 6.04, takesOnly.FirstOutMin, 0.01);
        Assert.Equal("cards", takesOnly.FirstId);
        Assert.Equal("3", takesOnly.BrokenTake);
        Assert.True(takesOnly.Items.Single(i => i.Id == "cards").SetsNeeded < allDay.Items.Single(i => i.Id == "cards").SetsNeeded);
        Assert.Equal(allDay.Items.Single(i => i.Id == "recorder"), takesOnly.Items.Single(i => i.Id == "recorder"));
        Assert.Equal(3, takesOnly.Items.Single(i => i.Id == "file").SetsNeeded);
        Assert.True(takesOnly.Items.Single(i => i.Id == "file").Enough);
    }

    [Fact]
    public void Run_TakeLongerThanASet_IsBrokenAndNamed()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { Media = null, Batteries = [RunTimeSamples.Brick with { EnergyWh = 20, Count = 40 }], Takes = [RunTimeSamples.Take("short", 0, 30), RunTimeSamples.Take("long drive", 60, 90)] });
        Assert.Equal("long drive", report.BrokenTake);
        Assert.Contains(report.Advisories, a => a.Code == "take-broken" && a.Message.Contains("Bag recorder", StringComparison.Ordinal));
        Assert.False(report.Items[0].Enough);
    }

    // 8 tracks at 48 kHz and 24 bit fill a file in 62.1 minutes; each take is a file, and the battery breaks a later one.
    [Fact]
    public void Run_TwoThingsBreak_NamesTheFirstTakeAndWhatBreaksIt()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with
        {
            Batteries = [RunTimeSamples.Brick with { EnergyWh = 20, Count = 40 }],
            Media = RunTimeSamples.Media with { LargeFiles = false },
            TakesOnly = true,
            Takes = [RunTimeSamples.Take("file", 10, 65), RunTimeSamples.Take("battery", 100, 90)],
        });
        Assert.Equal("file", report.BrokenTake);
        Assert.Contains("one file runs out", report.Advisories.Single(a => a.Code == "take-broken").Message, StringComparison.Ordinal);
        Assert.False(report.Items.Single(i => i.Id == "recorder").Enough);
        Assert.Equal(("file", 72.1), (report.FirstId, Math.Round(report.FirstOutMin, 1)));
    }

    // 76.5 minutes a set: it lasts a take of 76 minutes only if it goes in half a minute before, not two.
    [Fact]
    public void Run_SetThatJustLastsTheTake_GoesInAsLateAsThatNeeds()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { Media = null, Batteries = [RunTimeSamples.Brick with { EnergyWh = 20, Count = 40 }], Takes = [RunTimeSamples.Take("long drive", 60, 76)] });
        Assert.Equal("", report.BrokenTake);
        Assert.Equal(59.5, report.Swaps[0].AtMin, 1e-6);
    }

    [Fact]
    public void Run_TwoDevicesDueInOneGap_AreOneVisit()
    {
        RunTimeTask task = RunTimeSamples.Task with
        {
            Media = null,
            DurationMin = 230,
            Batteries = [RunTimeSamples.Brick with { EnergyWh = 30, Count = 20 }],
            Devices = [RunTimeSamples.Recorder, new("sender", "Sender", 11, "brick", 1, 1)],
            Takes = [RunTimeSamples.Take("1", 60, 40), RunTimeSamples.Take("2", 150, 60)],
        };
        RunTimeReport report = RunTimeForecast.Run(task);

        // 114.75 and 125.2 minutes: both in the gap from 100 to 150.
        Assert.Equal(["recorder", "sender"], report.Swaps[0].ItemIds);
        Assert.Equal("New battery in Bag recorder, new battery in Sender", report.Swaps[0].Words);
        Assert.Equal(114.75, report.Swaps[0].AtMin, 1e-6);
        Assert.Equal("1", report.Swaps[0].AfterTake);

        // Ten minutes more, and the visit together would cost the sender a third set: so it is swapped when it must be.
        RunTimeReport longer = RunTimeForecast.Run(task with { DurationMin = 240 });
        Assert.Equal(2, longer.Items.Single(i => i.Id == "sender").SetsNeeded);
        Assert.Equal(["recorder"], longer.Swaps[0].ItemIds);
    }

    [Fact]
    public void Run_SharedStock_GivesEachWhatItNeedsAndNamesWhatIsMissing()
    {
        RunTimeTask task = RunTimeSamples.Task with
        {
            Media = null,
            Batteries = [new("aa", "AA cell", BatteryChemistry.NickelMetalHydride, 2.4, 0, 20)],
            Devices = [new("pack", "Bodypack", 0.5, "aa", 2, 4), new("timecode", "Timecode box", 0.3, "aa", 2, 1)],
            BatteryC = 20,
            MarginFraction = 0.2,
            DurationMin = 900,
        };

        // Bodypack 4.8 Wh x 0.8 / 0.5 W = 7.68 h: 2 sets of 8. Timecode box 12.8 h: 2 sets of 2. 20 cells are just enough.
        RunTimeReport report = RunTimeForecast.Run(task);
        Assert.All(report.Items, i => Assert.Equal((2, 2, true), (i.SetCount, i.SetsNeeded, i.Enough)));
        Assert.DoesNotContain(report.Advisories, a => a.Code == "battery-short");

        RunTimeReport less = RunTimeForecast.Run(task with { Batteries = [task.Batteries[0] with { Count = 15 }] });
        Assert.Contains(less.Advisories, a => a.Code == "battery-short" && a.Message.Contains("Bring 5 more of AA cell", StringComparison.Ordinal));
        Assert.False(less.Items.Single(i => i.Id == "pack").Enough);
        Assert.True(less.Items.Single(i => i.Id == "timecode").Enough);
    }

    // Against every way to share the stock: none makes the first stop of the day later.
    [Fact]
    public void Run_SharedStockTooSmall_MakesTheFirstStopAsLateAsAnySharingCould()
    {
        var random = new Random(17);
        int shortDays = 0;
        for (int i = 0; i < 200; i++)
        {
            int stock = random.Next(3, 50);
            PoweredDevice[] devices = [.. Enumerable.Range(0, 3).Select(d => new PoweredDevice($"d{d}", $"Device {d}", 0.5 + random.NextDouble(), "cell", random.Next(1, 4), 1))];
            RunTimeReport report = RunTimeForecast.Run(new RunTimeTask { Batteries = [new("cell", "Cell", BatteryChemistry.LithiumIon, 1.5, 0, stock)], Devices = devices, BatteryC = 25, DurationMin = 480 });
            double[] lives = [.. devices.Select(d => report.Items.Single(x => x.Id == d.Id).Hours * 60)];
            double FirstStop(params int[] sets) => Math.Min(480, lives.Zip(sets, (life, n) => life * n).Min());
            double best = 0;
            for (int a = 0; a * devices[0].BatteryCount <= stock; a++)
            {
                for (int b = 0; (a * devices[0].BatteryCount) + (b * devices[1].BatteryCount) <= stock; b++)
                {
                    best = Math.Max(best, FirstStop(a, b, (stock - (a * devices[0].BatteryCount) - (b * devices[1].BatteryCount)) / devices[2].BatteryCount));
                }
            }

            shortDays += best < 480 ? 1 : 0;
            Assert.Equal(best, FirstStop([.. devices.Select(d => report.Items.Single(x => x.Id == d.Id).SetCount)]), 1e-6);
            Assert.Equal(best >= 480, report.Items.All(x => x.Enough));
        }

        Assert.InRange(shortDays, 20, 180);
    }

    [Fact]
    public void Run_NewCard_StartsANewFile()
    {
        // 4 GB, half of it kept back, is 28.9 minutes a card: the file of 62.1 minutes never fills, and each card is a file.
        RunTimeReport report = RunTimeForecast.Run(new RunTimeTask { Media = RunTimeSamples.Media with { CardSizeGB = 4, CardCount = 40, LargeFiles = false }, MarginFraction = 0.5, DurationMin = 120 });
        Assert.All(report.Swaps, s => Assert.Equal(["cards"], s.ItemIds));
        Assert.Equal(4, report.Swaps.Count);
        Assert.Equal(5, report.Items.Single(i => i.Id == "file").SetsNeeded);
    }

    [Fact]
    public void Run_NoSetForADevice_RunsOutAtOnce()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { Devices = [RunTimeSamples.Recorder with { BatteryCount = 3 }] });
        Assert.Equal(0, report.FirstOutMin);
        Assert.Equal("recorder", report.FirstId);
        Assert.Contains(report.Advisories, a => a.Code == "battery-short");
    }

    [Theory]
    [InlineData(61, "battery-too-hot", AdvisorySeverity.Safety, 0)]
    [InlineData(60, "battery-hot", AdvisorySeverity.Caution, 1)]
    [InlineData(-21, "battery-too-cold", AdvisorySeverity.Caution, 0)]
    public void Run_BatteriesOutOfTheirTemperature_GiveNothingAndSayWhy(double c, string code, AdvisorySeverity severity, double share)
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { BatteryC = c });
        Assert.Contains(report.Advisories, a => a.Code == code && a.Severity == severity);
        RunTimeItem recorder = report.Items.Single(i => i.Id == "recorder");
        Assert.Equal(share, recorder.DeratingFraction, 1e-9);
        Assert.Equal(share == 0, recorder.Hours == 0);
        Assert.False(share == 0 && recorder.Enough);
        Assert.Equal(c > 45 ? AdvisorySeverity.Safety : AdvisorySeverity.Note, report.Advisories.Single(a => a.Code == "hot-car").Severity);
    }

    [Fact]
    public void Run_CardTooSlowOrTooFew_IsSaid()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { Media = RunTimeSamples.Media with { SampleFormat = SampleFormat.FloatingPoint32, SampleRateHz = 96000, WriteSpeedMBPerS = 3, CardSizeGB = 32, CardCount = 3 } });
        Assert.Equal(3.072, report.DataMBPerS, 1e-9);
        Assert.Contains(report.Advisories, a => a.Code == "card-too-slow");
        Assert.Contains(report.Advisories, a => a.Code == "card-short" && a.Message.Contains("Bring 5 more cards", StringComparison.Ordinal)); // 4 sets of 2, less 3.
        Assert.DoesNotContain(RunTimeForecast.Run(RunTimeSamples.Task with { Media = RunTimeSamples.Media with { WriteSpeedMBPerS = 1.152 } }).Advisories, a => a.Code == "card-too-slow");
    }

    [Fact]
    public void Run_SetOfMinutes_IsNotScheduledAndSaid()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { Batteries = [RunTimeSamples.Brick with { EnergyWh = 0.5 }] });
        Assert.Contains(report.Advisories, a => a.Code == "too-short");
        Assert.DoesNotContain(report.Swaps, s => s.ItemIds.Contains("recorder"));
        Assert.False(report.Items.Single(i => i.Id == "recorder").Enough);
    }

    [Fact]
    public void Run_ManySwaps_ListsTwoHundredAndCountsAll()
    {
        RunTimeReport report = RunTimeForecast.Run(RunTimeSamples.Task with { Media = null, DurationMin = 1440, Batteries = [RunTimeSamples.Brick with { EnergyWh = 1.4, Count = 200 }] });
        Assert.Equal(RunTimeForecast.MostSwapsListed, report.Swaps.Count);
        Assert.Equal(269, report.Items[0].SetsNeeded); // 1440 minutes at 5.355 each.
        Assert.Contains(report.Advisories, a => a.Code == "swaps-cut");
    }

    [Fact]
    public void Run_OnlyFilesChange_AsksNobodyToPark()
    {
        RunTimeTask task = new() { Media = RunTimeSamples.Media with { LargeFiles = false }, DurationMin = 240 };
        RunTimeReport report = RunTimeForecast.Run(task);
        Assert.All(report.Swaps, s => Assert.Equal("Start a new file", s.Words));
        Assert.Equal(3, report.Swaps.Count);
        Assert.DoesNotContain(report.Advisories, a => a.Code == "swap-parked");
    }

    [Fact]
    public void Run_Advisories_ComeMostSevereFirst()
    {
        IReadOnlyList<Advisory> advisories = RunTimeForecast.Run(RunTimeSamples.Task with { BatteryC = 50 }).Advisories;
        Assert.Equal(advisories.OrderByDescending(a => a.Severity), advisories);
        Assert.Equal(AdvisorySeverity.Safety, advisories[0].Severity);
    }

    [Fact]
    public void Run_Invalid_Throws() => Assert.Throws<InvalidInputException>(() => RunTimeForecast.Run(new RunTimeTask()));

    private static RunTimeTask Random(Random random)
    {
        double day = 60 + (random.NextDouble() * 900);
        return new RunTimeTask
        {
            Batteries = [RunTimeSamples.Brick with { EnergyWh = 5 + (random.NextDouble() * 60), Count = random.Next(1, 60) }, new("cell", "Cell", BatteryChemistry.Alkaline, 3, 1, random.Next(1, 100))],
            Devices = [RunTimeSamples.Recorder, new("sender", "Sender", 6 + (random.NextDouble() * 10), "brick", 1, random.Next(1, 3)), new("pack", "Pack", 0.3 + random.NextDouble(), "cell", 2, 4)],
            Media = RunTimeSamples.Media with { CardSizeGB = 1 + (random.NextDouble() * 20), LargeFiles = random.Next(2) == 0, CardCount = random.Next(2, 30) },
            BatteryC = -15 + (random.NextDouble() * 50),
            MarginFraction = random.NextDouble() * 0.4,
            TakesOnly = random.Next(2) == 0,
            DurationMin = day,
            Takes = random.Next(4) == 0 ? [] : RunTimeSamples.Day(random, day, 50),
        };
    }

    private static void CoversTheDay(RunTimeTask task, RunTimeReport report, RunTimeItem item)
    {
        bool inTakes = task.TakesOnly && task.Takes.Count > 0 && item.Kind == RunTimeKind.Card;
        double since = 0;
        double[] swaps = [.. report.Swaps.Where(s => s.ItemIds.Contains(item.Id) || (item.Kind == RunTimeKind.File && s.ItemIds.Contains("cards"))).Select(s => s.AtMin)];
        Assert.Equal(item.SetsNeeded, swaps.Length + 1);
        foreach (double until in swaps.Append(task.DurationMin))
        {
            double used = inTakes ? task.Takes.Sum(t => Math.Max(0, Math.Min(t.EndMin, until) - Math.Max(t.StartMin, since))) : until - since;
            Assert.True(used <= (item.Hours * 60) + 1e-6, $"{item.Id} was used for {used} minutes and lasts {item.Hours * 60}.");
            since = until;
        }
    }

    // Fewest sets with swaps on a half-minute grid, each two minutes or more before the next take; null when no such schedule lasts.
    private static int? FewestSets(double day, List<PlannedTake> takes, double life)
    {
        var moments = new List<double> { 0 };
        for (double m = 0.5; m < day; m += 0.5)
        {
            double next = takes.Where(t => t.StartMin >= m).Select(t => t.StartMin).DefaultIfEmpty(double.PositiveInfinity).Min();
            if (!takes.Any(t => m > t.StartMin && m < t.EndMin) && next - m >= 2)
            {
                moments.Add(m);
            }
        }

        var sets = new int?[moments.Count];
        sets[0] = 1;
        int? best = null;
        for (int i = 0; i < moments.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (sets[j] is { } s && moments[i] - moments[j] <= life && (sets[i] is null || s + 1 < sets[i]))
                {
                    sets[i] = s + 1;
                }
            }

            if (sets[i] is { } all && day - moments[i] <= life && (best is null || all < best))
            {
                best = all;
            }
        }

        return best;
    }
}
