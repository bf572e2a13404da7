using System.Globalization;
using Quarterlight.Clips;
using Quarterlight.Clips.Judgement;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Mapping;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Upload;

/// <summary>Which channel of a clip is which microphone of the plan, and what the plan forecast for it.</summary>
internal sealed class PlannedChannels
{
    private readonly List<(int Channel, PlannedMicrophone Microphone)> _channels = [];

    private PlannedChannels()
    {
    }

    /// <summary>
    /// Matches them: a clip of one channel is the talker asked for, or the only one; of more channels each is the recorder input of its number.
    /// </summary>
    /// <exception cref="Grpc.Core.RpcException">A clip of one channel could be several talkers.</exception>
    public static PlannedChannels Match(ClipAsk ask, int channelCount)
    {
        var matched = new PlannedChannels();
        if (ask.Planned is not { } planned)
        {
            return matched;
        }

        PlannedMicrophone[] asked = [.. planned.Where(p => ask.TalkerId.Length == 0 || p.TalkerId == ask.TalkerId)];
        if (channelCount > 1)
        {
            matched._channels.AddRange(asked.Where(p => p.RecorderInput >= 1 && p.RecorderInput <= channelCount).OrderBy(p => p.RecorderInput).Select(p => (p.RecorderInput - 1, p)));
        }
        else if (asked.Length == 1)
        {
            matched._channels.Add((0, asked[0]));
        }
        else
        {
            throw Refusals.Invalid(
                $"{ask.Prefix}talker_id", $"the clip has one channel, and the plan has {asked.Length} microphones that it could be", ClipAskReader.TalkersOf(planned));
        }

        return matched;
    }

    /// <summary>The comparisons that can be made; for the rest it is said why not.</summary>
    public List<PlanComparison> Compare(ClipMeasures measures, ClipAsk ask, List<Advisory> advisories)
    {
        var comparisons = new List<PlanComparison>();
        if (ask.Planned is { Count: > 0 } && _channels.Count == 0)
        {
            advisories.Add(new Advisory(
                "no-planned-channel", "No channel of the clip is a recorder input of the plan, so nothing is compared: name the talker of a clip with one channel.", AdvisorySeverity.Caution));
        }

        foreach ((int channel, PlannedMicrophone microphone) in _channels)
        {
            if (microphone.Prediction is not { } prediction)
            {
                advisories.Add(new Advisory(
                    "plan-without-levels", "The plan was made before levels by octave were kept with it, so nothing is compared: plan again.", AdvisorySeverity.Caution));
                break;
            }

            if (PlanComparer.Compare(measures.Channels[channel], prediction, ask.FullScaleSplDb) is { } comparison)
            {
                comparisons.Add(comparison);
            }
            else
            {
                advisories.Add(new Advisory(
                    "not-comparable",
                    string.Create(CultureInfo.InvariantCulture, $"Channel {channel + 1} could not be held against the plan: too little was measured on it."),
                    AdvisorySeverity.Caution));
            }
        }

        return comparisons;
    }
}
