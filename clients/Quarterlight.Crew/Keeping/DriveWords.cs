using Quarterlight.Crew.Language;
using Quarterlight.Crew.Wording;
using Quarterlight.V1;

namespace Quarterlight.Crew.Keeping;

/// <summary>How the car is driven in words that can be read again, both ways.</summary>
internal static class DriveWords
{
    private const string Right = "Write for example \"40 mph, driver's window half down, fan at step 2, light rain, coarse asphalt\", or \"parked, engine off\".";

    private static readonly HashSet<string> Known =
    [
        .. Lexicon.Windows, .. Lexicon.Opened, .. Lexicon.Closed, .. Lexicon.Fans, .. Lexicon.Rains, .. Lexicon.Engines, .. SeatWords.All,
        .. ("a an the is are at doing about around all both every with and road surface on off no not without km kmh kph mph miles mile per hour an parked stationary standing still stopped towed trailer tow low loader idle idling running runs step speed level full max high highest low lowest bit "
            + "dry light heavy heavily hard gravel dirt track cobbles cobble cobbled cobblestones setts concrete coarse worn rough bumpy smooth asphalt tarmac percent half halfway quarter slightly rpm revs revolutions all way passenger's driver's killed dead centre side").Split(' '),
    ];

    /// <summary>The conditions in words.</summary>
    public static string Say(DriveConditions? drive, UnitPreference units)
    {
        drive ??= new DriveConditions();
        List<string> parts = [drive.SpeedKmPerHour > 0 ? Speed(drive.SpeedKmPerHour, units) : "standing still"];
        parts.Add(drive.EngineState == EngineState.Off ? "engine off" : "engine running");
        if (drive.HasEngineSpeedRpm)
        {
            parts.Add(Wordings.Say($"{drive.EngineSpeedRpm:0.##} rpm"));
        }

        parts.Add(Road(drive.RoadSurface));
        parts.AddRange(!drive.OpenWindows.Any(w => w.OpenFraction > 0) ? ["windows shut"] : drive.OpenWindows.Where(w => w.OpenFraction > 0).Select(w => Wordings.Say($"{Wordings.Seat(w.PaneId)} window {w.OpenFraction * 100:0.#} percent open")));
        parts.Add(drive.FanStep > 0 ? Wordings.Say($"fan at step {drive.FanStep}") : "fan off");
        parts.Add(drive.Rain switch { Rain.Light => "light rain", Rain.Heavy => "heavy rain", _ => "dry" });
        return string.Join(", ", parts);
    }

    /// <summary>Reads the field: what is not said is as usual; what would be shown as the kept conditions are keeps them, and so does a measured correction.</summary>
    public static DriveConditions Read(EntryReading reading, string field, DriveConditions? kept, bool driverOnLeft, IReadOnlyList<string> panes, UnitPreference units)
    {
        var said = new ConditionChanges();
        foreach (string piece in reading.Lines(field).SelectMany(FormText.Pieces))
        {
            IReadOnlyList<Token> tokens = Phrases.Join(Tokenizer.Split(piece));
            Token? unknown = Tokenizer.Split(piece).FirstOrDefault(t => t.Number is null && !Known.Contains(t.Word));
            ConditionChanges one = ConditionReader.Read(tokens, units);
            if (unknown is not null || one.IsEmpty)
            {
                reading.Problem(field, $"\"{piece}\" is not understood.{(tokens.Any(t => t.Number is not null) && one.IsEmpty ? " A number needs its unit." : "")}", Right);
            }
            else if (Twice(said, one) is { } twice)
            {
                reading.Problem(field, $"the {twice} is there twice. Write it once.");
            }
            else
            {
                said = one.Over(said) with { EngineSpeedRpm = one.EngineSpeedRpm ?? said.EngineSpeedRpm };
            }
        }

        return Apply(reading, said, kept, driverOnLeft, panes);
    }

    private static DriveConditions Apply(EntryReading reading, ConditionChanges said, DriveConditions? kept, bool driverOnLeft, IReadOnlyList<string> panes)
    {
        DriveConditions drive = said.ApplyTo(new DriveConditions { EngineState = EngineState.Running, RoadSurface = RoadSurface.SmoothAsphalt, Rain = Rain.None }, driverOnLeft, panes);
        if (said.EngineSpeedRpm is { } rpm)
        {
            drive.EngineSpeedRpm = rpm;
        }

        Usual(said.SpeedKmPerHour is null, "standing still");
        Usual(said.Engine is null, "engine running");
        Usual(said.Windows.Count == 0, "windows shut");
        Usual(said.FanStep is null, "fan off");
        Usual(said.Rain is null, "dry");
        Usual(said.Road is null, "smooth asphalt");
        if (kept is null)
        {
            return drive;
        }

        // What would be shown alike was not changed: a value behind the figures shown is not lost by showing it.
        DriveConditions all = drive.Clone();
        drive.SpeedKmPerHour = Shown(d => d.SpeedKmPerHour = kept.SpeedKmPerHour) ? kept.SpeedKmPerHour : drive.SpeedKmPerHour;
        drive.EngineState = Shown(d => d.EngineState = kept.EngineState) ? kept.EngineState : drive.EngineState;
        drive.RoadSurface = Shown(d => d.RoadSurface = kept.RoadSurface) ? kept.RoadSurface : drive.RoadSurface;
        drive.Rain = Shown(d => d.Rain = kept.Rain) ? kept.Rain : drive.Rain;
        if (kept.HasEngineSpeedRpm && Shown(d => d.EngineSpeedRpm = kept.EngineSpeedRpm))
        {
            drive.EngineSpeedRpm = kept.EngineSpeedRpm;
        }

        if (Shown(Windows))
        {
            Windows(drive);
        }

        drive.NoiseCorrection = kept.NoiseCorrection?.Clone();
        return drive;

        // In the units it was written in, or a small change would be lost in the rounding of the others.
        bool Shown(Action<DriveConditions> put)
        {
            DriveConditions other = all.Clone();
            put(other);
            return Say(other, UnitPreference.Metric) == Say(all, UnitPreference.Metric) || (reading.Line("drive").Contains("mph", StringComparison.OrdinalIgnoreCase) && Say(other, UnitPreference.Imperial) == Say(all, UnitPreference.Imperial));
        }

        void Windows(DriveConditions d)
        {
            d.OpenWindows.Clear();
            d.OpenWindows.Add(kept.OpenWindows.Clone());
        }

        void Usual(bool open, string words)
        {
            if (open)
            {
                reading.TakeAsUsual(words);
            }
        }
    }

    private static string? Twice(ConditionChanges said, ConditionChanges one) =>
        said.SpeedKmPerHour is not null && one.SpeedKmPerHour is not null ? "speed"
        : said.FanStep is not null && one.FanStep is not null ? "fan"
        : said.Rain is not null && one.Rain is not null ? "rain"
        : said.Engine is not null && one.Engine is not null && said.Engine != one.Engine ? "engine"
        : said.Road is not null && one.Road is not null ? "road" : null;

    private static string Speed(double kmPerHour, UnitPreference units) =>
        units == UnitPreference.Metric ? Wordings.Say($"{kmPerHour:0.#} km/h") : Wordings.Say($"{kmPerHour / QuantityReader.KilometresPerMile:0.#} mph");

    private static string Road(RoadSurface road) => road switch
    {
        RoadSurface.CoarseAsphalt => "coarse asphalt",
        RoadSurface.Concrete => "concrete",
        RoadSurface.Cobbles => "cobbles",
        RoadSurface.Gravel => "gravel",
        _ => "smooth asphalt road",
    };
}
