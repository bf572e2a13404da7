namespace Quarterlight.Crew.Language;

/// <summary>Lets the model learnt from examples speak where it is surer than the rules, and holds it back where a wrong guess would change or promise something.</summary>
internal static class SecondOpinion
{
    // Measured by cross validation, docs/models/crew-reading.md: the least lead over what the rules say, and the least probability where they say nothing.
    private const float LeastLead = 0.1f;
    private const float LeastSure = 0.2f;
    private const float LeastSureOfOneWord = 0.6f;

    // To leave alone what the rules understood takes a longer lead.
    private const float LeastLeadOfNothing = 0.3f;

    /// <summary>The request as the rules and the model together understand it.</summary>
    /// <param name="read">The question as the rules read it.</param>
    public static CrewRequest Of(QuestionRead read) => Of(read, IntentModel.Shipped);

    /// <summary>The same with a model of the caller's.</summary>
    internal static CrewRequest Of(QuestionRead read, IntentModel model)
    {
        if (read.Attached || read.Said.Count == 0)
        {
            return read.Rules;
        }

        Span<IntentFeature> features = stackalloc IntentFeature[IntentFeatures.Most];
        Span<float> probabilities = stackalloc float[IntentModel.Classes];
        int count = IntentFeatures.Write(read.Seen, read.Rules.Intent, features);
        model.Probabilities(features[..count], probabilities);
        return As(read, Choose(read, probabilities));
    }

    /// <summary>What is asked, by the rules and the model's probabilities.</summary>
    /// <param name="read">The question as the rules read it.</param>
    /// <param name="probabilities">Probability of each intent; those that cannot stand are made nothing.</param>
    internal static CrewIntent Choose(QuestionRead read, Span<float> probabilities)
    {
        CrewIntent rules = read.Rules.Intent;
        CrewIntent best = rules;
        for (int i = 0; i < probabilities.Length; i++)
        {
            var intent = (CrewIntent)i;
            if (probabilities[i] > probabilities[(int)best] && (intent == CrewIntent.Unknown || Stands(intent, read)))
            {
                best = intent;
            }
        }

        if (best == rules || probabilities[(int)best] - probabilities[(int)rules] < LeastLead)
        {
            return rules;
        }

        if (best == CrewIntent.Unknown && probabilities[(int)best] - probabilities[(int)rules] < LeastLeadOfNothing)
        {
            return rules;
        }

        if (rules == CrewIntent.Unknown)
        {
            bool several = read.Said.Count >= 2 || read.Request.Site is not null;
            return probabilities[(int)best] >= (several ? LeastSure : LeastSureOfOneWord) ? best : rules;
        }

        // The model has seen no questions that go on from one about the radio; there the rules know better.
        return read.Said.Memory.LastRadio is null ? best : rules;
    }

    // What changes something, or speaks of what is not there, is not guessed.
    private static bool Stands(CrewIntent intent, QuestionRead read) => intent switch
    {
        CrewIntent.SetUnits => read.Request.Units is not null,
        CrewIntent.SetClipLimits => read.Request.Clip.Limits is not null || read.Request.Clip.ResetsLimits,
        // A name alone turns to nothing, and what the rules take for a question about the scene stays one.
        CrewIntent.UseScene => read.Request.SceneSaid && !read.Request.HasChanges && read.Said.Count > 2 && read.Rules.Intent is CrewIntent.Unknown or CrewIntent.Plan or CrewIntent.Show,
        CrewIntent.LoadDemo => read.Said.Any("demo", "example", "examples", "sample", "samples", "invented", "dummy", "pretend", "fake", "practice", "mock", "test") && !read.Said.Any("clip", "clips", "recording"),
        CrewIntent.Show => read.Request.SceneSaid || read.Said.KitSaid is not null || read.CabinNamed is not null,
        CrewIntent.WhatIf => read.Request.HasChanges,
        CrewIntent.CheckChannels => read.Radio.CarriersMHz.Count > 1,
        CrewIntent.ClipQuestion or CrewIntent.ClipPicture or CrewIntent.ClipReplan => read.Said.Memory.LastClip is not null || read.Said.Any("clip", "recording", "recorded", "measured"),
        _ => true,
    };

    private static CrewRequest As(QuestionRead read, CrewIntent intent)
    {
        CrewRequest request = read.Request;
        return intent == read.Rules.Intent ? read.Rules : intent switch
        {
            CrewIntent.HeatForecast or CrewIntent.RunTime or CrewIntent.Levels or CrewIntent.NoiseForecast or CrewIntent.QuietStretches => ForecastIntentReader.As(request, read.Said, intent, read.Forecast),
            CrewIntent.LinkCheck or CrewIntent.LinkLaw or CrewIntent.QuietChannel or CrewIntent.Channels or CrewIntent.CheckChannels => RadioIntentReader.As(request, read.Said, intent, read.Radio),
            CrewIntent.ClipQuestion => ClipAspectReader.About(request, ClipAspectReader.Guess(read.Said)),
            CrewIntent.Show => request with { Intent = intent, ShownName = read.Said.KitSaid ?? read.CabinNamed ?? request.SceneName },
            CrewIntent.WhySite => request with { Intent = intent, SiteRemoved = false },
            _ => request with { Intent = intent },
        };
    }
}
