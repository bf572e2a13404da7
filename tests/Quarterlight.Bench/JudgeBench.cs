using BenchmarkDotNet.Attributes;
using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;
using Quarterlight.Clips.Tagging;
using Quarterlight.Tagger;

namespace Quarterlight.Bench;

/// <summary>The whole judgement of a minute of mono at 48 kHz that sounds like a voice in a car: the shipped model included.
/// Beside it the meters one after the other, each taking the stream apart on its own, and loudness and true peak the plain way.</summary>
[MemoryDiagnoser]
public class JudgeBench
{
    private const int Rate = 48_000, Seconds = 60, Piece = 16_384;

    private readonly float[] _x = new float[Rate * Seconds];
    private readonly ModelTagger _tagger = ModelTagger.LoadShipped();

    [GlobalSetup]
    public void Setup()
    {
        uint seed = 1;
        double low = 0, mid = 0, phase = 0;
        for (int i = 0; i < _x.Length; i++)
        {
            double t = i / (double)Rate, word = t % 2.3 is > 0.7 and < 2.1 ? 0.12 + (0.88 * Math.Pow(Math.Sin(4 * Math.PI * t), 2)) : 0;
            seed = unchecked((1664525 * seed) + 1013904223);
            double white = (seed / 2147483648.0) - 1;
            low += 0.02 * (white - low);
            mid += 0.2 * (white - mid);
            phase += 2 * Math.PI * 125 * (1 + (0.12 * Math.Sin(2 * Math.PI * 0.7 * t))) / Rate;
            double voice = 0;
            for (int h = 1; word > 0 && h <= 20; h++)
            {
                voice += Math.Sin(h * phase) / (1 + Math.Pow(h * 125 / 600.0, 1.3));
            }

            _x[i] = (float)((0.03 * low) + (0.0006 * mid) + (0.003 * Math.Sin(2 * Math.PI * 61 * t)) + (0.03 * word * voice));
        }

        ClipVerdict whole = Whole();
        double ratio = Measures(null).Channels[0].Spectrum.SpeechNoise!.SpeechToNoiseDb!.Value;
        if (Math.Abs(ratio - Parts()) > 1e-6)
        {
            throw new InvalidOperationException($"Joined and one by one differ: {ratio} and {Parts()} dB.");
        }

        Console.WriteLine($"// {whole.Headline}");
    }

    [Benchmark(Baseline = true, Description = "whole judgement, 60 s")]
    public ClipVerdict Whole() => ClipJudge.Judge(Measures(_tagger), ClipThresholds.Default);

    [Benchmark(Description = "without tags")]
    public ClipVerdict WithoutTags() => ClipJudge.Judge(Measures(null), ClipThresholds.Default);

    [Benchmark(Description = "meters one by one")]
    public double OneByOne() => Parts();

    [Benchmark(Description = "plain loudness and true peak")]
    public double Plain() => PlainLevels.IntegratedLkfs([_x]) + PlainLevels.TruePeakDbtp(_x);

    [Benchmark(Description = "whole, engine speed as well")]
    public ClipVerdict WithEngine() => ClipJudge.Judge(Measures(_tagger, 4), ClipThresholds.Default);

    /// <summary>Prints what the table does not: times real time and what thirty minutes hold.</summary>
    [GlobalCleanup]
    public void Tell()
    {
        double best = double.MaxValue;
        for (int i = 0; i < 5; i++)
        {
            long start = System.Diagnostics.Stopwatch.GetTimestamp();
            Whole();
            best = Math.Min(best, System.Diagnostics.Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        long allocated = GC.GetAllocatedBytesForCurrentThread();
        Whole();
        allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
        long before = GC.GetTotalMemory(true);
        var meter = new ClipMeter(Rate, 1, new() { Tagger = _tagger, Cylinders = 4 });
        for (int minute = 0; minute < 30; minute++)
        {
            meter.Add(_x);
        }

        long held = GC.GetTotalMemory(true) - before;
        GC.KeepAlive(meter);
        Console.WriteLine(FormattableString.Invariant(
            $"// whole judgement: {Seconds / best:0} times real time; {allocated / Seconds / 1024.0:0.0} kB allocated a second of sound; 30 minutes hold {held / 1e6:0.0} MB"));
    }

    private ClipMeasures Measures(ISoundTagger? tagger, int? cylinders = null)
    {
        var meter = new ClipMeter(Rate, 1, new() { Tagger = tagger, Cylinders = cylinders });
        for (int at = 0; at < _x.Length; at += Piece)
        {
            meter.Add(_x.AsSpan(at, Math.Min(Piece, _x.Length - at)));
        }

        return meter.Finish();
    }

    private double Parts()
    {
        var samples = new SampleMeter(Rate, 1);
        var peak = new TruePeakMeter(Rate, 1);
        var loudness = new LoudnessMeter(Rate, 1);
        var speech = new ActiveSpeechLevelMeter(Rate, 1);
        var spectrum = new ClipSpectrum(Rate);
        var heard = new FeatureFrontEnd(Rate);
        for (int at = 0; at < _x.Length; at += Piece)
        {
            ReadOnlySpan<float> piece = _x.AsSpan(at, Math.Min(Piece, _x.Length - at));
            samples.Add(piece);
            peak.Add(piece);
            loudness.Add(piece);
            speech.Add(piece);
            spectrum.Add(piece);
            heard.Add(piece);
        }

        (samples.Measure(), peak.Measure(), loudness.Measure(), speech.Measure(), heard.Finish()).GetHashCode();
        return spectrum.Finish().SpeechNoise!.SpeechToNoiseDb!.Value;
    }
}
