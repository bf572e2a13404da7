using Quarterlight.Crew.Language;
using Quarterlight.Training.Reading;

namespace Quarterlight.Tagger.Tests;

/// <summary>Training of the model that reads what crews ask.</summary>
public sealed class ReadingStudyTests
{
    private static readonly string[] Lines =
    [
        "; [fresh]", "Plan||where do the mics go", "Plan||where should the mics go then", "Plan||tell me where the mics go", "RunTime||will the batteries last the day",
        "RunTime||do the batteries last", "RunTime||how long do the batteries last", "; [mended]", "RunTime|runtime|and the batteries in the cold", "Unknown||thank you",
    ];

    [Fact]
    public void Train_Twice_SameBytes() => Assert.Equal(Train(), Train());

    [Fact]
    public void Parse_Sections_TellFreshFromMended()
    {
        IReadOnlyList<IntentExample> examples = IntentExamples.Parse(Lines);

        Assert.Equal([true, true, true, true, true, true, false, false], examples.Select(e => e.Fresh));
        Assert.Equal("runtime", examples[6].Read.Seen.Topic);
    }

    [Theory]
    [InlineData("Plan|where do the mics go")]
    [InlineData("Nothing||where do the mics go")]
    public void Parse_AnotherForm_IsRefused(string line) => Assert.Throws<FormatException>(() => IntentExamples.Parse([line]));

    private static byte[] Train()
    {
        using var weights = new MemoryStream();
        ReadingStudy.Train(IntentExamples.Parse(Lines), weights);
        return weights.ToArray();
    }
}
