namespace Quarterlight.Radio.Channels;

/// <summary>
/// Checks given carriers against spacing and guards, product by product. Every carrier can be a victim, the product's own members
/// too: A+B-C on C is as real as any other. What neighbours alone do to neighbours is counted apart.
/// </summary>
public static class ChannelChecker
{
    /// <summary>Hits listed at most; the counts cover all.</summary>
    public const int MostListedHits = 500;

    /// <summary>Checks carriers.</summary>
    /// <param name="carriers">Carriers in any order; two on one frequency are a spacing shortfall.</param>
    /// <param name="limits">Spacing and guards.</param>
    public static ChannelCheck Check(IReadOnlyList<CheckedCarrier> carriers, CoordinationLimits limits)
    {
        ArgumentNullException.ThrowIfNull(carriers);
        ArgumentNullException.ThrowIfNull(limits);
        CheckedCarrier[] sorted = [.. carriers.OrderBy(c => c.FrequencyHz).ThenBy(c => c.Id, StringComparer.Ordinal)];
        return new Run(sorted, limits).Check();
    }

    /// <summary>Checks the carriers of an answer together with the task's neighbours.</summary>
    /// <param name="task">The task.</param>
    /// <param name="carriers">Carriers; those without a frequency are left out.</param>
    public static ChannelCheck Check(CoordinationTask task, IReadOnlyList<AssignedCarrier> carriers)
    {
        ArgumentNullException.ThrowIfNull(task);
        ArgumentNullException.ThrowIfNull(carriers);
        return Check(
            [
                .. carriers.Where(c => c.FrequencyHz is not null).Select(c => new CheckedCarrier(c.TransmitterId, c.FrequencyHz!.Value)),
                .. task.Neighbours.Select(n => new CheckedCarrier(n.Id, n.FrequencyHz, true)),
            ],
            task.Limits);
    }

    private sealed class Run(CheckedCarrier[] sorted, CoordinationLimits limits)
    {
        private readonly long[] _frequenciesHz = [.. sorted.Select(c => c.FrequencyHz)];
        private readonly SortedDictionary<ProductKind, int> _hitCounts = [], _productCounts = [];
        private readonly List<(IntermodProduct Product, int Victim, long DistanceHz)> _hits = [];
        private readonly long?[] _nearest = new long?[2];
        private int _neighbourOnly;

        public ChannelCheck Check()
        {
            foreach (IntermodProduct product in IntermodProducts.Enumerate(_frequenciesHz, limits.FifthOrder))
            {
                _productCounts[product.Kind] = _productCounts.GetValueOrDefault(product.Kind) + 1;
                int at = Array.BinarySearch(_frequenciesHz, product.FrequencyHz);
                at = at < 0 ? ~at : at;
                while (at > 0 && _frequenciesHz[at - 1] == product.FrequencyHz)
                {
                    at--;
                }

                for (int i = at; i < sorted.Length && Look(product, i); i++)
                {
                }

                for (int i = at - 1; i >= 0 && Look(product, i); i--)
                {
                }
            }

            return new ChannelCheck
            {
                SpacingShortfalls = [.. Shortfalls()],
                Hits = [.. _hits.OrderBy(h => h.DistanceHz).ThenBy(h => h.Product.Kind).Take(MostListedHits).Select(Describe)],
                HitCounts = _hitCounts,
                ProductCounts = _productCounts,
                NeighbourOnlyHitCount = _neighbourOnly,
                NearestThirdOrderHz = _nearest[0],
                NearestFifthOrderHz = _nearest[1],
            };
        }

        /// <summary>Notes one product and carrier; false when carriers farther out on this side cannot matter.</summary>
        private bool Look(IntermodProduct product, int victim)
        {
            long distanceHz = Math.Abs(product.FrequencyHz - _frequenciesHz[victim]);
            bool hit = distanceHz < limits.Guard(product.Order);
            if (sorted[victim].IsNeighbour && sorted[product.A].IsNeighbour && sorted[product.B].IsNeighbour
                && (product.C < 0 || sorted[product.C].IsNeighbour))
            {
                _neighbourOnly += hit ? 1 : 0;
                return true;
            }

            ref long? nearest = ref _nearest[product.Order == 3 ? 0 : 1];
            nearest = Math.Min(nearest ?? long.MaxValue, distanceHz);
            if (hit)
            {
                _hitCounts[product.Kind] = _hitCounts.GetValueOrDefault(product.Kind) + 1;
                _hits.Add((product, victim, distanceHz));
            }

            return hit;
        }

        private IEnumerable<SpacingShortfall> Shortfalls()
        {
            for (int i = 0; i < sorted.Length; i++)
            {
                for (int j = i + 1; j < sorted.Length && _frequenciesHz[j] - _frequenciesHz[i] < limits.MinSpacingHz; j++)
                {
                    if (!(sorted[i].IsNeighbour && sorted[j].IsNeighbour))
                    {
                        yield return new SpacingShortfall(sorted[i].Id, sorted[j].Id, _frequenciesHz[j] - _frequenciesHz[i]);
                    }
                }
            }
        }

        private IntermodHit Describe((IntermodProduct Product, int Victim, long DistanceHz) hit)
        {
            IntermodProduct p = hit.Product;
            string[] members = p.C < 0 ? [sorted[p.A].Id, sorted[p.B].Id] : [sorted[p.A].Id, sorted[p.B].Id, sorted[p.C].Id];
            return new IntermodHit(p.Kind, members, p.FrequencyHz, sorted[hit.Victim].Id, hit.DistanceHz, hit.DistanceHz - limits.Guard(p.Order));
        }
    }
}
