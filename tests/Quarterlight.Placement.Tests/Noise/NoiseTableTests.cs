using Quarterlight.Acoustics;
using Quarterlight.Placement.Noise;

namespace Quarterlight.Placement.Tests.Noise;

public class NoiseTableTests
{
    [Fact]
    public void Rows_ShutAndDry_ShowWhatMayBeMet() => Assert.Equal(
        [
            "windows shut, smooth asphalt, dry",
            "all windows half down, smooth asphalt, dry",
            "all windows down, smooth asphalt, dry",
            "windows shut, coarse asphalt, dry",
            "windows shut, concrete, dry",
            "windows shut, smooth asphalt, light rain",
            "windows shut, smooth asphalt, heavy rain",
            "windows shut, smooth asphalt, dry, fan step 1",
        ],
        Rows(Questions.Drive(50)).Select(r => r.Words));

    [Fact]
    public void Rows_OpenWetFanOn_StartWithTheQuestionAndThenTheFanOff()
    {
        DriveConditions asked = Questions.Drive(50) with { OpenWindows = [new("front-left", 1), new("rear-right", 0.25)], Rain = Rain.Light, Road = RoadSurface.Gravel, FanStep = 2, Engine = EngineState.Off };
        string[] words = [.. Rows(asked).Select(r => r.Words)];
        Assert.Equal("front-left window down and rear-right window 25 % down, gravel, light rain, fan step 2, engine off", words[0]);
        Assert.Equal("front-left window down and rear-right window 25 % down, gravel, light rain, engine off", words[1]);
        Assert.Equal("windows shut, gravel, light rain, fan step 2, engine off", words[2]);
    }

    [Theory]
    [InlineData("front-left", 0.5, "front-left window half down")]
    [InlineData("front-left front-right", 1, "front-left and front-right windows down")]
    [InlineData("front-left front-right rear-left rear-right", 0.3, "all windows 30 % down")]
    public void Rows_WindowsAlike_AreSaidTogether(string panes, double fraction, string words) =>
        Assert.StartsWith(words + ",", Rows(Questions.Drive(0) with { OpenWindows = [.. panes.Split(' ').Select(p => new WindowOpening(p, fraction))] })[0].Words, StringComparison.Ordinal);

    // Seeded: whatever is asked, rows are few, differ, have a cell for each speed, and each says the fastest speed of its own cells' kind.
    [Fact]
    public void Rows_AnyQuestion_AreFewAndDiffer()
    {
        var random = new Random(3);
        for (int i = 0; i < 20; i++)
        {
            DriveConditions drive = Questions.Drive(random.Next(131)) with
            {
                Road = (RoadSurface)random.Next(5),
                Rain = (Rain)random.Next(3),
                FanStep = random.Next(3),
                OpenWindows = Questions.AllDown[..random.Next(5)],
            };
            IReadOnlyList<NoiseRow> rows = Rows(drive);
            Assert.InRange(rows.Count, 5, 8);
            Assert.Equal(rows.Count, rows.Select(r => r.Words).Distinct().Count());
            foreach (NoiseRow row in rows)
            {
                Assert.Equal([0, 20, 30, 50, 60, 80, 100, 120], row.Cells.Select(c => c.SpeedKmPerHour));
                Assert.All(row.Cells.Where(c => c.SpeedKmPerHour > (row.FastestWorksKmPerHour ?? -1)), c => Assert.NotEqual(SceneVerdict.Works, c.Verdict));
            }
        }
    }

    // At one engine speed nothing that makes noise makes the car quieter or a talker clearer.
    [Fact]
    public void Rows_RougherWetterFaster_AreNeverBetter()
    {
        IReadOnlyList<NoiseRow> rows = Rows(Questions.Drive(50) with { EngineRpm = 1800 });
        (int Better, int Worse)[] pairs = [(0, 3), (3, 4), (0, 5), (5, 6), (0, 7), (0, 1), (1, 2)];
        foreach ((int better, int worse) in pairs)
        {
            foreach ((SpeedNoise a, SpeedNoise b) in rows[better].Cells.Zip(rows[worse].Cells).Where(c => c.First.SpeedKmPerHour > 0))
            {
                Assert.True(b.NoiseDba > a.NoiseDba && b.WorstSnrDba < a.WorstSnrDba, $"{rows[worse].Words} at {b.SpeedKmPerHour}");
            }
        }

        Assert.All(rows, r => Assert.Equal(r.Cells.OrderBy(c => c.NoiseDba), r.Cells));
        Assert.All(rows, r => Assert.Equal(r.Cells.OrderByDescending(c => c.WorstSnrDba), r.Cells));
    }

    [Fact]
    public void Rows_CarWithTwoMovableWindows_OpensOnlyThose()
    {
        NoiseTask task = Questions.Unplanned(Questions.Drive(50)) with { MovablePaneIds = ["front-left", "front-right"] };
        NoiseRow down = NoiseSurvey.Run(task).Table.Single(r => r.Words.StartsWith("all windows down", StringComparison.Ordinal));
        double two = CabinNoises.Of(Questions.Drive(80) with { OpenWindows = Questions.AllDown[..2] }, task.Car).LevelDba;
        Assert.Equal(two, down.Cells.Single(c => c.SpeedKmPerHour == 80).NoiseDba, 1e-9);
    }

    private static IReadOnlyList<NoiseRow> Rows(DriveConditions drive) => NoiseSurvey.Run(Questions.Planned(drive)).Table;
}
