using Quarterlight.Acoustics;
using Quarterlight.Audio;
using Quarterlight.Clips.Judgement;
using Quarterlight.Placement;
using Quarterlight.Planner.Errors;
using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.Planner.Services;
using Quarterlight.Quantities;

namespace Quarterlight.Planner.Upload;

/// <summary>Checks what comes before the bytes, and fetches the plan and the thresholds that it means.</summary>
internal sealed class ClipAskReader(TeamLibrary library, ClipSettingsDesk settings, PlanningGate gate, RecentPlans recent)
{
    private const int LongestFileName = 200;
    private static readonly ValidRange s_byteCount = new(1, AudioLimits.Default.MaxBytes, "bytes");
    private static readonly ValidRange s_picture = new(0, AudioLimits.Default.MaxChannels, "");

    /// <summary>Reads a header; refuses with every violation at once.</summary>
    /// <param name="team">Whose.</param>
    /// <param name="header">As sent.</param>
    /// <param name="prefix">Path of the header in the request with the point behind it; empty when its fields stand alone.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<ClipAsk> ReadAsync(string team, V1.ClipHeader header, string prefix, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        Check(header, prefix, reader);
        ClipThresholds thresholds = ThresholdsMapper.ToDomain(header.Thresholds, await settings.InForceAsync(team, cancellation).ConfigureAwait(false));
        reader.Violations.AddRange(thresholds.Validate($"{prefix}thresholds"));
        V1.Plan? plan = await PlanAsync(team, header, prefix, cancellation).ConfigureAwait(false);
        IReadOnlyList<PlannedMicrophone>? planned = plan is null ? null : PredictionMapper.ToDomain(plan, $"{prefix}sent_plan", reader);
        if (planned is not null && header.TalkerId.Length > 0 && planned.All(p => p.TalkerId != header.TalkerId))
        {
            reader.Add($"{prefix}talker_id", $"the plan has no microphone for \"{Short(header.TalkerId)}\"", TalkersOf(planned));
        }

        reader.ThrowIfAny();
        return new ClipAsk
        {
            FileName = header.FileName,
            ByteCount = header.HasByteCount ? header.ByteCount : null,
            Planned = planned,
            TalkerId = header.TalkerId,
            Cylinders = header.HasCylinders ? header.Cylinders : CylindersOf(plan?.Cabin),
            FullScaleSplDb = header.HasFullScaleSplDb ? header.FullScaleSplDb : null,
            IncludePicture = header.IncludePicture,
            PictureChannel = header.PictureChannel,
            Thresholds = thresholds,
            Prefix = prefix,
        };
    }

    /// <summary>The way out when a talker must be named.</summary>
    public static string TalkersOf(IReadOnlyList<PlannedMicrophone> planned) =>
        planned.Count == 0 ? "Leave the plan out: it places no microphone" : $"Use one of: {string.Join(", ", planned.Select(p => p.TalkerId))}";

    private static void Check(V1.ClipHeader header, string prefix, FieldReader reader)
    {
        if (header.FileName.Length > LongestFileName || header.FileName.Any(char.IsControl))
        {
            reader.Add($"{prefix}file_name", "this name is too long or has control characters", "A name has up to 200 characters");
        }

        if (header.HasByteCount)
        {
            s_byteCount.Check($"{prefix}byte_count", header.ByteCount, reader.Violations);
        }

        if (header.HasCylinders)
        {
            DriveConditionsRules.Cylinders.Check($"{prefix}cylinders", header.Cylinders, reader.Violations);
        }

        if (header.HasFullScaleSplDb)
        {
            PlanComparer.FullScaleSpl.Check($"{prefix}full_scale_spl_db", header.FullScaleSplDb, reader.Violations);
        }

        s_picture.Check($"{prefix}picture_channel", header.PictureChannel, reader.Violations);
        if (header.TalkerId.Length > 0 && header.PlanSourceCase == V1.ClipHeader.PlanSourceOneofCase.None)
        {
            reader.Add($"{prefix}talker_id", "without a plan there are no talkers", "Name a plan or a scene, or leave the talker out");
        }
    }

    private async Task<V1.Plan?> PlanAsync(string team, V1.ClipHeader header, string prefix, CancellationToken cancellation)
    {
        switch (header.PlanSourceCase)
        {
            case V1.ClipHeader.PlanSourceOneofCase.Plan:
                return await library.Plans.GetAsync(team, header.Plan, cancellation, $"{prefix}plan").ConfigureAwait(false);
            case V1.ClipHeader.PlanSourceOneofCase.Scene:
                PlanningInput input = await PlanningInput.KeptAsync(library, team, header.Scene, null, cancellation, $"{prefix}scene").ConfigureAwait(false);
                MountPlan plan = await gate.RunAsync(() => recent.Of(input), cancellation).ConfigureAwait(false);
                return PlanMapper.ToContract(plan, input.Scene, input.Cabin, input.Kit);
            case V1.ClipHeader.PlanSourceOneofCase.SentPlan:
                return header.SentPlan.Best is null
                    ? throw Refusals.Invalid($"{prefix}sent_plan", "the plan is not whole", "Send a plan as PlanPlacement returned it")
                    : header.SentPlan;
            default:
                return null;
        }
    }

    // A number out of range can only come with a plan that was sent; then the engine is left out.
    private static int? CylindersOf(V1.Cabin? cabin) =>
        cabin is not null && CabinMapper.ToNoiseCar(cabin) is { Electric: false } car && DriveConditionsRules.Cylinders.Contains(car.Cylinders) ? car.Cylinders : null;

    private static string Short(string text) => text.Length <= 40 ? text : text[..40] + "\u2026";
}
