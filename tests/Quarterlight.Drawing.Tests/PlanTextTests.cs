using System.Globalization;

using CsCheck;

using Quarterlight.Placement;
using Quarterlight.Quantities;

namespace Quarterlight.Drawing.Tests;

public class PlanTextTests
{
    [Theory]
    [MemberData(nameof(DrawingScenes.Indices), MemberType = typeof(DrawingScenes))]
    public void Of_AnyScene_NamesEveryTalkerMicrophoneAndShotWithinTheLimit(int index)
    {
        PlannedScene scene = DrawingScenes.All[index];
        string text = scene.Drawn.Picture.TextAlternative;
        Assert.InRange(text.Length, 1, 1024);
        Assert.All(scene.Scene.Talkers, t => Assert.Contains(t.DisplayName, text, StringComparison.Ordinal));
        Assert.All(scene.Plan.Best.Placements, p =>
        {
            Talker talker = scene.Scene.Talkers.First(t => t.Id == p.TalkerId);
            string microphone = scene.Kit.Microphones.First(m => m.Id == p.MicrophoneId).DisplayName;
            Assert.Contains($"{talker.DisplayName}, has the {microphone}.", text, StringComparison.Ordinal);
        });
        string cameras = text[text.IndexOf("There ", StringComparison.Ordinal)..];
        Assert.All(scene.Scene.Shots, s => Assert.Contains(s.Id, cameras, StringComparison.Ordinal));
    }

    [Fact]
    public void Of_RoomEnough_SaysPlaceAimNullAndLens()
    {
        PlannedScene scene = DrawingScenes.VanOfOne;
        TalkerPlacement placement = scene.Plan.Best.Placements[0];
        string text = scene.Drawn.Picture.TextAlternative;
        Assert.Contains(placement.PlaceWords, text, StringComparison.Ordinal);
        Assert.Contains(placement.AimWords, text, StringComparison.Ordinal);
        Assert.NotNull(placement.NullToEngineRad);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"its null is {Angles.RadToDeg(placement.NullToEngineRad.Value):0}° from the engine"), text, StringComparison.Ordinal);
        Assert.Contains("one camera, A (32 mm).", text, StringComparison.Ordinal);
        Assert.Contains("The engine is off.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TalkerWithoutMicrophone_SaysSo() =>
        Assert.Contains("Aunt, has no microphone.", DrawingScenes.FarCamera.Drawn.Picture.TextAlternative, StringComparison.Ordinal);

    [Fact]
    public void Of_OpenWindow_SaysWhich() =>
        Assert.Contains("These windows are open: front right.", DrawingScenes.CarrierOfFive.Drawn.Picture.TextAlternative, StringComparison.Ordinal);

    // Names of any length: the text must stay within the limit and must not end inside a sentence.
    [Fact]
    public void Of_NamesOfAnyLength_KeepsToTheLimitInWholeSentences()
    {
        PlannedScene crowd = DrawingScenes.CrowdOfSeven;
        Gen.Int[1, 400].Array[crowd.Scene.Talkers.Count].Sample(
            lengths =>
            {
                Scene scene = crowd.Scene with { Talkers = [.. crowd.Scene.Talkers.Select((t, i) => t with { DisplayName = new string('N', lengths[i]) })] };
                string text = PlanText.Of(crowd.Cabin, crowd.Kit, scene, crowd.Plan.Best);
                Assert.InRange(text.Length, 1, PlanText.MaxLength);
                Assert.EndsWith(".", text, StringComparison.Ordinal);
                int said = scene.Talkers.Count(t => text.Contains($", {t.DisplayName}, has the ", StringComparison.Ordinal));
                Assert.True(said == scene.Talkers.Count || text.Contains(" more.", StringComparison.Ordinal), text);
            },
            iter: 100);
    }

    // Compass directions of the car's frame: x forward, y left, z up (docs of Vector3D).
    [Theory]
    [InlineData(1, 0, 0, "forward, level")]
    [InlineData(-1, 1, 0, "back left, level")]
    [InlineData(-1, 0, 1, "back, 45° up")]
    [InlineData(0, -1, -1, "right, 45° down")]
    [InlineData(-1, -0.01, 0, "back, level")]
    [InlineData(0.01, 0, -1, "89° down")]
    public void Short_Direction_IsHeadingAndTilt(double x, double y, double z, string words) =>
        Assert.Equal(words, AimText.Short(new Vector3D(x, y, z).Normalized()));
}
