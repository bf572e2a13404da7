namespace Quarterlight.Crew.Language;

/// <summary>Asks the examples where the rules understood nothing.</summary>
internal static class SecondOpinion
{
    // Measured on examples held out of the model: below these, a guess is as often wrong as right, and asking back is better.
    private const double LeastLead = 2;
    private const double LeastKnownShare = 0.6;

    /// <summary>The request with what its words most resemble; the request itself when that is too vague or would mislead.</summary>
    /// <param name="request">A request the rules did not understand.</param>
    /// <param name="said">Words.</param>
    /// <param name="vocabulary">The team's own words.</param>
    /// <param name="forecast">What the question says about heat, run time, levels and noise.</param>
    /// <param name="radio">What it says about the radio.</param>
    public static CrewRequest Of(CrewRequest request, SaidThings said, CrewVocabulary vocabulary, ForecastSaid forecast, RadioSaid radio)
    {
        if (said.Count < 2)
        {
            return request;
        }

        IntentGuess guess = IntentExamples.Shipped.Guess(IntentExamples.Features(said.Tokens, new ExampleNames(vocabulary), Topic(said.Memory)));
        if (guess.Lead < LeastLead || guess.KnownShare < LeastKnownShare || !Stands(guess.Intent, request, said))
        {
            return request;
        }

        CrewRequest understood = request with
        {
            Intent = guess.Intent,
            Forecast = forecast with { KitName = said.KitSaid, CabinName = said.CabinSaid },
            Radio = radio with { KitName = said.KitSaid },
        };
        return guess.Intent == CrewIntent.Show ? understood with { ShownName = said.KitSaid ?? said.CabinSaid ?? request.SceneName } : understood;
    }

    // What changes something, or names what is not there, is not guessed.
    private static bool Stands(CrewIntent intent, CrewRequest request, SaidThings said) => intent switch
    {
        CrewIntent.SetUnits => request.Units is not null,
        CrewIntent.SetClipLimits => request.Clip.Limits is not null || request.Clip.ResetsLimits,
        CrewIntent.UseScene => request.SceneSaid,
        CrewIntent.Show => request.SceneSaid || said.KitSaid is not null || said.CabinSaid is not null,
        CrewIntent.WhatIf => request.HasChanges,
        CrewIntent.CheckChannels => false,
        CrewIntent.ClipQuestion or CrewIntent.ClipPicture or CrewIntent.ClipReplan => said.Memory.LastClip is not null,
        _ => true,
    };

    private static string Topic(CrewMemory memory) => memory switch
    {
        { LastClip.Current: true } => "remembered",
        { LastForecast.Intent: CrewIntent.HeatForecast } => "heat",
        { LastForecast.Intent: CrewIntent.RunTime } => "runtime",
        { LastForecast.Intent: CrewIntent.Levels } => "levels",
        { LastForecast: not null } => "noise",
        _ => "none",
    };
}
