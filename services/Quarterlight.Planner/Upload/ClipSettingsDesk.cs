using Quarterlight.Planner.Library;
using Quarterlight.Planner.Mapping;
using Quarterlight.V1;
using ClipThresholds = Quarterlight.Clips.Judgement.ClipThresholds;

namespace Quarterlight.Planner.Upload;

/// <summary>A team's thresholds, kept as one resource.</summary>
internal sealed class ClipSettingsDesk(TeamLibrary library)
{
    private const string Id = "team";
    private const string Name = "clipSettings/" + Id;

    /// <summary>As kept, with what is in force; the defaults when nothing is.</summary>
    public async Task<ClipSettings> ReadAsync(string team, CancellationToken cancellation) =>
        Shown(await library.ClipSettings.FindAsync(team, Name, cancellation).ConfigureAwait(false) ?? new ClipSettings { Name = Name, Thresholds = new() });

    /// <summary>The thresholds in force.</summary>
    public async ValueTask<ClipThresholds> InForceAsync(string team, CancellationToken cancellation) =>
        ThresholdsMapper.ToDomain((await library.ClipSettings.FindAsync(team, Name, cancellation).ConfigureAwait(false))?.Thresholds, ClipThresholds.Default);

    /// <summary>Sets them; refuses with every violation at once.</summary>
    public async Task<ClipSettings> WriteAsync(string team, V1.ClipThresholds? thresholds, long revision, CancellationToken cancellation)
    {
        var reader = new FieldReader();
        if (thresholds is null)
        {
            reader.Add("thresholds", "the thresholds are missing", "Send them; an empty message goes back to the defaults");
        }

        if (revision < 0)
        {
            reader.Add("revision", $"the revision is {revision}", "Send the revision last read, or 0 to replace whatever is there");
        }

        reader.Violations.AddRange(ThresholdsMapper.ToDomain(thresholds, ClipThresholds.Default).Validate("thresholds"));
        reader.ThrowIfAny();
        return Shown(await library.ClipSettings.PutAsync(team, Id, new ClipSettings { Thresholds = thresholds }, revision, cancellation).ConfigureAwait(false));
    }

    // What the library hands out is shared, so a copy is filled in.
    private static ClipSettings Shown(ClipSettings kept)
    {
        ClipSettings shown = kept.Clone();
        shown.InForce = ThresholdsMapper.ToContract(ThresholdsMapper.ToDomain(kept.Thresholds, ClipThresholds.Default));
        return shown;
    }
}
