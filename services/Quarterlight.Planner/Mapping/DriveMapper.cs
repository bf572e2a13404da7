using Quarterlight.Acoustics;

namespace Quarterlight.Planner.Mapping;

/// <summary>Drive conditions, both ways.</summary>
internal static class DriveMapper
{
    public static DriveConditions ToDomain(V1.DriveConditions drive, string at, FieldReader reader) => new()
    {
        SpeedKmPerHour = drive.SpeedKmPerHour,
        Road = reader.Enum($"{at}.road_surface", drive.RoadSurface, (RoadSurface?)RoadSurface.SmoothAsphalt),
        OpenWindows = [.. drive.OpenWindows.Select(w => new WindowOpening(w.PaneId, w.OpenFraction))],
        FanStep = drive.FanStep,
        Rain = reader.Enum($"{at}.rain", drive.Rain, (Rain?)Rain.None),
        Engine = reader.Enum($"{at}.engine_state", drive.EngineState, (EngineState?)EngineState.Running),
        EngineRpm = drive.HasEngineSpeedRpm ? drive.EngineSpeedRpm : null,
        NoiseCorrection = drive.NoiseCorrection is { } correction
            ? new NoiseCorrection(OctaveMapper.ToDomain(correction.Shifts, $"{at}.noise_correction.shifts", null, reader), correction.Source)
            : null,
    };

    public static V1.DriveConditions ToContract(DriveConditions drive)
    {
        var contract = new V1.DriveConditions
        {
            SpeedKmPerHour = drive.SpeedKmPerHour,
            RoadSurface = drive.Road.ToContract<V1.RoadSurface>(),
            FanStep = drive.FanStep,
            Rain = drive.Rain.ToContract<V1.Rain>(),
            EngineState = drive.Engine.ToContract<V1.EngineState>(),
        };
        contract.OpenWindows.AddRange(drive.OpenWindows.Select(w => new V1.WindowOpening { PaneId = w.PaneId, OpenFraction = w.OpenFraction }));
        if (drive.EngineRpm is { } rpm)
        {
            contract.EngineSpeedRpm = rpm;
        }

        if (drive.NoiseCorrection is { } correction)
        {
            contract.NoiseCorrection = new V1.NoiseCorrection { Shifts = OctaveMapper.ToContract(correction.ShiftsDb), Source = correction.Source };
        }

        return contract;
    }
}
