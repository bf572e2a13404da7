using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;
using Quarterlight.Training.Synthesis;

namespace Quarterlight.Training.Mixing;

/// <summary>Sounds sorted by what they are used for.</summary>
public sealed class SoundLibrary
{
    /// <summary>Sorts sounds.</summary>
    public SoundLibrary(IEnumerable<SourceSound> sounds)
    {
        All = [.. sounds];
        Noises = [.. All.Where(s => s.Kind == SoundKind.Noise)];
        Speech = [.. All.Where(s => s.Kind == SoundKind.Speech)];
        Quiet = [.. All.Where(s => s.Kind == SoundKind.Quiet)];
    }

    /// <summary>All.</summary>
    public IReadOnlyList<SourceSound> All { get; }

    /// <summary>Noises.</summary>
    public IReadOnlyList<SourceSound> Noises { get; }

    /// <summary>Clean speech.</summary>
    public IReadOnlyList<SourceSound> Speech { get; }

    /// <summary>Room tone.</summary>
    public IReadOnlyList<SourceSound> Quiet { get; }

    /// <summary>Made sounds.</summary>
    /// <param name="fans">Fans.</param>
    /// <param name="engines">Engines.</param>
    /// <param name="winds">Winds.</param>
    /// <param name="others">Sounds without a tag.</param>
    /// <param name="rooms">Room tones.</param>
    public static IReadOnlyList<SourceSound> Made(int fans, int engines, int winds, int others, int rooms)
    {
        IEnumerable<SourceSound> Of(string name, int count, Truth truth, SoundKind kind, Func<int, float[]> make) => Enumerable.Range(0, count).AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(i =>
            new SourceSound($"made-{name}-{i}", $"made-{name}-{i}", name, kind, truth, "made", true, true, make(i)));
        return
        [
            .. Of("ac", fans, Truth.Only(ClipTag.AirConditioning), SoundKind.Noise, i => FanSound.Make(1000 + i, 5)),
            .. Of("engine", engines, Truth.Only(ClipTag.Engine), SoundKind.Noise, i => EngineSound.Make(21000 + i, 5)),
            .. Of("wind", winds, Truth.Only(ClipTag.Wind), SoundKind.Noise, i => WindSound.Make(41000 + i, 5)),
            .. Of("other", others, Truth.None, SoundKind.Noise, i => RoadSound.Make(61000 + i, 5)),
            .. Of("quiet", rooms, Truth.JustClean, SoundKind.Quiet, i => RoomTone.Make(81000 + i, 5)),
        ];
    }
}
