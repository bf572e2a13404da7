using Quarterlight.Acoustics;
using Quarterlight.Placement.Levels;
using Quarterlight.Planner.Services;

namespace Quarterlight.Planner.Mapping;

/// <summary>Recorder inputs, transmitters and questions about levels, from the contract.</summary>
internal static class LevelMapper
{
    /// <summary>Checks the audio side of a kit that is kept.</summary>
    public static void CheckKept(V1.Kit kit, string at, FieldReader reader)
    {
        if (kit.RecorderGain is { } gain)
        {
            reader.AddUnsaid(LevelRules.Validate(ToDomain(gain, $"{at}.recorder_gain", reader), $"{at}.recorder_gain"));
        }

        reader.AddUnsaid(LevelRules.ValidateAll(Transmitters(kit, at, reader), $"{at}.transmitter_audio"));
    }

    /// <summary>The question about a plan, once scene, car and kit are known to be good; everything else wrong is noted.</summary>
    /// <param name="input">Scene, car and kit.</param>
    /// <param name="kitAt">Path of the kit.</param>
    /// <param name="request">What was asked.</param>
    /// <param name="reader">Takes what is wrong.</param>
    /// <returns>The question without its plan; null when the recorder is not known.</returns>
    public static LevelTask? ToDomain(PlanningInput input, string kitAt, V1.PlanLevelsRequest request, FieldReader reader)
    {
        if (input.Kit.RecorderGain is not { } gain)
        {
            reader.Add($"{kitAt}.recorder_gain", "the gain of the recorder's inputs is not known", "Add its full scale, range of gain, input noise and dynamic range to the kit");
            return null;
        }

        var task = new LevelTask
        {
            Placement = input.Task,
            Plan = null!, // Made behind the gate, and put in there.
            Recorder = ToDomain(gain, $"{kitAt}.recorder_gain", reader),
            Transmitters = Transmitters(input.Kit, kitAt, reader),
            LoudestByTalker = Efforts(input, request, reader),
            MicrophoneTransmitterId = request.MicrophoneTransmitterId.Length > 0 ? request.MicrophoneTransmitterId : null,
        };
        task = request.HasHeadroomDb ? task with { HeadroomDb = request.HeadroomDb } : task;
        reader.AddUnsaid(LevelRules.Validate(task, kitAt));
        return task;
    }

    private static Dictionary<string, VocalEffort> Efforts(PlanningInput input, V1.PlanLevelsRequest request, FieldReader reader)
    {
        var loudest = new Dictionary<string, VocalEffort>();
        for (int i = 0; i < request.Efforts.Count; i++)
        {
            V1.TalkerEffort effort = request.Efforts[i];
            string at = $"efforts[{i}]";
            VocalEffort level = reader.Enum<VocalEffort>($"{at}.loudest", effort.Loudest);
            if (!input.Task.Scene.Talkers.Any(t => t.Id == effort.TalkerId))
            {
                reader.Add($"{at}.talker_id", $"nobody called \"{effort.TalkerId}\" talks in this scene", $"Use one of: {string.Join(", ", input.Task.Scene.Talkers.Select(t => t.Id))}");
            }
            else if (!loudest.TryAdd(effort.TalkerId, level))
            {
                reader.Add($"{at}.talker_id", $"\"{effort.TalkerId}\" is listed twice", "List each talker once, with the loudest effort");
            }
        }

        return loudest;
    }

    private static RecorderGain ToDomain(V1.RecorderGain gain, string at, FieldReader reader)
    {
        var domain = new RecorderGain
        {
            FullScaleDbu = gain.FullScaleDbu,
            GainMinDb = gain.GainMinDb,
            GainMaxDb = gain.GainMaxDb,
            MaxInputDbu = gain.HasMaxInputDbu ? gain.MaxInputDbu : null,
            InputNoiseDbu = gain.InputNoiseDbu,
            DynamicRangeDb = gain.DynamicRangeDb,
            PadDb = gain.HasPadDb ? gain.PadDb : 0,
            Limiter = reader.Enum($"{at}.limiter", gain.Limiter, (LimiterKind?)LimiterKind.None),
            FloatRecording = gain.FloatRecording,
        };
        return gain.HasGainStepDb ? domain with { GainStepDb = gain.GainStepDb } : domain;
    }

    private static List<TransmitterAudio> Transmitters(V1.Kit kit, string at, FieldReader reader) =>
        [.. kit.TransmitterAudio.Select((t, i) => ToDomain(t, $"{at}.transmitter_audio[{i}]", reader))];

    private static TransmitterAudio ToDomain(V1.TransmitterAudio transmitter, string at, FieldReader reader)
    {
        reader.Id($"{at}.id", transmitter.Id);
        reader.DisplayName($"{at}.display_name", transmitter.DisplayName);
        var domain = new TransmitterAudio
        {
            Id = transmitter.Id,
            DisplayName = transmitter.DisplayName,
            Feed = reader.Enum<TransmitterFeed>($"{at}.feed", transmitter.Feed),
            Modulation = reader.Enum<TransmitterModulation>($"{at}.modulation", transmitter.Modulation),
            FullModulationDbu = transmitter.FullModulationDbu,
            GainMinDb = transmitter.GainMinDb,
            GainMaxDb = transmitter.GainMaxDb,
            DynamicRangeDb = transmitter.DynamicRangeDb,
            Limiter = transmitter.Limiter,
        };
        return domain with
        {
            GainStepDb = transmitter.HasGainStepDb ? transmitter.GainStepDb : domain.GainStepDb,
            ReceiverOutputDbu = transmitter.HasReceiverOutputDbu ? transmitter.ReceiverOutputDbu : domain.ReceiverOutputDbu,
        };
    }
}
