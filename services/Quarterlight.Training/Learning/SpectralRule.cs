using Quarterlight.Clips.Tagging;
using Quarterlight.Training.Mixing;

namespace Quarterlight.Training.Learning;

/// <summary>
/// A plain rule to hold the learners against: an engine has lines in the low end, wind a low end that swells, a fan a steady broad sound
/// without lines, and clean sound little between the words. Limits are judgement.
/// </summary>
public static class SpectralRule
{
    private static readonly Dictionary<string, int> s_places = FeatureFrontEnd.Names.Select((n, i) => (n, i)).ToDictionary(p => p.n, p => p.i);

    /// <summary>Scores each row, above 0 for yes, for each tag in order.</summary>
    public static ScoredCase Score(SoundCase c, int block) => new(c, block,
    [
        [.. c.Rows.Select(r => Engine(r) - 6)],
        [.. c.Rows.Select(r => Math.Min(Of(r, "low_gust_40"), Of(r, "change_low_40")) - 2.2 - (Engine(r) > 6 ? 3 : 0))],
        [.. c.Rows.Select(r => 2 - Of(r, "spread_90_50") - (Engine(r) > 6 ? 3 : 0) - (Of(r, "floor_flat_mid") < -6 ? 2 : 0))],
        [.. c.Rows.Select(r => Math.Max(Of(r, "rise_mid") - 22, -52 - Of(r, "level_mean_dba")))],
    ]);

    private static double Engine(float[] row) => Math.Max(Of(row, "comb"), Of(row, "comb_slow"));

    private static double Of(float[] row, string name) => row[s_places[name]];
}
