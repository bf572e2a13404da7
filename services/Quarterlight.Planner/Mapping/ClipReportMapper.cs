using Quarterlight.Clips;
using Quarterlight.Clips.Levels;

namespace Quarterlight.Planner.Mapping;

/// <summary>A clip as a whole, to the contract.</summary>
internal static class ClipReportMapper
{
    /// <summary>What was measured and judged; the file, its metadata and what to be careful about come beside it.</summary>
    public static V1.ClipReport ToContract(ClipMeasures measures, Clips.Judgement.ClipVerdict verdict, IReadOnlyList<string> channelNames)
    {
        var contract = new V1.ClipReport { Verdict = ToContract(verdict), Programme = ToContract(measures.Programme) };
        for (int c = 0; c < measures.Channels.Count; c++)
        {
            V1.ClipChannel channel = ClipChannelMapper.ToContract(measures.Channels[c], measures.SampleRateHz);
            channel.TrackName = channelNames[c];
            channel.Outcome = verdict.ChannelOutcomes[c].ToContract<V1.ClipOutcome>();
            contract.Channels.Add(channel);
        }

        contract.Pairs.AddRange(measures.Pairs.Select(ToContract));
        return contract;
    }

    public static V1.Loudness ToContract(Loudness loudness)
    {
        var contract = new V1.Loudness();
        SetIf(loudness.IntegratedLkfs, v => contract.IntegratedLufs = v);
        SetIf(loudness.RangeLu, v => contract.RangeLu = v);
        SetIf(loudness.MaxMomentaryLkfs, v => contract.MaxMomentaryLufs = v);
        SetIf(loudness.MaxMomentaryStartSeconds, v => contract.MaxMomentaryStartS = v);
        SetIf(loudness.MaxShortTermLkfs, v => contract.MaxShortTermLufs = v);
        SetIf(loudness.MaxShortTermStartSeconds, v => contract.MaxShortTermStartS = v);
        return contract;
    }

    public static V1.ClipStretch ToContract(Clips.Judgement.TimeStretch stretch) => new() { StartS = stretch.StartSeconds, EndS = stretch.EndSeconds };

    /// <summary>Sets a field that may be unset.</summary>
    public static void SetIf(double? value, Action<double> set)
    {
        if (value is { } there)
        {
            set(there);
        }
    }

    private static V1.ClipVerdict ToContract(Clips.Judgement.ClipVerdict verdict)
    {
        var contract = new V1.ClipVerdict { Outcome = verdict.Outcome.ToContract<V1.ClipOutcome>(), Headline = verdict.Headline };
        contract.Reasons.AddRange(verdict.Reasons.Select(ToContract));
        return contract;
    }

    private static V1.ClipReason ToContract(Clips.Judgement.ClipReason reason)
    {
        var contract = new V1.ClipReason
        {
            Code = reason.Code,
            Outcome = reason.Outcome.ToContract<V1.ClipOutcome>(),
            Words = reason.Words,
            Remedy = reason.Remedy,
            Channel = reason.Channel + 1 ?? 0,
            Unit = reason.Unit,
        };
        SetIf(reason.Measured, v => contract.Measured = v);
        SetIf(reason.Limit, v => contract.Limit = v);
        contract.Stretches.AddRange(reason.Stretches.Select(ToContract));
        return contract;
    }

    private static V1.ChannelPair ToContract(ChannelPair pair)
    {
        var contract = new V1.ChannelPair
        {
            First = pair.First + 1,
            Second = pair.Second + 1,
            Identical = pair.Relation.Identical,
            Correlation = pair.Relation.Correlation,
            PolarityInverted = pair.Relation.PolarityInverted ?? false,
        };
        SetIf(pair.Relation.DelayMs, v => contract.DelayMs = v);
        SetIf(pair.Relation.LevelDifferenceDb, v => contract.LevelDifferenceDb = v);
        return contract;
    }
}
