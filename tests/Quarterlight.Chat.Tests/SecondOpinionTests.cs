using Quarterlight.Crew;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;

namespace Quarterlight.Chat.Tests;

/// <summary>Where the model may speak, and where it may not however sure it is.</summary>
public sealed class SecondOpinionTests
{
    private static readonly CrewVocabulary Vocabulary = new(DemoData.Scenes, DemoData.Cabins, DemoData.Kits);

    [Theory]
    [InlineData(CrewIntent.SetUnits)]
    [InlineData(CrewIntent.SetClipLimits)]
    [InlineData(CrewIntent.UseScene)]
    [InlineData(CrewIntent.LoadDemo)]
    [InlineData(CrewIntent.Show)]
    [InlineData(CrewIntent.WhatIf)]
    [InlineData(CrewIntent.CheckChannels)]
    [InlineData(CrewIntent.ClipQuestion)]
    [InlineData(CrewIntent.ClipReplan)]
    public void Choose_SlotMissing_IsNeverGuessed(CrewIntent intent) =>
        Assert.Equal(CrewIntent.Unknown, Choose(Read("would you kindly sort that one"), intent, 0.99f));

    [Theory]
    [InlineData("the office prefers freedom units", CrewIntent.SetUnits)]
    [InlineData("would you kindly sort that out in the fake data", CrewIntent.LoadDemo)]
    public void Choose_SlotThere_IsTaken(string question, CrewIntent intent) => Assert.Equal(intent, Choose(Read(question), intent, 0.99f));

    [Fact]
    public void Choose_HardlyLikelier_RulesStand()
    {
        QuestionRead read = Read("where do the mics go");
        float[] probabilities = new float[IntentModel.Classes];
        (probabilities[(int)CrewIntent.Plan], probabilities[(int)CrewIntent.Details]) = (0.45f, 0.5f);

        Assert.Equal(CrewIntent.Plan, read.Rules.Intent);
        Assert.Equal(CrewIntent.Plan, SecondOpinion.Choose(read, probabilities));
    }

    [Fact]
    public void Choose_MuchLikelier_ModelStands() => Assert.Equal(CrewIntent.Details, Choose(Read("mount plan please"), CrewIntent.Details, 0.9f));

    [Fact]
    public void Choose_RulesUnderstoodAndNothingHardlyLikelier_RulesStand()
    {
        QuestionRead read = Read("where do the mics go");
        float[] probabilities = new float[IntentModel.Classes];
        (probabilities[(int)CrewIntent.Plan], probabilities[(int)CrewIntent.Unknown]) = (0.35f, 0.6f);

        Assert.Equal(CrewIntent.Plan, SecondOpinion.Choose(read, probabilities));
        Assert.Equal(CrewIntent.Unknown, Choose(read, CrewIntent.Unknown, 0.9f));
    }

    [Theory]
    [InlineData("visor", 0.3f, CrewIntent.WhySite)]
    [InlineData("zebra", 0.3f, CrewIntent.Unknown)]
    [InlineData("zebra", 0.7f, CrewIntent.WhySite)]
    public void Choose_OneWord_NeedsMoreUnlessItIsAPlace(string question, float probability, CrewIntent intent) => Assert.Equal(intent, Choose(Read(question), CrewIntent.WhySite, probability));

    [Theory]
    [InlineData("let's do the lay-by now", CrewIntent.UseScene)]
    [InlineData("next best for the school run", CrewIntent.RunnerUp)]
    [InlineData("ferry queue", CrewIntent.Plan)]
    public void Choose_SceneNamed_TurnsToItOnlyWhenNothingElseIsAsked(string question, CrewIntent intent) => Assert.Equal(intent, Choose(Read(question), CrewIntent.UseScene, 0.99f));

    [Fact]
    public void Choose_WhileTheRadioIsTalkedAbout_RulesStand()
    {
        QuestionRead read = Read("and at 200 metres", new CrewMemory { SceneName = DemoData.MainScene, LastRadio = new RadioMemory(CrewIntent.LinkCheck, new RadioSaid()) });

        Assert.Equal(CrewIntent.LinkCheck, Choose(read, CrewIntent.NoiseForecast, 0.99f));
    }

    [Fact]
    public void Of_ClipAttached_IsJudgedWhateverIsSaid() =>
        Assert.Equal(CrewIntent.JudgeClip, RequestReader.Read("how loud is the cabin at sixty", Vocabulary, CrewMemory.Empty, UnitPreference.Metric, attached: true).Intent);

    [Theory]
    [InlineData("cheers, see you at the van")]
    [InlineData("what time is crew call tomorrow")]
    [InlineData("tell me a joke")]
    [InlineData("stop recording")]
    public void Of_NothingForTheDesk_StaysUnknown(string question) => Assert.Equal(CrewIntent.Unknown, SecondOpinion.Of(Read(question)).Intent);

    [Fact]
    public void Of_ModelKnowsBetter_SlotsComeWithIt()
    {
        CrewRequest request = SecondOpinion.Of(Read("racket in the cabin at 50 mph please"));

        Assert.Equal(CrewIntent.NoiseForecast, request.Intent);
        Assert.Equal(80.5, request.Forecast.Noise.Drive.SpeedKmPerHour!.Value, 0.1);
    }

    private static QuestionRead Read(string question, CrewMemory? memory = null) =>
        RequestReader.ByRules(CrewText.Clean(question), Vocabulary, memory ?? new CrewMemory { SceneName = DemoData.MainScene }, UnitPreference.Metric);

    private static CrewIntent Choose(QuestionRead read, CrewIntent intent, float probability)
    {
        float[] probabilities = new float[IntentModel.Classes];
        probabilities[(int)intent] = probability;
        return SecondOpinion.Choose(read, probabilities);
    }
}
