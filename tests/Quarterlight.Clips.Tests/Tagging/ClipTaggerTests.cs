using Quarterlight.Clips.Tagging;

namespace Quarterlight.Clips.Tests.Tagging;

public class ClipTaggerTests
{
    [Fact]
    public void Tag_SecondsOfDifferentLength_AreWeighted()
    {
        FeatureSecond Second(double start, double end, float value) => new(start, end, Enumerable.Repeat(value, FeatureFrontEnd.Count).ToArray());
        var features = new ClipFeatures(2.5, [Second(0, 1, 0.9f), Second(1, 2.5, 0.1f)]);
        TagReport report = ClipTagger.Tag(features, new FirstFeature())!;

        // (0.9 x 1 + 0.1 x 1.5) / 2.5
        Assert.Equal(0.42, report.Overall.Engine, 1e-6);
        Assert.Equal(TagState.Unsure, report.States[ClipTag.Engine]);
        Assert.Equal(TagState.Present, report.States[ClipTag.Wind]);
        Assert.Equal(TagState.Absent, report.States[ClipTag.Clean]);
        Assert.Equal([(0, 1), (1, 2.5)], report.Seconds.Select(s => (s.StartSeconds, s.EndSeconds)));
        Assert.Equal("first", report.Tagger.Name);
    }

    [Theory]
    [InlineData(0.29999, TagState.Absent)]
    [InlineData(0.3, TagState.Unsure)]
    [InlineData(0.69999, TagState.Unsure)]
    [InlineData(0.7, TagState.Present)]
    [InlineData(double.NaN, TagState.Unsure)]
    public void StateOf_Probability_ByTheBand(double probability, TagState state) => Assert.Equal(state, new UnsureBand(0.3, 0.7).StateOf(probability));

    [Fact]
    public void Indexers_EachTag_ItsOwnValue()
    {
        var p = new TagProbabilities(0.1, 0.2, 0.3, 0.4);
        Assert.Equal([0.1, 0.2, 0.3, 0.4], Enum.GetValues<ClipTag>().Select(t => p[t]));
        Assert.Throws<ArgumentOutOfRangeException>(() => p[(ClipTag)9]);
    }

    private sealed class FirstFeature : ISoundTagger
    {
        public TaggerIdentity Identity { get; } = new("first", "1", "");

        public TagThresholds Thresholds { get; } = new(new(0.3, 0.7), new(0.3, 0.7), new(0.3, 0.7), new(0.3, 0.7));

        public TagProbabilities Score(ReadOnlySpan<float> features) => new(features[0], 1, 0.5, 0);
    }
}
