using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Tests;

public class AimSearchTests
{
    // The climb against looking at all thousand aims, for every usable spot, directional pattern and talker of a scene.
    [Theory]
    [InlineData(0)]
    [InlineData(70)]
    [InlineData(150)]
    public void Best_AgainstTheFullScan_IsNeverMoreThanATenthOfADecibelWorse(double secondYawDeg)
    {
        PlacementTask task = Tasks.Saloon(
            Tasks.Talker("driver", "driver", Tasks.Turned(0, 0.6), Tasks.Turned(secondYawDeg, 0.4)),
            Tasks.Talker("back", "rear-right", Tasks.Turned(10)));
        PlacementOptions options = PlacementOptions.Default;
        var fields = new SpotFields(task, options);
        List<MountSpot> spots = [.. MountSpot.All(task, options).Where((s, i) => s.Wearer < 0 && i % 4 == 0)];
        using var sums = new SpotSums(fields, spots, options);
        var search = new AimSearch(new AimScore(fields, sums, options));
        double worst = 0;
        int compared = 0;
        for (int s = 0; s < spots.Count; s++)
        {
            foreach (Microphone microphone in new[] { Tasks.Cardioid, Tasks.Supercardioid })
            {
                for (int t = 0; t < 2; t++)
                {
                    var question = new AimSearch.Question(s, [t], microphone.Pattern, SelfNoise.Energy(24), spots[s].Site.Normal, -0.2, 1, Math.Cos(Angles.DegToRad(35)));
                    Vector3D[] toward = [(fields.Voices[fields.FirstVoice[t]].Source.Position - spots[s].Capsule).Normalized()];
                    (_, double climbed) = search.Best(question, toward);
                    (_, double scanned) = search.Scan(question, toward);
                    if (!double.IsNegativeInfinity(scanned))
                    {
                        worst = Math.Max(worst, scanned - climbed);
                        compared++;
                    }
                }
            }
        }

        Assert.True(compared > 100);
        Assert.InRange(worst, 0, 0.1);
    }

    // Ten sums against the definition, to 1e-9 dB of score: the same spot, talker and aim by the direct sum over all arrivals.
    [Fact]
    public void Of_FirstOrderPattern_EqualsTheDirectSum()
    {
        PlacementTask task = Tasks.Saloon(Tasks.Talker("driver", "driver", Tasks.Turned(0, 0.5), Tasks.Turned(60, 0.5)), Tasks.Talker("back", "rear-left"));
        PlacementOptions options = PlacementOptions.Default;
        var fields = new SpotFields(task, options);
        List<MountSpot> spots = [.. MountSpot.All(task, options).Where((_, i) => i % 9 == 0)];
        using var sums = new SpotSums(fields, spots, options);
        var score = new AimScore(fields, sums, options);
        var direct = new TubeScore(fields, options);
        for (int s = 0; s < spots.Count; s++)
        {
            for (int aim = 0; aim < AimGrid.Count; aim += 97)
            {
                var u = AimGrid.Directions[aim];
                double fast = score.Of(s, 0, new AimCoefficients(Tasks.Supercardioid.Pattern.A, Tasks.Supercardioid.Pattern.B, u), SelfNoise.Energy(20));
                double slow = direct.Of(spots[s], 0, Tasks.Supercardioid.Pattern, u, SelfNoise.Energy(20));
                Assert.Equal(slow, fast, 1e-9);
            }
        }
    }

    [Fact]
    public void Best_NoAimAllowed_SaysSo()
    {
        PlacementTask task = Tasks.Saloon(Tasks.Talker("driver", "driver"));
        var fields = new SpotFields(task, PlacementOptions.Default);
        List<MountSpot> spots = [.. MountSpot.All(task, PlacementOptions.Default).Take(1)];
        using var sums = new SpotSums(fields, spots, PlacementOptions.Default);
        var search = new AimSearch(new AimScore(fields, sums, PlacementOptions.Default));
        var question = new AimSearch.Question(0, [0], Tasks.Cardioid.Pattern, SelfNoise.Energy(20), spots[0].Site.Normal, 2, 3, -1);
        Assert.Equal(-1, search.Best(question, [spots[0].Site.Normal]).Aim);
    }
}
