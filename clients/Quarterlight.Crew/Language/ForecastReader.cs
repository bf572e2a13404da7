namespace Quarterlight.Crew.Language;

/// <summary>Reads what a question says about heat, run time, levels and noise.</summary>
public static class ForecastReader
{
    /// <summary>Everything said; each part is read as if the question were about it.</summary>
    /// <param name="text">The question as typed.</param>
    /// <param name="tokens">Its words.</param>
    /// <param name="request">Slots read so far.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="last">What was last asked about one of them, while it is talked about; else null.</param>
    public static ForecastSaid Read(string text, IReadOnlyList<Token> tokens, CrewRequest request, UnitPreference units, CrewIntent? last)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(request);
        return new ForecastSaid
        {
            Heat = HeatReader.Read(text, tokens, units, last == CrewIntent.HeatForecast),
            RunTime = RunTimeReader.Read(text, tokens, units, last == CrewIntent.RunTime),
            Levels = LevelReader.Read(tokens, request.TalkerId),
            Noise = NoiseReader.Read(tokens, request.Conditions, units, last is CrewIntent.NoiseForecast),
        };
    }
}
