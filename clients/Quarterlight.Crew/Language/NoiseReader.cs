namespace Quarterlight.Crew.Language;

/// <summary>Reads what a question says about noise.</summary>
public static class NoiseReader
{
    /// <summary>Everything said.</summary>
    /// <param name="tokens">Words.</param>
    /// <param name="drive">What it says about how the car is driven.</param>
    /// <param name="units">Units a bare number is in.</param>
    /// <param name="talking">True when noise is being talked about, so that a bare number is a speed.</param>
    public static NoiseSaid Read(IReadOnlyList<Token> tokens, ConditionChanges drive, UnitPreference units, bool talking)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        ArgumentNullException.ThrowIfNull(drive);
        double? band = Band(tokens);
        bool bare = band is null && talking && drive.SpeedKmPerHour is null && tokens.Count <= 4 && tokens.Count > 0 && tokens[^1].Number is >= 5;
        double bareSpeed = tokens.Count > 0 && tokens[^1].Number is { } number ? units == UnitPreference.Imperial ? number * QuantityReader.KilometresPerMile : number : 0;
        ConditionChanges read = band is not null && drive.SpeedKmPerHour == band ? drive with { SpeedKmPerHour = null } : bare ? drive with { SpeedKmPerHour = bareSpeed } : drive;
        return new NoiseSaid { Aspect = Aspect(tokens, band), BandHz = band, Drive = read };
    }

    private static NoiseAspect Aspect(IReadOnlyList<Token> tokens, double? band)
    {
        bool Any(params string[] words) => tokens.Any(t => t.Number is null && words.Contains(t.Word));
        if (Any("table", "chart", "sheet") || (Any("every", "each", "per", "different", "various", "all") && Any("speed", "speeds")))
        {
            return NoiseAspect.Table;
        }

        bool slow = Any("speed") && Any("above", "exceed", "beyond") && Any("we", "i", "they", "not") || Any("slow", "slowly", "slower") && Any("how") || Any("maximum") && Any("speed");
        bool top = slow || (Any("what", "which") && Any("speed") && Any("should", "keep", "drive", "hold", "lose", "losing", "lost", "stop", "stops", "fail", "fails", "unusable", "safe")) || Any("top", "max", "maximum", "highest") && Any("speed", "mph", "kmh");
        if (tokens.Any(t => t.IsAny(ForecastWords.Fast)) || top)
        {
            return NoiseAspect.Fastest;
        }

        int sources = tokens.Where(t => t.IsAny(ForecastWords.Sources)).Select(t => t.Word[0]).Distinct().Count();
        bool most = Any("main", "biggest", "strongest") && Any("source", "sources", "noise", "culprit") || Any("most") && tokens.Any(t => t.IsAny(ForecastWords.Loud));
        return tokens.Any(t => t.IsAny(ForecastWords.Dominating)) || most || band is not null || (sources > 1 && Any("or")) || (sources > 0 && Any("problem", "trouble", "matter")) ? NoiseAspect.Loudest : NoiseAspect.Any;
    }

    // "at 500 Hz", "1 kHz", "1k".
    private static double? Band(IReadOnlyList<Token> tokens)
    {
        for (int i = 0; i + 1 < tokens.Count; i++)
        {
            if (tokens[i].Number is { } number && tokens[i + 1].Word is "hz" or "hertz" or "khz" or "kilohertz" or "k")
            {
                double hz = tokens[i + 1].Word is "hz" or "hertz" ? number : number * 1000;
                return hz is >= 20 and <= 20000 ? hz : null;
            }
        }

        return null;
    }
}
