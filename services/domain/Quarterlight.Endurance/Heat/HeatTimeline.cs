namespace Quarterlight.Endurance.Heat;

/// <summary>The day as it is reported: blocks, and a sample a minute, stepped by single seconds.</summary>
internal sealed class HeatTimeline
{
    private readonly HeatCase _case;
    private readonly HeatLimits _limits;
    private readonly List<HeatBlock> _blocks = [];
    private readonly HeatSample[] _samples;
    private int _next;

    private HeatTimeline(HeatCase of, HeatLimits limits)
    {
        _case = of;
        _limits = limits;
        _samples = new HeatSample[(of.DayS / 60) + 1];
    }

    /// <summary>Blocks of the day, first to last.</summary>
    public IReadOnlyList<HeatBlock> Blocks => _blocks;

    /// <summary>One sample a minute, both ends included.</summary>
    public IReadOnlyList<HeatSample> Samples => _samples;

    /// <summary>Runs a day; without a rhythm it cools as long as the first take would wait and then rolls to the end.</summary>
    public static HeatTimeline Of(HeatCase of, HeatLimits limits, CabinState soaked, Rhythm rhythm)
    {
        var line = new HeatTimeline(of, limits);
        CabinState state = soaked;
        int at = line.Run(HeatBlockKind.Precool, of.Precool, ref state, 0, rhythm.StartS);
        while (at < of.DayS)
        {
            at = line.Run(HeatBlockKind.Roll, of.Roll, ref state, at, rhythm.RollS > 0 ? at + rhythm.RollS : of.DayS);
            at = line.Run(HeatBlockKind.Cool, of.Cool, ref state, at, at + rhythm.CoolS);
        }

        return line;
    }

    private int Run(HeatBlockKind kind, CabinPhase phase, ref CabinState state, int fromS, int untilS)
    {
        int to = Math.Min(untilS, _case.DayS);
        if (to <= fromS)
        {
            return fromS;
        }

        for (int at = fromS; at < to;)
        {
            Sample(kind, phase, state, at);
            int next = Math.Min(to, ((at / 60) + 1) * 60);
            phase.Advance(ref state, at, next, fine: true);
            at = next;
        }

        Sample(kind, phase, state, to);
        _blocks.Add(new HeatBlock(kind, fromS / 60.0, to / 60.0, state.AirC));
        return to;
    }

    // The first block to reach a minute has it.
    private void Sample(HeatBlockKind kind, CabinPhase phase, in CabinState state, int second)
    {
        if (second != _next * 60 || _next >= _samples.Length)
        {
            return;
        }

        bool roll = kind == HeatBlockKind.Roll;
        double sun = phase.SunW(second), humidity = HumidAir.RelativeHumidityPercent(state.AirC, state.WaterRatio);
        double? pmv = _limits.Pmv(state, sun, roll ? HeatLimits.StillMPerS : HeatLimits.FanMPerS);
        _samples[_next++] = new HeatSample
        {
            Minute = second / 60.0,
            AirC = state.AirC,
            InteriorC = state.InteriorC,
            OperativeC = (state.AirC + _limits.RadiantC(state, sun)) / 2,
            RelativeHumidityPercent = humidity,
            Pmv = pmv,
            PpdPercent = pmv is { } vote ? ThermalComfort.PpdPercent(vote) : null,
            WbgtC = _limits.WbgtC(state, sun, roll && _case.IsSunlit(second)),
            HeatIndexC = HeatIndex.OfC(state.AirC, humidity),
            Co2Ppm = state.Co2Ppm,
        };
    }
}
