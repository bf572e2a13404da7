using Quarterlight.Audio;
using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;
using Quarterlight.Clips.Tagging;
using Quarterlight.Drawing;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;
using PlanComparison = Quarterlight.Clips.Judgement.PlanComparison;

namespace Quarterlight.Planner.Upload;

/// <summary>A file, read to its end.</summary>
internal sealed record ReadClip(AudioFormat Format, AudioMetadata? Metadata, IReadOnlyList<string> Remarks, long ByteCount);

/// <summary>Puts the answer about a clip together: judged, compared, drawn, in the words of the contract.</summary>
internal static class JudgedClips
{
    /// <summary>Makes the answer.</summary>
    public static JudgedClip Make(ClipAsk ask, ReadClip file, ClipMeasures measures, PlannedChannels planned, TaggerIdentity? tagger)
    {
        string[] names = ClipFileMapper.TrackNames(file.Metadata, file.Format.ChannelCount);
        Clips.Judgement.ClipVerdict verdict = ClipJudge.Judge(measures, ask.Thresholds, names);
        var advisories = new List<Quantities.Advisory>();
        List<PlanComparison> comparisons = planned.Compare(measures, ask, advisories);
        ClipAdvisories.Add(file.Format, tagger is not null, advisories);
        ClipReport report = ClipReportMapper.ToContract(measures, verdict, names);
        report.FileName = ask.FileName;
        report.Format = ClipFileMapper.ToContract(file.Format, measures.DurationSeconds, file.ByteCount);
        report.Metadata = ClipFileMapper.ToContract(file.Metadata, file.Format.SampleRateHz);
        report.Comparisons.AddRange(comparisons.Select(c => ComparisonMapper.ToContract(c, ask.FileName)));
        report.Thresholds = ThresholdsMapper.ToContract(ask.Thresholds);
        report.Tagger = tagger is null ? null : TagMapper.ToContract(tagger);
        report.Advisories.AddRange(advisories.Select(GeometryMapper.ToContract));
        report.Remarks.AddRange(file.Remarks);
        return new JudgedClip { Report = report, Picture = ask.IncludePicture ? Draw(ask, measures, verdict, names, comparisons) : null };
    }

    private static Picture Draw(ClipAsk ask, ClipMeasures measures, Clips.Judgement.ClipVerdict verdict, string[] names, List<PlanComparison> comparisons)
    {
        int channel = ask.PictureChannel > 0 ? ask.PictureChannel - 1 : verdict.WorstChannel;
        return PictureMapper.ToContract(ClipDrawing.Draw(new ClipView
        {
            Measures = measures,
            Verdict = verdict,
            Channel = channel,
            ChannelName = names[channel],
            FileName = ask.FileName,
            Comparison = comparisons.FirstOrDefault(c => c.Channel == channel),
        }));
    }
}
