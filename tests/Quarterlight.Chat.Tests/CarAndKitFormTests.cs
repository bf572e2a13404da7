using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Keeping;
using Quarterlight.V1;
using static Quarterlight.Chat.Tests.KeepingTalk;

namespace Quarterlight.Chat.Tests;

/// <summary>Cars and kits by form, against the real planner, and the words they take.</summary>
public sealed class CarAndKitFormTests(KeepingPlanner planner) : IClassFixture<KeepingPlanner>
{
    [Fact]
    public async Task NewCar_TapeInMixedUnits_FillsTheRestFromTheShape()
    {
        KeepingTalk talk = planner.Talk;
        CrewAnswer answer = await talk.SubmitAsync(await talk.FormAsync("car new"), ("name", "Grey one"), ("shape", "estate, right-hand drive"), ("details", "electric, glass roof, leather"),
            ("lengths", "shoulder width 1,45 m, seat spacing: 29 1/2 in"), ("heights", "front height 3 ft 11 in\nsill 780mm"));

        Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
        Assert.Contains("id grey-one", answer.Headline, StringComparison.Ordinal);
        Assert.Contains("dash to backrest", All(answer), StringComparison.Ordinal);
        V1.Cabin car = await talk.CarAsync("grey-one");
        Assert.Equal((BodyStyle.Estate, DriveSide.Right, EngineLayout.Electric, Upholstery.Leather, true), (car.BodyStyle, car.DriveSide, car.EngineLayout, car.Upholstery, car.GlassRoof));
        Assert.Equal(1.45, car.Measurements.ShoulderWidthM, 12);
        Assert.Equal(29.5 * 0.0254, car.Measurements.SeatSpacingM, 12);
        Assert.Equal(47 * 0.0254, car.Measurements.FrontHeightM, 12);
        Assert.Equal(0.78, car.Measurements.SillHeightM, 12);
        Assert.Equal(0.76, car.Measurements.DashHeightM, 12); // docs/models/cabin.md: the estate's template.

        CrewForm form = await talk.FormAsync("car edit", ("car", "Grey one"));
        V1.Cabin before = await talk.CarAsync("grey-one");
        Assert.Contains("nothing was changed", (await talk.SubmitAsync(form)).Headline, StringComparison.Ordinal);
        Assert.Equal(before, await talk.CarAsync("grey-one"));
        await talk.SubmitAsync(form, ("lengths", form.Value("lengths").Replace("145 cm", "145.2 cm", StringComparison.Ordinal)));
        before.Measurements.ShoulderWidthM = 1.452;
        V1.Cabin now = await talk.CarAsync("grey-one");
        Assert.Equal(before.Measurements, now.Measurements);
    }

    [Fact]
    public async Task NewCar_NothingRight_NamesEachMistake()
    {
        KeepingTalk talk = planner.Talk;
        (int, int, int) before = await talk.CountAsync();
        string all = All(await talk.SubmitAsync(await talk.FormAsync("car new"), ("name", "X"), ("shape", "submarine"), ("details", "warp drive"), ("lengths", "wheelbase 2.7 m, shoulder width 145"), ("heights", "front height 5 ft, front height 1 m")));

        foreach (string expected in new[] { "no shape was found", "driver's side is missing", "\"submarine\"", "\"warp drive\"", "\"wheelbase 2.7 m\" is not one of the measurements", "\"shoulder width 145\" is not clear", "is there twice" })
        {
            Assert.Contains(expected, all, StringComparison.OrdinalIgnoreCase);
        }

        string tooWide = All(await talk.SubmitAsync(await talk.FormAsync("car new"), ("name", "X"), ("shape", "saloon lhd"), ("lengths", "shoulder width 9 m")));
        Assert.Contains("shoulder width", tooWide, StringComparison.Ordinal);
        Assert.Equal(before, await talk.CountAsync());
    }

