using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Data;

namespace Quarterlight.Training.Mixing;

/// <summary>How a case was put together.</summary>
public enum CaseKind
{
    /// <summary>One sound alone.</summary>
    Alone,

    /// <summary>Speech over one noise.</summary>
    SpeechOverNoise,

    /// <summary>Two noises.</summary>
    TwoNoises,

    /// <summary>Speech over two noises.</summary>
    SpeechOverTwoNoises,
}

/// <summary>One clip as it is trained or tested.</summary>
/// <param name="Name">What it was put together from.</param>
/// <param name="Group">Group of its first sound, for the tables.</param>
/// <param name="Kind">How it was put together.</param>
/// <param name="RatioDb">Speech over noise, dB; nothing without speech.</param>
/// <param name="Truth">Which tags hold.</param>
/// <param name="Recordings">All recordings in it.</param>
/// <param name="MayTrain">False when a sound in it has no confirmed licence.</param>
/// <param name="IsMade">True when a noise in it is synthesised.</param>
/// <param name="Rows">Features, one row for each different window.</param>
/// <param name="Seconds">Seconds each row stands for.</param>
public sealed record SoundCase(
    string Name, string Group, CaseKind Kind, double? RatioDb, Truth Truth, IReadOnlyList<string> Recordings, bool MayTrain, bool IsMade,
    IReadOnlyList<float[]> Rows, IReadOnlyList<double> Seconds)
{
    /// <summary>Works the features of samples out.</summary>
    public static (IReadOnlyList<float[]> Rows, IReadOnlyList<double> Seconds) Hear(ReadOnlySpan<float> samples, double rateHz)
    {
        var frontEnd = new FeatureFrontEnd(rateHz);
        frontEnd.Add(samples);
        var rows = new List<float[]>();
        var seconds = new List<double>();
        foreach (FeatureSecond second in frontEnd.Finish().Seconds)
        {
            // Neighbouring seconds at an end of the clip share their window.
            if (rows.Count > 0 && second.Row.Span.SequenceEqual(rows[^1]))
            {
                seconds[^1] += second.EndSeconds - second.StartSeconds;
                continue;
            }

            rows.Add(second.Row.ToArray());
            seconds.Add(second.EndSeconds - second.StartSeconds);
        }

        return (rows, seconds);
    }
}
