using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;

namespace Quarterlight.Placement.Noise;

/// <summary>Answers for one question what any conditions do to it; each state of the windows is traced once.</summary>
internal sealed class NoiseBoard(NoiseTask task, PlacementOptions options)
{
    private readonly Dictionary<IReadOnlyList<WindowOpening>, NoiseField> _fields = new(ReferenceEqualityComparer.Instance);

    public NoiseTask Task => task;

    /// <summary>Talkers of the scene the plan has no microphone for.</summary>
    public IReadOnlyList<Talker> Uncovered { get; } = task.Planned is { } planned
        ? [.. planned.Task.Scene.Talkers.Where(t => planned.Plan.Best.Placements.All(p => p.TalkerId != t.Id))]
        : [];

    /// <summary>Windows of the car that wind down.</summary>
    public IReadOnlyList<string> MovablePaneIds { get; } = task.Planned is { } scene
        ? [.. scene.Task.Cabin.Windows.Where(w => w.Moves).Select(w => w.Id)]
        : task.MovablePaneIds;

    /// <summary>Noise, worst talker and verdict under some conditions.</summary>
    public SpeedNoise At(DriveConditions drive)
    {
        IReadOnlyList<NoiseContribution> forecast = NoiseForecast.Forecast(drive, task.Car);
        Span<double> weighted = stackalloc double[forecast.Count];
        var energies = new BandVector[forecast.Count];
        double total = 0;
        for (int i = 0; i < energies.Length; i++)
        {
            energies[i] = BandVector.FromDb(forecast[i].LevelAtDriverEar);
            weighted[i] = energies[i].Dot(BandVector.AWeights);
            total += weighted[i];
        }

        double? worst = null;
        SceneVerdict? verdict = null;
        if (Field(drive) is { } field)
        {
            var noise = new BandVector[field.Placements.Count];
            field.AddUp(forecast, energies, noise);
            for (int p = 0; p < noise.Length; p++)
            {
                double snr = field.SnrDba(p, noise[p]);
                worst = worst is { } w ? Math.Min(w, snr) : snr;
            }

            verdict = worst is { } ratio ? Judged(ratio, drive) : SceneVerdict.Unusable;
        }

        return new SpeedNoise(drive.SpeedKmPerHour, 10 * Math.Log10(total), worst, verdict, CabinNoises.Loudest(forecast, weighted));
    }

    /// <summary>The best verdict these conditions allow, however quiet it were: needs no forecast.</summary>
    public SceneVerdict? BestAt(DriveConditions drive) => task.Planned is null ? null : Judged(double.PositiveInfinity, drive);

    /// <summary>Each covered talker under some conditions, in the plan's order.</summary>
    public IReadOnlyList<TalkerNoise> Talkers(DriveConditions drive)
    {
        if (Field(drive) is not { } field)
        {
            return [];
        }

        IReadOnlyList<NoiseContribution> forecast = NoiseForecast.Forecast(drive, task.Car);
        BandVector[] energies = [.. forecast.Select(c => BandVector.FromDb(c.LevelAtDriverEar))];
        var noise = new BandVector[field.Placements.Count];
        field.AddUp(forecast, energies, noise);
        var talkers = new List<TalkerNoise>(noise.Length);
        for (int p = 0; p < noise.Length; p++)
        {
            double snr = field.SnrDba(p, noise[p]);
            string id = field.Placements[p].TalkerId;
            string name = task.Planned!.Task.Scene.Talkers.First(t => t.Id == id).DisplayName;
            talkers.Add(new TalkerNoise(id, name, field.SpeechLevels[p], noise[p].ToDb(), snr, TakeVerdict.Of(snr, drive)));
        }

        return talkers;
    }

    // Nobody can promise lines that no microphone takes: with a talker left out it is never better than with care.
    private SceneVerdict Judged(double worstSnrDba, DriveConditions drive)
    {
        SceneVerdict verdict = TakeVerdict.Of(worstSnrDba, drive);
        return Uncovered.Count > 0 ? TakeVerdict.Worse(verdict, SceneVerdict.WithCare) : verdict;
    }

    private NoiseField? Field(DriveConditions drive)
    {
        if (task.Planned is not { } planned)
        {
            return null;
        }

        if (!_fields.TryGetValue(drive.OpenWindows, out NoiseField? field))
        {
            _fields[drive.OpenWindows] = field = new NoiseField(planned, drive.OpenWindows, options);
        }

        return field;
    }
}
