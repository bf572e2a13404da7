using Quarterlight.Acoustics;
using Quarterlight.Acoustics.SoundField;
using Quarterlight.Quantities;

namespace Quarterlight.Placement;

/// <summary>Works out what to expect of a placement by the direct sum over all arrivals: slower than ten sums, holds any pattern.</summary>
internal sealed class FigureSheet
{
    // Speech levels by effort differ by person: half width in dB (judgement from the spread of published efforts).
    private const double SpeechUncertaintyDb = 3;

    private const double PeakUncertaintyDb = 4; // Crest of close speech and effort together (judgement).

    private readonly SpotFields _fields;
    private readonly PlacementOptions _options;
    private readonly TubeScore _direct;
    private readonly CabinNoise _cabin;
    private readonly double[] _modulationHz = [0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5];

    public FigureSheet(SpotFields fields, PlacementOptions options)
    {
        _fields = fields;
        _options = options;
        _direct = new TubeScore(fields, options);
        _cabin = CabinNoises.Of(fields.Drive, fields.Forecast);
    }

    /// <summary>Half width in dB to expect around the forecast of noise.</summary>
    public double NoiseUncertaintyDb => _cabin.UncertaintyDb;

    /// <summary>All noise at the driver's ear in dB(A), by energy of the forecast.</summary>
    public Estimate CabinNoise() => new(_cabin.LevelDba, _cabin.UncertaintyDb);

    /// <summary>What to expect of a talker on a microphone at a spot and aim; score, ratio and lead are the choice's own.</summary>
    public PlacementFigures For(MountSpot spot, Microphone microphone, Vector3D aim, int talker, double scoreDb, double ratioDb, double? leadDb)
    {
        BandVector selfNoise = SelfNoise.Energy(microphone.SelfNoiseDba), noise = selfNoise;
        foreach (NoiseVoice source in _fields.Noises)
        {
            (BandVector early, BandVector late) = _direct.Received(source.Source, spot.Capsule, 0, microphone.Pattern, aim);
            noise += source.Energy * (early + late);
        }

        BandVector useful = BandVector.Zero, reverberant = BandVector.Zero;
        BandLevels atCapsule = default;
        double quietest = double.PositiveInfinity, loudest = double.NegativeInfinity, peak = double.NegativeInfinity;
        for (int p = _fields.FirstVoice[talker]; p < _fields.FirstVoice[talker + 1]; p++)
        {
            Voice voice = _fields.Voices[p];
            Vector3D capsule = SpotFields.CapsuleFor(spot, voice);
            BandVector energy = _fields.VoiceEnergy[talker];
            (BandVector early, BandVector late) = _direct.Received(voice.Source, capsule, _options.EarlyPathExcessM, microphone.Pattern, aim);
            useful += voice.Share * (energy * early);
            reverberant += voice.Share * (energy * late);
            double level = (energy * (early + late)).ToDb().AWeightedDb();
            quietest = Math.Min(quietest, level);
            loudest = Math.Max(loudest, level);

            // The diaphragm is driven by pressure, whatever the pattern: overload is an omnidirectional matter.
            (BandVector all, BandVector rest) = _direct.Received(voice.Source, capsule, _options.EarlyPathExcessM, PolarPattern.Omni, aim);
            BandLevels pressure = (energy * (all + rest)).ToDb();
            double crest = pressure.OverallDb() + VoiceSpectrum.CrestAllowanceDb;
            if (crest > peak)
            {
                (peak, atCapsule) = (crest, pressure);
            }
        }

        BandLevels speech = (useful + reverberant).ToDb(), noiseLevels = noise.ToDb();
        double noiseDba = noiseLevels.AWeightedDb(), speechDba = speech.AWeightedDb();
        return new PlacementFigures
        {
            SnrDba = new Estimate(speechDba - noiseDba, Math.Sqrt((NoiseUncertaintyDb * NoiseUncertaintyDb) + (SpeechUncertaintyDb * SpeechUncertaintyDb))),
            Sii = SpeechIntelligibility.AtListeningLevel(speech, noiseLevels),
            Sti = Sti(useful, reverberant, noise),
            DirectToReverberantDb = useful.ToDb().AWeightedDb() - reverberant.ToDb().AWeightedDb(),
            SeparationDb = leadDb,
            PoseSwingDb = loudest - quietest,
            PeakLevelDb = new Estimate(peak, PeakUncertaintyDb),
            CapsuleLevelsDb = atCapsule,
            NoiseDba = new Estimate(noiseDba, NoiseUncertaintyDb),
            SpeechDba = speechDba,
            SpeechLevelsDb = speech,
            NoiseLevelsDb = noiseLevels,
            SelfNoiseLevelsDb = selfNoise.ToDb(),
            UsefulToDetrimentalDb = ratioDb,
            ScoreDb = scoreDb,
            MouthDistanceM = MouthDistanceM(spot, talker),
        };
    }

    private double MouthDistanceM(MountSpot spot, int talker)
    {
        Voice first = _fields.Voices[_fields.FirstVoice[talker]];
        return (first.Source.Position - first.LeanM).DistanceTo(spot.Capsule);
    }

    // Modulation transfer with the direct part kept whole and the rest decaying by Eyring's time, times the noise factor
    // (Houtgast and Steeneken; Schroeder), as IEC 60268-16 combines them.
    private double Sti(BandVector useful, BandVector reverberant, BandVector noise)
    {
        var modulation = new double[OctaveBands.Count][];
        for (int b = 0; b < OctaveBands.Count; b++)
        {
            double time = _fields.Tracer.Lattice.Room.EyringTimeS(b);
            double total = useful[b] + reverberant[b];
            modulation[b] = new double[_modulationHz.Length];
            for (int f = 0; f < _modulationHz.Length; f++)
            {
                double turn = 2 * Math.PI * _modulationHz[f] * time / 13.8;
                double decay = (useful[b] + (reverberant[b] / Math.Sqrt(1 + (turn * turn)))) / total;
                modulation[b][f] = decay * total / (total + noise[b]);
            }
        }

        return SpeechTransmission.FromModulation(modulation);
    }
}
