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
    // Noise enters through surfaces, not points: radius over which each kind is spread, metres (judgement).
    private const double NoiseExtentM = 0.25;

    private const double VoiceExtentM = 0.03; // Half a mouth's width keeps the inverse square law finite at the lips (judgement).

    private readonly PlacementOptions _options;

    public SpotFields(PlacementTask task, PlacementOptions options)
    {
        _options = options;
        ShoeboxRoom room = CabinRoom.Build(task.Cabin, task.Scene.Drive);
        Tracer = new SoundTracer(new ImageLattice(room, options.ImageOrder), CabinRoom.Screens(task.Cabin, task.Scene));
        Box3D inside = room.Box.Grown(-0.02);
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
        Noises = MakeNoises(task.Cabin, inside);
    }

    public SoundTracer Tracer { get; }

    public int TalkerCount { get; }

    /// <summary>Energies per band of each talker's voice at 1 m.</summary>
    public BandVector[] VoiceEnergy { get; }

    /// <summary>All talkers' poses; those of talker t are FirstVoice[t] to FirstVoice[t + 1].</summary>
    public Voice[] Voices { get; }

    public int[] FirstVoice { get; }

    public NoiseVoice[] Noises { get; }

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

    // The forecast says how loud each kind is at the driver's ear; its ports share that by equal power. Scaling the traced
    // energy to it leaves differences between spots to the geometry.
    private NoiseVoice[] MakeNoises(CabinGeometry cabin, Box3D inside)
    {
        var noises = new List<NoiseVoice>();
        Vector3D ear = inside.Clamp(cabin.DriverEye);
        Span<double> sums = stackalloc double[TenSums.Length];
        foreach (NoiseContribution contribution in Forecast)
        {
            SoundSource[] ports =
            [
                .. cabin.NoisePorts
                    .Where(p => KindOf(p.Kind) == contribution.PortKind && (contribution.PaneId is null || p.Id == "window-" + contribution.PaneId))
                    .Select(p => new SoundSource(inside.Clamp(p.Position), Vector3D.Up, false, NoiseExtentM, -1)),
            ];
            if (ports.Length == 0)
            {
                continue;
            }

            sums.Clear();
            foreach (SoundSource port in ports)
            {
                Tracer.Accumulate(port, ear, 0, sums, sums);
            }

            // The idle lane of the reference is 0; 0/0 there must not travel on.
            BandVector reference = BandVector.Max(TenSums.Total(sums), BandVector.Load([1e-30, 1e-30, 1e-30, 1e-30, 1e-30, 1e-30, 1e-30, 1]));
            BandVector energy = BandVector.FromDb(contribution.LevelAtDriverEar) / reference;
            noises.AddRange(ports.Select(port => new NoiseVoice(contribution.PortKind, port, energy)));
        }

        return [.. noises];
    }

    private static string KindOf(NoisePortKind kind) => kind switch
    {
        NoisePortKind.Engine => "engine",
        NoisePortKind.Tyre => "tyre",
        NoisePortKind.Wind => "wind",
        NoisePortKind.Window => "window",
        NoisePortKind.Vent => "vent",
        _ => "roof",
    };
}
