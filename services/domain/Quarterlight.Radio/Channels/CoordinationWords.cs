using Quarterlight.Quantities;
using static System.FormattableString;

namespace Quarterlight.Radio.Channels;

/// <summary>What a coordination says in sentences.</summary>
public static class CoordinationWords
{
    /// <summary>What always goes with channels.</summary>
    public static IReadOnlyList<Advisory> Advisories { get; } =
    [
        new("local-law-decides", "Local law and a licensed coordinator decide which channels may be used; this is a help for planning, not legal advice.", AdvisorySeverity.Safety),
        new("listen-first", "Clean on paper is not clean on the air: switch everything on where you shoot, then listen to each receiver with its own transmitter off.", AdvisorySeverity.Caution),
    ];

    /// <summary>The answer in one sentence.</summary>
    public static string Headline(CoordinationResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        int all = result.Carriers.Count;
        if (result.Complete)
        {
            return all == 1 ? "One clear channel." : Invariant($"{all} clear channels: no product comes near any of them.");
        }

        string rest = result.FewestHits is { } fewest
            ? Invariant($"with all {all} on the air {Count(fewest.Check.HitCount, "product")} {(fewest.Check.HitCount == 1 ? "hits" : "hit")}")
            : Invariant($"no room was found for the other {all - result.PlacedCount} at this spacing");
        return Invariant($"Only {result.PlacedCount} of {all} can be clear; {rest}.");
    }

    /// <summary>What was proved, in one sentence.</summary>
    public static string Proof(CoordinationResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Proof switch
        {
            CoordinationProof.FullSetFound => "Every product was checked against every carrier.",
            CoordinationProof.ProvedImpossible => "Every possibility was tried: no clear set for all of them exists; a larger part of it might.",
            CoordinationProof.ProvedLargest => "Every possibility was tried: no clear set for all exists, and none is larger than this one.",
            _ => Invariant($"Not proved: after {result.NodesVisited} tries no clear set for all was found; one may exist. Give more room, less guard or fewer transmitters."),
        };
    }

    /// <summary>The answer for a given set, in one sentence.</summary>
    public static string Headline(ChannelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Clean)
        {
            return "Clear: no product comes near any of them.";
        }

        string close = check.SpacingShortfalls.Count > 0 ? Count(check.SpacingShortfalls.Count, "pair") + " too close" : "";
        string hits = check.HitCount > 0 ? Count(check.HitCount, "hit") : "";
        return Invariant($"Not clear: {string.Join(" and ", new[] { hits, close }.Where(w => w.Length > 0))}.");
    }

    private static string Count(int count, string what) => Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