    [Fact]
    public async Task EditCarAndKit_Unchanged_LeavesEveryDemoOne()
    {
        foreach (UnitPreference units in Enum.GetValues<UnitPreference>())
        {
            KeepingTalk talk = new(planner.Talk.Borrowed) { Units = units };
            foreach (V1.Cabin car in DemoData.Cabins)
            {
                V1.Cabin before = await talk.CarAsync(car.Name["cabins/".Length..]);
                Assert.Contains("nothing was changed", (await talk.SubmitAsync(await talk.FormAsync("car edit", ("car", before.Name)))).Headline, StringComparison.Ordinal);
                Assert.Equal(before, await talk.CarAsync(car.Name["cabins/".Length..]));
            }

            foreach (Kit kit in DemoData.Kits)
            {
                Kit before = await talk.KitAsync(kit.Name["kits/".Length..]);
                Assert.Contains("nothing was changed", (await talk.SubmitAsync(await talk.FormAsync("kit edit", ("kit", before.Name)))).Headline, StringComparison.Ordinal);
                Assert.Equal(before, await talk.KitAsync(kit.Name["kits/".Length..]));
            }
        }
    }

    [Fact]
    public async Task NewKit_PlainLines_KeepsTypicalFiguresAndSaysSo()
    {
        KeepingTalk talk = planner.Talk;
        CrewAnswer answer = await talk.SubmitAsync(await talk.FormAsync("kit new"), ("name", "Van kit"),
            ("microphones", "2 x cardioid lavalier, 1 x short supercardioid: self-noise 15 dB, 25 mV/Pa\n3 x boundary plate; 1x shotgun: tube 20 cm, 25 cm long"), ("fixings", "4 spring clips, 2 suckers, 12 paper tape, 3 body mounts"), ("inputs", "6 inputs"));

        Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
        Assert.Contains("typical of its kind for cardioid lavalier", All(answer), StringComparison.Ordinal);
        Kit kit = await talk.KitAsync("van-kit");
        Assert.Equal(["2 Cardioid", "1 Supercardioid", "3 Omni", "1 InterferenceTube"], kit.Microphones.Select(m => $"{m.Count} {m.Pattern}"));
        Assert.Equal((15, 25, 0.2, 0.25), (kit.Microphones[1].SelfNoiseDba, kit.Microphones[1].SensitivityMvPerPa, kit.Microphones[3].TubeLengthM, kit.Microphones[3].BodyLengthM));
        Assert.Equal(6, kit.RecorderInputCount);
        Assert.Equal([(Fixing.SpringClip, 4), (Fixing.SuctionCup, 2), (Fixing.PaperTape, 12), (Fixing.BodyMount, 3)], kit.Fixings.Select(f => (f.Fixing, f.Count)));
    }

    [Fact]
    public async Task EditKit_OneMicrophone_KeepsBatteriesRadioAndTheOthers()
    {
        KeepingTalk talk = planner.Talk;
        Kit copy = DemoData.Kits[^1].Clone();
        copy.DisplayName = "Copied kit";
        await talk.Planner.Kits.CreateKitAsync(new() { KitId = "copied", Kit = copy }, cancellationToken: TestContext.Current.CancellationToken);
        Kit wanted = await talk.KitAsync("copied");
        CrewForm form = await talk.FormAsync("kit edit", ("kit", "copied"));
        string first = form.Value("microphones").Split('\n')[0];

        CrewAnswer answer = await talk.SubmitAsync(form, ("microphones", form.Value("microphones").Replace(first, first.Replace($"{wanted.Microphones[0].Count} x", "7 x", StringComparison.Ordinal), StringComparison.Ordinal)));

        Assert.True(answer.Outcome == CrewOutcome.Answered, All(answer));
        Assert.Contains("batteries", All(answer), StringComparison.Ordinal);
        Kit now = await talk.KitAsync("copied");
        wanted.Microphones[0].Count = 7;
        (wanted.Revision, wanted.UpdateTime) = (now.Revision, now.UpdateTime);
        Assert.Equal(wanted, now);
    }

