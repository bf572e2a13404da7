using Quarterlight.V1;

namespace Quarterlight.Crew.Language;

/// <summary>Reads how the car is driven out of a question.</summary>
public static class ConditionReader
{
    private static readonly HashSet<string> Off = Lexicon.Words("off no without not killed kill stopped stop shut dead");
    private static readonly HashSet<string> Parked = Lexicon.Words("parked stationary standing stopped");
    private static readonly HashSet<string> Towed = Lexicon.Words("towed trailer tow pushed");

    /// <summary>Everything said about speed, windows, fan, rain, engine and road.</summary>
    public static ConditionChanges Read(IReadOnlyList<Token> tokens, UnitPreference units)
    {
        ArgumentNullException.ThrowIfNull(tokens);
        double? speed = QuantityReader.SpeedKmPerHour(tokens, units);
        EngineState? engine = ReadEngine(tokens);
        if (Has(tokens, Parked) && speed is null)
        {
            speed = 0;
            engine ??= tokens.Any(t => t.Is("parked")) ? EngineState.Off : null;
        }

        if (tokens.Any(t => t.Word is "idle" or "idling") && speed is null)
        {
            (speed, engine) = (0, EngineState.Running);
        }

        return new ConditionChanges
        {
            SpeedKmPerHour = speed,
            Windows = WindowReader.Read(tokens),
            FanStep = ReadFan(tokens),
            Rain = ReadRain(tokens),
            Engine = engine ?? (Has(tokens, Towed) ? EngineState.Off : null),
            EngineSpeedRpm = QuantityReader.Rpm(tokens),
            Road = ReadRoad(tokens),
        };
    }

    private static int? ReadFan(IReadOnlyList<Token> tokens)
    {
        int at = IndexOf(tokens, Lexicon.Fans);
        if (at < 0)
        {
            return null;
        }

        IReadOnlyList<Token> near = Around(tokens, at, 4);
        if (near.FirstOrDefault(t => t.Number is >= 0 and <= 9) is { Number: { } step } && near.Any(t => t.Word is "step" or "at" or "to" or "on" or "fan" or "level" or "speed"))
        {
            return (int)step;
        }

        // "One" is left a word by the tokenizer.
        if (near.Where((t, i) => t.Word is "step" or "level" or "at" or "on" or "to" && i + 1 < near.Count && near[i + 1].Is("one")).Any() || (at + 1 < tokens.Count && tokens[at + 1].Is("one")))
        {
            return 1;
        }

        if (near.Any(t => t.IsAny(Off)))
        {
            return 0;
        }

        return near.Any(t => t.Word is "full" or "max" or "maximum" or "maxed" or "flat" or "whack" or "top" or "high" or "highest" or "blast" or "blasting") ? 4 : near.Any(t => t.Word is "low" or "lowest" or "quiet" or "bit") ? 1 : 2;
    }

    private static Rain? ReadRain(IReadOnlyList<Token> tokens)
    {
        if (tokens.Any(t => t.Word is "dry" or "dried"))
        {
            return Rain.None;
        }

        int at = IndexOf(tokens, Lexicon.Rains);
        if (at < 0)
        {
            return null;
        }

        IReadOnlyList<Token> near = Around(tokens, at, 3);
        if (near.Any(t => t.Word is "no" or "without" or "stops" or "stopped" or "stop" or "not"))
        {
            return Rain.None;
        }

        near = [.. tokens.Select((t, i) => (t, i)).Where(p => p.t.IsAny(Lexicon.Rains)).SelectMany(p => Around(tokens, p.i, 3))];
        bool heavy = tokens[at].Word is "storm" or "stormy" or "thunderstorm" or "downpour" or "pouring" or "pours" or "pour" or "hail" or "cloudburst" or "deluge" or "torrential" || near.Any(t => t.Word is "heavy" or "heavily" or "hard" or "pouring" or "lot");
        return heavy || tokens.Any(t => t.Word is "heavy" or "heavily") ? Rain.Heavy : Rain.Light;
    }

    private static EngineState? ReadEngine(IReadOnlyList<Token> tokens)
    {
        int at = IndexOf(tokens, Lexicon.Engines);
        if (at < 0)
        {
            return null;
        }

        IReadOnlyList<Token> near = Around(tokens, at, 3);
        return near.Any(t => t.IsAny(Off) || t.Word is "cut" or "out") ? EngineState.Off : near.Any(t => t.Word is "on" or "running" or "runs" or "idle" or "idling") || tokens.Where((t, i) => t.Is("run") && i > 0 && tokens[i - 1].Word is "to" or "must" or "will" or "should" or "engine").Any() ? EngineState.Running : null;
    }

    private static RoadSurface? ReadRoad(IReadOnlyList<Token> tokens)
    {
        foreach (Token token in tokens)
        {
            switch (token.Word)
            {
                case "gravel" or "dirt" or "track":
                    return RoadSurface.Gravel;
                case "cobbles" or "cobble" or "cobbled" or "cobblestones" or "cobblestone" or "setts":
                    return RoadSurface.Cobbles;
                case "concrete":
                    return RoadSurface.Concrete;
                case "coarse" or "worn" or "rough" or "bumpy":
                    return RoadSurface.CoarseAsphalt;
                case "smooth" when tokens.Any(t => t.Word is "road" or "asphalt" or "tarmac" or "surface"):
                    return RoadSurface.SmoothAsphalt;
            }
        }

        return null;
    }

    private static bool Has(IReadOnlyList<Token> tokens, IReadOnlySet<string> words) => tokens.Any(t => t.IsAny(words));

    private static int IndexOf(IReadOnlyList<Token> tokens, IReadOnlySet<string> words)
    {
        for (int i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].IsAny(words))
            {
                return i;
            }
        }

        return -1;
    }

    private static IReadOnlyList<Token> Around(IReadOnlyList<Token> tokens, int at, int reach) =>
        [.. tokens.Skip(Math.Max(0, at - reach)).Take(Math.Min(at, reach) + reach + 1)];
}
