using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement.Noise;

/// <summary>
/// A planned scene traced once for one state of the windows: how much of each kind of noise reaches each placed microphone, and the
/// speech there. Any speed, road, engine, fan and rain is then a sum.
/// </summary>
/// <remarks>Open windows take sound out of the room, so each state of the windows is a room, and a trace, of its own.</remarks>
internal sealed class NoiseField
{
    private static readonly string[] s_kinds = ["tyre", "wind", "engine", "vent", "roof"];

    private readonly Dictionary<(string Kind, string? PaneId), BandVector[]> _gains = [];
    private readonly BandVector[] _selfNoise;
    private readonly double[] _speechDba;

    public NoiseField(PlannedScene planned, IReadOnlyList<WindowOpening> windows, PlacementOptions options)
    {
        // Engine off, standing, dry: the fields' own forecast then holds next to nothing, since only the room is wanted.
        PlacementTask task = planned.Task with { Scene = planned.Task.Scene with { Drive = new DriveConditions { OpenWindows = windows, Engine = EngineState.Off } } };
        var fields = new SpotFields(task, options);
        var sheet = new FigureSheet(fields, options);
        var direct = new TubeScore(fields, options);
        Placements = planned.Plan.Best.Placements;
        int count = Placements.Count;
        var spots = new MountSpot[count];
        var microphones = new Microphone[count];
        _selfNoise = new BandVector[count];
        _speechDba = new double[count];
        SpeechLevels = new BandLevels[count];
        for (int p = 0; p < count; p++)
        {
            TalkerPlacement placement = Placements[p];
            spots[p] = new MountSpot(placement.Site, placement.Capsule, IndexOf(task.Scene.Talkers, t => BodyWorn.IdFor(t.Id) == placement.Site.Id));
            microphones[p] = task.Kit.Microphones.FirstOrDefault(m => m.Id == placement.MicrophoneId) ?? throw NotOfThisTask();
            _selfNoise[p] = SelfNoise.Energy(microphones[p].SelfNoiseDba);
            int talker = IndexOf(task.Scene.Talkers, t => t.Id == placement.TalkerId);
            if (talker < 0)
            {
                throw NotOfThisTask();
            }

            SpeechLevels[p] = sheet.For(spots[p], microphones[p], placement.Aim, talker, 0, 0, null).SpeechLevelsDb;
            _speechDba[p] = SpeechLevels[p].AWeightedDb();
        }

        foreach ((string kind, string? pane) in s_kinds.Select(k => (k, (string?)null)).Concat(windows.Where(w => w.OpenFraction > 0).Select(w => ("window", (string?)w.PaneId))))
        {
            if (fields.TraceEntry(kind, pane) is not { } entry)
            {
                continue;
            }

            BandVector unit = BandVector.Splat(1) / entry.AtDriverEar;
            var gains = new BandVector[count];
            for (int p = 0; p < count; p++)
            {
                foreach (SoundSource port in entry.Ports)
                {
                    (BandVector early, BandVector late) = direct.Received(port, spots[p].Capsule, 0, microphones[p].Pattern, Placements[p].Aim);
                    gains[p] += unit * (early + late);
                }
            }

            _gains[(kind, pane)] = gains;
        }
    }

    /// <summary>The placements, as planned.</summary>
    public IReadOnlyList<TalkerPlacement> Placements { get; }

    /// <summary>Speech of each placement's talker at the microphone's output by octave, dB re 20 µPa.</summary>
    public BandLevels[] SpeechLevels { get; }

    /// <summary>Adds a forecast up at every placement's microphone: energies per band of all noise, self-noise included.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="energies">Energies per band of each contribution at the driver's ear.</param>
    /// <param name="noise">Takes one sum for each placement.</param>
    public void AddUp(IReadOnlyList<NoiseContribution> forecast, ReadOnlySpan<BandVector> energies, Span<BandVector> noise)
    {
        _selfNoise.CopyTo(noise);
        for (int i = 0; i < energies.Length; i++)
        {
            if (_gains.TryGetValue((forecast[i].PortKind, forecast[i].PaneId), out BandVector[]? gains))
            {
                for (int p = 0; p < gains.Length; p++)
                {
                    noise[p] += energies[i] * gains[p];
                }
            }
        }
    }

    /// <summary>Speech over noise of a placement, dB(A).</summary>
    public double SnrDba(int placement, BandVector noise) => _speechDba[placement] - (10 * Math.Log10(noise.Dot(BandVector.AWeights)));

    private static ArgumentException NotOfThisTask() => new("The plan names a talker or a microphone that its task does not have.");

    private static int IndexOf(IReadOnlyList<Talker> talkers, Func<Talker, bool> wanted)
    {
        for (int t = 0; t < talkers.Count; t++)
        {
            if (wanted(talkers[t]))
            {
                return t;
            }
        }

        return -1;
    }
}