    [Fact]
    public async Task NewKit_NothingRight_NamesEachMistake()
    {
        string all = All(await planner.Talk.SubmitAsync(await planner.Talk.FormAsync("kit new"), ("name", "X"), ("microphones", "lots of mics\n2 x thing\n1 x omni lavalier: 26 bananas"), ("fixings", "4 nails, clips"), ("inputs", "some")));

        foreach (string expected in new[] { "\"lots of mics\" is not understood", "how does \"thing\" hear", "\"26 bananas\"", "\"4 nails\"", "\"clips\"", "\"some\" is no number" })
        {
            Assert.Contains(expected, all, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void CarWords_EveryCar_IsReadAsItWasSaid()
    {
        foreach (BodyStyle body in Enum.GetValues<BodyStyle>().Where(b => b != BodyStyle.Unspecified))
        {
            foreach (DriveSide side in new[] { DriveSide.Left, DriveSide.Right })
            {
                foreach (EngineLayout engine in Enum.GetValues<EngineLayout>().Where(e => e != EngineLayout.Unspecified))
                {
                    var car = new V1.Cabin { BodyStyle = body, DriveSide = side, EngineLayout = engine, Upholstery = Upholstery.Leather, GlassRoof = true, AirbagFit = AirbagFit.None, CylinderCount = 6 };
                    EntryReading reading = Reading(("shape", CarWords.Shape(car)), ("details", CarWords.Details(car)));
                    var back = new V1.Cabin();
                    CarWords.ReadShape(reading, "shape", back);
                    CarWords.ReadDetails(reading, "details", back);
                    Assert.True(reading.Good, CarWords.Shape(car) + CarWords.Details(car));
                    Assert.Equal(car, back);
                }
            }
        }
    }

    [Fact]
    public void DriveWords_AnyConditions_AreReadAsTheyWereSaidAndKeptWhole()
    {
        var random = new Random(17);
        string[] panes = ["front-left", "front-right", "rear-left", "rear-right"];
        for (int i = 0; i < 500; i++)
        {
            var drive = new DriveConditions { SpeedKmPerHour = random.Next(3) == 0 ? 0 : random.NextDouble() * 130, RoadSurface = (RoadSurface)random.Next(6), FanStep = random.Next(5), Rain = (Rain)random.Next(4), EngineState = (EngineState)random.Next(3) };
            foreach (string pane in panes.Where(_ => random.Next(3) == 0))
            {
                drive.OpenWindows.Add(new WindowOpening { PaneId = pane, OpenFraction = random.Next(1, 1001) / 1000.0 });
            }

            if (random.Next(3) == 0)
            {
                drive.EngineSpeedRpm = random.Next(500, 8000);
            }

            foreach (UnitPreference units in Enum.GetValues<UnitPreference>())
            {
                string said = DriveWords.Say(drive, units);
                EntryReading reading = Reading(("drive", said));
                DriveConditions back = DriveWords.Read(reading, "drive", drive, driverOnLeft: random.Next(2) == 0, panes, units);
                Assert.True(reading.Good, said + "\n" + All(reading.Refusal(CrewMemory.Empty)));
                Assert.True(drive.Equals(back), $"{said}\n{drive}\n{back}");
            }
        }
    }

    [Fact]
    public void LengthWords_AnyLength_IsReadWithinHalfOfWhatIsShown()
    {
        var random = new Random(5);
        for (int i = 0; i < 2000; i++)
        {
            double metres = random.NextDouble() * 4;
            Assert.InRange(Math.Abs(LengthWords.Read(LengthWords.Say(metres, UnitPreference.Metric))!.Value.Metres - metres), 0, 0.00051);
            Assert.InRange(Math.Abs(LengthWords.Read(LengthWords.Say(metres, UnitPreference.Imperial))!.Value.Metres - metres), 0, 0.00128);
        }

        Assert.Null(LengthWords.Read("145"));
        Assert.Null(LengthWords.Read("1 m 45"));
        Assert.Null(LengthWords.Read("-3 cm"));
    }

    private static EntryReading Reading(params (string Field, string Text)[] fields) =>
        new(new CrewFormEntry("f", fields.ToDictionary(f => f.Field, f => f.Text)), new CrewForm("f", "f", [.. fields.Select(f => new CrewFormField(f.Field, f.Field))]));
}
