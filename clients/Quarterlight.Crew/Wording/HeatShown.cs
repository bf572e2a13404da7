using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Crew.Wording;

/// <summary>A forecast of heat and what it was asked for.</summary>
/// <param name="Report">The report.</param>
/// <param name="Setup">Car and day it is for.</param>
/// <param name="Said">What was said.</param>
/// <param name="Units">Units to say it in.</param>
internal sealed record HeatShown(HeatReport Report, HeatSetup Setup, HeatSaid Said, UnitPreference Units)
{
    private const double UsualDayMin = 240, UsualSetPointC = 18.3;

    public HeatLimitTime Comfort => Limit(HeatLimitKind.Comfort);

    public HeatLimitTime Caution => Limit(HeatLimitKind.Caution);

    public HeatLimitTime Stop => Limit(HeatLimitKind.Stop);

    public ShootingRhythm Rhythm => Report.Rhythm ?? new ShootingRhythm();

    public double DayMin => Setup.Day.HasDurationMin ? Setup.Day.DurationMin : UsualDayMin;

    public double SetPointC => Setup.Day.Cooling is { HasSetPointC: true } cooling ? cooling.SetPointC : UsualSetPointC;

    public Occupants People => Setup.Day.Occupants ?? new Occupants();

    public string Temperature(double celsius) => UnitText.Temperature(celsius, Units);

    private HeatLimitTime Limit(HeatLimitKind kind) => Report.Limits.FirstOrDefault(l => l.Kind == kind) ?? new HeatLimitTime { Kind = kind };
}
