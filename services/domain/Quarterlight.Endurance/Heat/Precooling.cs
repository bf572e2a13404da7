namespace Quarterlight.Endurance.Heat;

/// <summary>Soak and the cooling before the first take, kept by the half minute and stepped as the report is: all that follows starts from the same cabin.</summary>
internal sealed class Precooling
{
    /// <summary>Spacing of the kept states, seconds.</summary>
    public const int GridS = 30;

    /// <summary>Longest cooling that is looked at, seconds.</summary>
    public const int LongestS = 3600;

    // Trim within so much of where this cooling would leave it counts as cooled through, K (judgement).
    private const double ThroughK = 3;

    private readonly List<CabinState> _states = [];

    public Precooling(HeatCase of)
    {
        CabinState state = of.Outside;
        of.Soak.Advance(ref state, -of.SoakS, 0);
        Soaked = state;
        _states.Add(state);
        double set = of.Task.Cooling.SetPointC, ui = CabinNodes.ForVolume(of.Task.Car.AirVolumeM3).InteriorWPerK, lowest = state.AirC;
        int? air = state.AirC <= set + Slack ? 0 : null, through = null;
        int last = Math.Min(LongestS, of.DayS / GridS * GridS);
        for (int at = 0; ; at += GridS)
        {
            air ??= state.AirC <= set + Slack ? at : null;
            double rest = Math.Max(set, state.AirC) + ((1 - CabinNodes.Reference.SunToAir) * of.CoverSunW(at) / ui);
            if (air is not null && state.InteriorC <= rest + ThroughK)
            {
                through ??= at;
            }

            if (at >= last)
            {
                break;
            }

            of.Precool.Advance(ref state, at, at + GridS, fine: true);
            lowest = Math.Min(lowest, state.AirC);
            _states.Add(state);
        }

        AirS = air;
        LowestAirC = lowest;
        StartS = air is null ? last : through ?? last;
    }

    /// <summary>How near to the set point counts as there, K (judgement).</summary>
    public const double Slack = 0.5;

    /// <summary>The standing car before cooling.</summary>
    public CabinState Soaked { get; }

    /// <summary>When the air has the set point, seconds; null when it does not get there.</summary>
    public int? AirS { get; }

    /// <summary>When air and trim are cooled through, or the longest cooling, seconds.</summary>
    public int StartS { get; }

    /// <summary>Lowest air reached, degrees Celsius.</summary>
    public double LowestAirC { get; }

    /// <summary>Last second kept.</summary>
    public int LastS => (_states.Count - 1) * GridS;

    /// <summary>The cabin at a second on the grid.</summary>
    public CabinState At(int second) => _states[second / GridS];
}
