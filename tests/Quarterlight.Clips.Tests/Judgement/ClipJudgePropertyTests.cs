using Quarterlight.Clips.Judgement;

namespace Quarterlight.Clips.Tests.Judgement;

/// <summary>What must hold of any clip, on made sound measured the whole way.</summary>
public class ClipJudgePropertyTests
{
    private const double Seconds = 12;

    private static readonly string[] s_levelCodes = [ClipReasonCodes.LowLevel, ClipReasonCodes.HighLevel, ClipReasonCodes.HighPeak, ClipReasonCodes.Clipping];

    private static readonly float[] s_speech = Spectrum.Sound.Speech(Seconds, 5).Samples;

    private static readonly float[] s_noise = Spectrum.Sound.Noise(Spectrum.Sound.CarDensity, Seconds, 6);

    [Fact]
    public void Judge_NoiseRaisedStepByStep_NeverGetsBetter()
    {
        var outcomes = new List<ClipOutcome>();
        for (double db = -50; db <= 20; db += 5)
        {
            outcomes.Add(Judge(Spectrum.Sound.Mix(s_speech, s_noise, Math.Pow(10, db / 20))).Outcome);
        }

        Assert.Equal(outcomes.Order(), outcomes);
        Assert.Equal(ClipOutcome.Use, outcomes[0]);
        Assert.Equal(ClipOutcome.Redo, outcomes[^1]);
        Assert.Contains(ClipOutcome.UseWithCare, outcomes);
    }

    [Fact]
    public void Judge_GainScaled_ChangesOnlyWhatIsSaidOfTheLevel()
    {
        float[] x = Spectrum.Sound.Mix(s_speech, s_noise, 0.06);
        ClipReason[] Others(double db) => [.. Judge([.. x.Select(v => (float)(v * Math.Pow(10, db / 20)))]).Reasons.Where(r => !s_levelCodes.Contains(r.Code))];
        ClipReason[] before = Others(0);
        Assert.NotEmpty(before);
        foreach (double db in new[] { -20.0, -6, 5 })
        {
            ClipReason[] after = Others(db);
            Assert.Equal(before.Where(r => r.Code != ClipReasonCodes.Clean).Select(r => (r.Code, r.Outcome)), after.Where(r => r.Code != ClipReasonCodes.Clean).Select(r => (r.Code, r.Outcome)));
            Assert.All(before.Zip(after).Where(p => p.First.Unit == "dB"), p => Assert.Equal(p.First.Measured!.Value, p.Second.Measured!.Value, 0.05));
        }

        Assert.Contains(Judge([.. x.Select(v => v * 0.01f)]).Reasons, r => r.Code == ClipReasonCodes.LowLevel);
    }

    [Fact]
    public void Judge_SpeechHardCut_IsClippedAndRedone()
    {
        // Some noise, since made speech ends in hard zeros, which are dropouts.
        float[] x = Spectrum.Sound.Mix(s_speech, s_noise, 0.06);
        float peak = x.Max(Math.Abs);
        ClipVerdict verdict = Judge([.. x.Select(v => Math.Clamp(v * 2 / peak, -1, 1))]);
        Assert.Equal((ClipOutcome.Redo, ClipReasonCodes.Clipping), (verdict.Outcome, verdict.Reasons[0].Code));
    }

    [Fact]
    public void Judge_SoundCutOut_HasDropouts()
    {
        float[] x = [.. Spectrum.Sound.Mix(s_speech, s_noise, 1)];
        for (int at = 50_000; at < x.Length; at += 100_000)
        {
            x.AsSpan(at, 480).Clear();
        }

        ClipVerdict verdict = Judge(x);
        Assert.Equal((ClipOutcome.Redo, ClipReasonCodes.Dropouts), (verdict.Outcome, verdict.Reasons[0].Code));
        Assert.Equal(50_000 / 48_000.0, verdict.Reasons[0].Stretches[0].StartSeconds, 1e-3);
    }

    private static ClipVerdict Judge(float[] mono)
    {
        var meter = new ClipMeter(Made.Rate, 1, new() { Timeline = false });
        meter.Add(mono);
        return ClipJudge.Judge(meter.Finish(), ClipThresholds.Default);
    }
}
