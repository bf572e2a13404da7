using BenchmarkDotNet.Attributes;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Bench;

/// <summary>Twenty seconds of stereo at 48 kHz in pieces of 16384 frames: loudness with true peak against the plain way, and each other meter
/// alone. Words: noise that swells and falls like speech. Tone: a steady sine, for which no part of the true peak can be passed over.</summary>
[MemoryDiagnoser]
public class LevelsBench
{
    private const int Rate = 48_000, Frames = 20 * Rate, Piece = 2 * 16_384;

    private float[] _x = null!;
    private float[][] _channels = null!;

    [Params("words", "tone")]
    public string Sound { get; set; } = "words";

    [GlobalSetup]
    public void Setup()
    {
        uint seed = 1;
        _channels = [new float[Frames], new float[Frames]];
        _x = new float[2 * Frames];
        double low = 0;
        for (int i = 0; i < _x.Length; i++)
        {
            double t = i / 2 / (double)Rate;
            seed = unchecked((1664525 * seed) + 1013904223);
            low += 0.1 * ((seed / 2147483648.0) - 1 - low);
            _x[i] = (float)(Sound == "tone" ? 0.5 * Math.Sin(2 * Math.PI * 997 * t) : low * Math.Pow(Math.Sin(2 * Math.PI * 0.31 * t), 2) * (0.6 + (0.4 * Math.Sin(2 * Math.PI * 4.1 * t))));
            _channels[i % 2][i / 2] = _x[i];
        }

        double plain = PlainLevels.IntegratedLkfs(_channels), plainPeak = PlainLevels.TruePeakDbtp(_channels[0]);
        (double own, double ownPeak) = LoudnessAndTruePeak();
        if (Math.Abs(own - plain) > 0.02 || Math.Abs(ownPeak - plainPeak) > 0.1)
        {
            throw new InvalidOperationException($"The two ways differ: {own} and {plain} LKFS, {ownPeak} and {plainPeak} dBTP.");
        }
    }

    [Benchmark(Baseline = true)]
    public double PlainLoudnessAndTruePeak() => PlainLevels.IntegratedLkfs(_channels) + _channels.Sum(PlainLevels.TruePeakDbtp);

    [Benchmark]
    public (double Lkfs, double Dbtp) LoudnessAndTruePeak()
    {
        var loudness = new LoudnessMeter(Rate, 2);
        var peak = new TruePeakMeter(Rate, 2);
        for (int at = 0; at < _x.Length; at += Piece)
        {
            ReadOnlySpan<float> piece = _x.AsSpan(at, Math.Min(Piece, _x.Length - at));
            loudness.Add(piece);
            peak.Add(piece);
        }

        return (loudness.Measure().Programme.IntegratedLkfs!.Value, peak.Measure()[0].PeakDbtp!.Value);
    }

    [Benchmark]
    public double ActiveSpeech()
    {
        var meter = new ActiveSpeechLevelMeter(Rate, 2);
        for (int at = 0; at < _x.Length; at += Piece)
        {
            meter.Add(_x.AsSpan(at, Math.Min(Piece, _x.Length - at)));
        }

        return meter.Measure()[0].ActivityShare;
    }

    [Benchmark]
    public double Samples()
    {
        var meter = new SampleMeter(Rate, 2);
        for (int at = 0; at < _x.Length; at += Piece)
        {
            meter.Add(_x.AsSpan(at, Math.Min(Piece, _x.Length - at)));
        }

        return meter.Measure()[0].DcOffset;
    }

    [Benchmark]
    public double Relation()
    {
        var meter = new ChannelRelationMeter(Rate, 2, 0, 1);
        for (int at = 0; at < _x.Length; at += Piece)
        {
            meter.Add(_x.AsSpan(at, Math.Min(Piece, _x.Length - at)));
        }

        return meter.Measure().Correlation;
    }
}
