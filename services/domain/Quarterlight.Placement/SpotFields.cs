using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Cabin;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>A talker in one head pose, as a sound source.</summary>
internal readonly record struct Voice(int Talker, double Share, SoundSource Source, Vector3D LeanM);

/// <summary>A source of noise with the energies per band that it sends out (on-axis at 1 m).</summary>
internal readonly record struct NoiseVoice(string Kind, SoundSource Source, BandVector Energy);

/// <summary>
/// Everything that sounds in the scene, and the tracer of its room: traces each spot once into ten sums.
/// </summary>
internal sealed class SpotFields
{
    private const double VoiceExtentM = 0.03; // Half a mouth's width keeps the inverse square law finite at the lips (judgement).

    /// <summary>How far from the walls sources are kept, metres: a source in a wall has no image of its own.</summary>
    public const double WallGapM = 0.02;

    private readonly PlacementOptions _options;
    private readonly CabinGeometry _cabin;

    public SpotFields(PlacementTask task, PlacementOptions options)
    {
        _options = options;
        _cabin = task.Cabin;
        Drive = task.Scene.Drive;
        ShoeboxRoom room = CabinRoom.Build(task.Cabin, task.Scene.Drive);
        Tracer = new SoundTracer(new ImageLattice(room, options.ImageOrder), CabinRoom.Screens(task.Cabin, task.Scene));
        Box3D inside = room.Box.Grown(-WallGapM);
        TalkerCount = task.Scene.Talkers.Count;
        VoiceEnergy = [.. task.Scene.Talkers.Select(t => BandVector.FromDb(VoiceSpectrum.AtOneMetre(t.Effort)))];
        var voices = new List<Voice>();
        FirstVoice = new int[TalkerCount + 1];
        for (int t = 0; t < TalkerCount; t++)
        {
            Talker talker = task.Scene.Talkers[t];
            Seat seat = task.Cabin.FindSeat(talker.SeatId)!;
            FirstVoice[t] = voices.Count;
            foreach (HeadPose pose in talker.HeadPoses)
            {
                SeatedHead head = SeatedHead.In(seat, pose);
                voices.Add(new Voice(t, pose.ShareFraction, new SoundSource(inside.Clamp(head.Mouth), head.FaceDirection, true, VoiceExtentM, t), pose.LeanM));
            }
        }

        FirstVoice[TalkerCount] = voices.Count;
        Voices = [.. voices];
        Forecast = NoiseForecast.Forecast(task.Scene.Drive, task.NoiseCar);
        Noises = MakeNoises();
    }

    public SoundTracer Tracer { get; }

    public int TalkerCount { get; }

    /// <summary>Energies per band of each talker's voice at 1 m.</summary>
    public BandVector[] VoiceEnergy { get; }

    /// <summary>All talkers' poses; those of talker t are FirstVoice[t] to FirstVoice[t + 1].</summary>
    public Voice[] Voices { get; }

    public int[] FirstVoice { get; }

    public NoiseVoice[] Noises { get; }

    public DriveConditions Drive { get; }

    public IReadOnlyList<NoiseContribution> Forecast { get; }

    /// <summary>Where the capsule is while a talker holds a pose: on the own clothing it moves with the body.</summary>
    public static Vector3D CapsuleFor(MountSpot spot, in Voice voice) => spot.Wearer == voice.Talker ? spot.Capsule + voice.LeanM : spot.Capsule;

    /// <summary>Ten sums of all noise at a spot.</summary>
    public void TraceNoise(MountSpot spot, Span<double> noise, Span<double> scratch)
    {
        foreach (ref readonly NoiseVoice source in Noises.AsSpan())
        {
            scratch.Clear();
            Tracer.Accumulate(source.Source, spot.Capsule, 0, scratch, scratch);
            new TenSums(noise).AddScaled(scratch, source.Energy);
        }
    }

    /// <summary>Ten sums of one pose at a spot, voice energy included: useful and late.</summary>
    public void TraceVoice(MountSpot spot, in Voice voice, Span<double> useful, Span<double> late, Span<double> scratch)
    {
        scratch.Clear();
        Span<double> early = scratch[..TenSums.Length], rest = scratch.Slice(TenSums.Length, TenSums.Length);
        Tracer.Accumulate(voice.Source, CapsuleFor(spot, voice), _options.EarlyPathExcessM, early, rest);
        BandVector energy = VoiceEnergy[voice.Talker];
        new TenSums(useful).AddScaled(early, energy);
        new TenSums(late).AddScaled(rest, energy);
    }

    /// <summary>Where a kind of noise, or one open pane, enters this cabin; null when the cabin has no such port.</summary>
    public NoiseEntry? TraceEntry(string portKind, string? paneId) => NoiseEntry.Trace(_cabin, Tracer, portKind, paneId);

    // The forecast says how loud each kind is at the driver's ear; its ports share that by equal power. Scaling the traced
    // energy to it leaves differences between spots to the geometry.
    private NoiseVoice[] MakeNoises()
    {
        var noises = new List<NoiseVoice>();
        foreach (NoiseContribution contribution in Forecast)
        {
            if (TraceEntry(contribution.PortKind, contribution.PaneId) is { } entry)
            {
                BandVector energy = BandVector.FromDb(contribution.LevelAtDriverEar) / entry.AtDriverEar;
                noises.AddRange(entry.Ports.Select(port => new NoiseVoice(contribution.PortKind, port, energy)));
            }
        }

        return [.. noises];
    }
}
