using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Levels;
using Quarterlight.Clips.Spectrum;

namespace Quarterlight.Drawing;

/// <summary>What the parts of a clip's picture share: the channel, its names, and the figures read off it.</summary>
internal sealed class ClipFacts
{
    private const int LongestName = 60;

    public ClipFacts(ClipView view)
    {
        View = view;
        Channel = view.Measures.Channels[view.Channel];
        DurationSeconds = view.Measures.DurationSeconds;
        FileName = UserText.Clean(view.FileName);
        ChannelName = UserText.Cut(UserText.Clean(view.ChannelName), LongestName);
        Octaves = OctaveFigures.Of(view, Channel);
    }

    public ClipView View { get; }

    public ChannelMeasures Channel { get; }

    public double DurationSeconds { get; }

    /// <summary>One line, safe to draw; empty without a name.</summary>
    public string FileName { get; }

    /// <summary>One line, safe to draw; empty without a name.</summary>
    public string ChannelName { get; }

    public OctaveFigures Octaves { get; }

    public ClipOutcome Outcome => View.Verdict.Outcome;

    /// <summary>Why: the worst reason, or the headline when there is none.</summary>
    public string FirstReason => UserText.Clean(View.Verdict.Reasons is [{ } first, ..] ? first.Words : View.Verdict.Headline);

    public Stretches Clipping => Channel.Samples.Clipping;

    public Stretches Dropouts => Channel.Samples.Dropouts;

    public SpeechNoiseReport? SpeechNoise => Channel.Spectrum.SpeechNoise;

    /// <summary>Decimals of times in words: the shorter the clip, the more.</summary>
    public int TimeDecimals => DurationSeconds < 2 ? 2 : DurationSeconds < 20 ? 1 : 0;

    /// <summary>Which channel, such as channel 2 of 4, Boom.</summary>
    public string ChannelWords
    {
        get
        {
            int count = View.Measures.Channels.Count;
            string number = count == 1 ? "one channel" : $"channel {View.Channel + 1} of {count}";
            string own = View.Channel < View.Verdict.ChannelOutcomes.Count && View.Verdict.ChannelOutcomes[View.Channel] != Outcome
                ? $" ({ClipWords.Of(View.Verdict.ChannelOutcomes[View.Channel]).ToLowerInvariant()})" : "";
            return number + own + (ChannelName.Length > 0 ? $", {ChannelName}" : "");
        }
    }

    /// <summary>The decisive figures in one line.</summary>
    public string KeyFigures
    {
        get
        {
            if (Channel.IsSilent)
            {
                return "Digital silence";
            }

            string ratio = SpeechNoise?.SpeechToNoiseDb is { } db ? $"Speech over noise {FigureWords.Number(db)} dB" : SpeechNoise is null ? "Speech not measured" : "No speech";
            string peak = Channel.TruePeak.PeakDbtp is { } dbtp ? $" · true peak {FigureWords.Number(dbtp, "0.0")} dBTP" : "";
            string loudness = Channel.Loudness.IntegratedLkfs is { } lufs ? $" · {FigureWords.Number(lufs)} LUFS" : "";
            return $"{ratio}{peak}{loudness}";
        }
    }
}
