using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;

namespace Quarterlight.Chat.Tests;

/// <summary>The weights that ship, and how they are kept.</summary>
public sealed class IntentModelTests
{
    private static readonly CrewVocabulary Vocabulary = new(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);

    [Fact]
    public void Probabilities_SameQuestionTwice_SameToTheBit() => Assert.Equal(Ask("will the packs hold till wrap"), Ask("will the packs hold till wrap"));

    [Fact]
    public void Probabilities_AnyQuestion_SumToOne() => Assert.Equal(1, Ask("zzz qqq").Sum(), 4);

    [Theory]
    [InlineData("will the cells in the bodypacks hold till wrap", CrewIntent.RunTime)]
    [InlineData("how loud is the cabin at sixty", CrewIntent.NoiseForecast)]
    [InlineData("can we lawfully run fifty milliwatts in norway", CrewIntent.LinkLaw)]
    [InlineData("two teas and a bacon roll", CrewIntent.Unknown)]
    public void Probabilities_PlainQuestion_LeadsWithWhatItAsks(string question, CrewIntent intent)
    {
        float[] probabilities = Ask(question);

        Assert.Equal(intent, (CrewIntent)Array.IndexOf(probabilities, probabilities.Max()));
    }

    [Fact]
    public void Write_SlipOfTheThumb_SharesMostPiecesOfWords()
    {
        HashSet<uint> right = [.. Features("batteries in the transmitter").Select(f => f.Hash)], slipped = [.. Features("batterjes in the transmiter").Select(f => f.Hash)];

        Assert.True(right.Intersect(slipped).Count() > right.Count / 2);
    }

    [Fact]
    public void Write_ThenRead_KeepsWeightsWithinOneStep()
    {
        float[] bias = new float[IntentModel.Classes], weights = new float[IntentModel.Classes];
        (weights[1], weights[2], bias[3]) = (2, -1, 0.5f);
        using var kept = new MemoryStream();
        IntentModel.Write([7], bias, weights, kept);
        kept.Position = 0;
        float[] got = new float[IntentModel.Classes];
        IntentModel.Read(kept).Probabilities([new IntentFeature(7, 1), new IntentFeature(8, 1)], got);

        float[] expected = [.. weights.Zip(bias, (w, b) => w + b)];
        IntentModel.Softmax(expected);
        Assert.All(expected.Zip(got), p => Assert.Equal(p.First, p.Second, 2 / 127f));
    }

    [Fact]
    public void Read_SomethingElse_IsRefused()
    {
        using var other = new MemoryStream([1, 2, 3, 4, 5, 6, 7, 8]);

        Assert.Throws<InvalidDataException>(() => IntentModel.Read(other));
    }

    private static IntentFeature[] Features(string question)
    {
        QuestionRead read = RequestReader.ByRules(CrewText.Clean(question), Vocabulary, new CrewMemory { SceneName = DemoData.MainScene }, UnitPreference.Metric);
        var features = new IntentFeature[IntentFeatures.Most];
        return features[..IntentFeatures.Write(read.Seen, read.Rules.Intent, features)];
    }

    private static float[] Ask(string question)
    {
        float[] probabilities = new float[IntentModel.Classes];
        IntentModel.Shipped.Probabilities(Features(question), probabilities);
        return probabilities;
    }
}
