using System.Text.RegularExpressions;
using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Wording;

/// <summary>A forecast of heat and what it was asked for.</summary>
/// <param name="Report">The report.</param>
/// <param name="Setup">Car and day it is for.</param>
/// <param name="Said">What was said.</param>
/// <param name="Units">Units to say it in.</param>
internal sealed partial record HeatShown(HeatReport Report, HeatSetup Setup, HeatSaid Said, UnitPreference Units)
{
    private const double UsualDayMin = 240, UsualSetPointC = 18.3;

    /// <summary>True when it gets too cold and not too hot.</summary>
    public bool Cold => IsCold(Comfort);

    /// <summary>The rhythm that goes up to caution, where comfort leaves little of the day; null where it was not asked for.</summary>
    public ShootingRhythm? Cautious { get; init; }

    /// <summary>What was asked about, held against the car as it stands; null when the report's own options answer it.</summary>
    public HeatOption? Tried { get; init; }

    public HeatLimitTime Comfort => Limit(HeatLimitKind.Comfort);

    public HeatLimitTime Caution => Limit(HeatLimitKind.Caution);

    public HeatLimitTime Stop => Limit(HeatLimitKind.Stop);

    public ShootingRhythm Rhythm => Report.Rhythm ?? new ShootingRhythm();

    public double DayMin => Setup.Day.HasDurationMin ? Setup.Day.DurationMin : UsualDayMin;

    public double SetPointC => Setup.Day.Cooling is { HasSetPointC: true } cooling ? cooling.SetPointC : UsualSetPointC;

    public Occupants People => Setup.Day.Occupants ?? new Occupants();

    /// <summary>A sentence of the planner's on heat, safe and in the crew's units; a bare "32 C (90 F)" is a temperature too.</summary>
    public string Sentence(string text) => RadioWordings.Sentence(Degrees().Replace(text, " °C"), Units);

    /// <summary>True when a limit is met from the cold side.</summary>
    public static bool IsCold(HeatLimitTime comfort) => comfort.Reason.StartsWith("cold", StringComparison.OrdinalIgnoreCase);

    public string Temperature(double celsius) => UnitText.Temperature(celsius, Units);

    private HeatLimitTime Limit(HeatLimitKind kind) => Report.Limits.FirstOrDefault(l => l.Kind == kind) ?? new HeatLimitTime { Kind = kind };

    [GeneratedRegex(@"(?<=\d) ?C(?: \(-?\d+ F\))?(?!\w)", RegexOptions.CultureInvariant)]
    private static partial Regex Degrees();
}
