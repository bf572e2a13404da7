using System.Globalization;
using Quarterlight.Drawing;
using Quarterlight.Radio.Channels;

namespace Quarterlight.Planner.Mapping;

/// <summary>Answers about channels, to the contract and to the picture.</summary>
internal static class ChannelReportMapper
{
    private const int MostProducts = 50;

    /// <summary>The answer of a search.</summary>
    public static V1.ChannelReport ToContract(CoordinationResult result, ChannelTask asked)
    {
        var contract = new V1.ChannelReport
        {
            Headline = CoordinationWords.Headline(result),
            Complete = result.Complete,
            Proved = result.Proof is CoordinationProof.FullSetFound or CoordinationProof.ProvedLargest,
            Proof = CoordinationWords.Proof(result),
            NodeCount = result.NodesVisited,
        };
        contract.Assignments.AddRange(result.Carriers.Select(c => Assignment(c, c.FrequencyHz is not null)));
        if (result.FewestHits is { } fewest)
        {
            contract.FewestHitsAssignments.AddRange(Assignments(fewest.Carriers, fewest.Check));
        }

        Fill(contract, result.FewestHits?.Check ?? result.Check, asked, result.FewestHits?.Carriers ?? result.Carriers);
        return contract;
    }

    /// <summary>The answer of a check.</summary>
    public static V1.ChannelReport ToContract(ChannelCheck check, ChannelTask asked)
    {
        var contract = new V1.ChannelReport { Headline = CoordinationWords.Headline(check), Complete = check.Clean, Proved = true, Proof = "Every product was checked against every carrier." };
        AssignedCarrier[] carriers = [.. asked.Task.Transmitters.Select(t => new AssignedCarrier(t.Id, t.FixedHz))];
        contract.Assignments.AddRange(Assignments(carriers, check));
        Fill(contract, check, asked, carriers);
        return contract;
    }

    /// <summary>What the picture shows of an answer.</summary>
    public static SpectrumMap ToMap(V1.ChannelReport report, ChannelTask asked)
    {
        // All of them on the air, where that is possible: then the hits show.
        IEnumerable<V1.ChannelAssignment> drawn = report.FewestHitsAssignments.Count > 0 ? report.FewestHitsAssignments : report.Assignments;
        List<SpectrumChannel> channels = [.. drawn.Where(a => a.HasFrequencyMhz).Select(a => new SpectrumChannel(a.TransmitterId, a.FrequencyMhz, a.Clean, false))];
        channels.AddRange(asked.Task.Neighbours.Select(n => new SpectrumChannel(n.Id, n.FrequencyHz / 1e6, true, true)));
        long[] own = [.. drawn.Where(a => a.HasFrequencyMhz).Select(a => (long)Math.Round(a.FrequencyMhz * 1e6)), .. asked.Task.Neighbours.Select(n => n.FrequencyHz)];
        HashSet<(int Order, double)> hits = [.. report.Hits.Select(h => (Order(h.Kind), h.FrequencyMhz))];
        List<SpectrumProduct> products =
        [
            .. IntermodProducts.Enumerate(own, asked.Task.Limits.FifthOrder).Where(p => p.FrequencyHz > 0)
                .Select(p => (p.Order, MHz: p.FrequencyHz / 1e6)).Distinct()
                .Select(p => new SpectrumProduct(p.MHz, p.Order, null, hits.Contains((p.Order, p.MHz)))),
        ];
        double[] edges = [.. asked.Task.Transmitters.SelectMany(t => t.TuningRanges).SelectMany(r => new[] { r.LowHz / 1e6, r.HighHz / 1e6 }), .. channels.Select(c => c.FrequencyMHz)];
        double low = edges.Min(), high = edges.Max();
        return new SpectrumMap
        {
            Headline = report.Headline,
            LowMHz = high > low ? low : low - 0.5,
            HighMHz = high > low ? high : high + 0.5,
            GuardKHz = asked.Task.Limits.ThirdOrderGuardHz / 1e3,
            Channels = channels,
            Products = products,
            Excluded = [.. asked.Task.ExcludedBlocks.Select(b => new Drawing.ExcludedBlock(b.LowHz / 1e6, b.HighHz / 1e6, b.Why))],
        };
    }

    private static IEnumerable<V1.ChannelAssignment> Assignments(IEnumerable<AssignedCarrier> carriers, ChannelCheck check)
    {
        HashSet<string> hit = [.. check.Hits.Select(h => h.VictimId)];
        return carriers.Select(c => Assignment(c, !hit.Contains(c.TransmitterId)));
    }

    private static V1.ChannelAssignment Assignment(AssignedCarrier carrier, bool clean)
    {
        var row = new V1.ChannelAssignment { TransmitterId = carrier.TransmitterId, Clean = clean };
        if (carrier.FrequencyHz is { } hz)
        {
            row.FrequencyMhz = hz / 1e6;
        }

        return row;
    }

    private static void Fill(V1.ChannelReport contract, ChannelCheck check, ChannelTask asked, IReadOnlyList<AssignedCarrier> carriers)
    {
        Dictionary<string, long> frequency = carriers.Where(c => c.FrequencyHz is not null).ToDictionary(c => c.TransmitterId, c => c.FrequencyHz!.Value);
        foreach (NeighbourCarrier neighbour in asked.Task.Neighbours)
        {
            frequency.TryAdd(neighbour.Id, neighbour.FrequencyHz);
        }

        contract.Hits.AddRange(check.Hits.Select(h => new V1.IntermodProduct
        {
            Kind = Kind(h.Kind),
            Words = Words(h.Kind, [.. h.MemberIds.Select(id => frequency[id])]),
            FrequencyMhz = h.ProductHz / 1e6,
            NearestCarrierMhz = frequency[h.VictimId] / 1e6,
            OffsetKhz = (h.ProductHz - frequency[h.VictimId]) / 1e3,
        }));
        contract.SpacingFaults.AddRange(check.SpacingShortfalls.Select(s => string.Create(
            CultureInfo.InvariantCulture, $"{frequency[s.LowerId] / 1e6:0.000###} and {frequency[s.UpperId] / 1e6:0.000###} MHz are {s.DistanceHz / 1e3:0.###} kHz apart")));
        if (check.NearestThirdOrderHz is { } nearest)
        {
            contract.LeastThirdOrderOffsetKhz = nearest / 1e3;
        }

        contract.ThirdOrderCount = check.ProductCounts.Where(c => c.Key <= ProductKind.APlusBMinusC).Sum(c => c.Value);
        contract.FifthOrderCount = check.ProductCounts.Where(c => c.Key > ProductKind.APlusBMinusC).Sum(c => c.Value);
        AddLevels(contract, asked, carriers);
        long[] own = [.. carriers.Where(c => c.FrequencyHz is not null).Select(c => c.FrequencyHz!.Value)];
        contract.Advisories.AddRange(LawfulChannels.Advisories(asked.CountryCode, own, asked.Stages.Max(s => s?.PowerDbm))
            .Concat(CoordinationWords.Advisories).OrderByDescending(a => a.Severity).Select(GeometryMapper.ToContract));
    }

    private static void AddLevels(V1.ChannelReport contract, ChannelTask asked, IReadOnlyList<AssignedCarrier> carriers)
    {
        if (asked.DistanceM is not { } distance)
        {
            return;
        }

        (long Hz, OutputStage Stage)[] known =
            [.. carriers.Zip(asked.Stages).Where(c => c.First.FrequencyHz is not null && c.Second is not null).Select(c => (c.First.FrequencyHz!.Value, c.Second!))];
        if (known.Length < 2)
        {
            return;
        }

        OutputStage[] stages = [.. known.Select(k => k.Stage)];
        long[] frequencies = [.. known.Select(k => k.Hz)];
        double coupling = IntermodLevels.CouplingLossDb(frequencies.Average() / 1e6, distance);
        contract.Products.AddRange(IntermodProducts.Enumerate(frequencies, FifthOrderScope.None).Where(p => p.FrequencyHz > 0)
            .Select(p => (Product: p, ProductLevels.Of(p, stages, (_, _) => coupling)[0].LevelDbm))
            .OrderByDescending(p => p.LevelDbm).ThenBy(p => p.Product.FrequencyHz).Take(MostProducts)
            .Select(p =>
            {
                long nearest = frequencies.MinBy(f => Math.Abs(f - p.Product.FrequencyHz));
                long[] members = p.Product.C < 0 ? [frequencies[p.Product.A], frequencies[p.Product.B]] : [frequencies[p.Product.A], frequencies[p.Product.B], frequencies[p.Product.C]];
                return new V1.IntermodProduct
                {
                    Kind = Kind(p.Product.Kind),
                    Words = Words(p.Product.Kind, members),
                    FrequencyMhz = p.Product.FrequencyHz / 1e6,
                    NearestCarrierMhz = nearest / 1e6,
                    OffsetKhz = (p.Product.FrequencyHz - nearest) / 1e3,
                    LevelDbm = p.LevelDbm,
                };
            }));
    }

    private static V1.ProductKind Kind(ProductKind kind) => kind switch
    {
        ProductKind.TwoAMinusB => V1.ProductKind.ThirdTwoSignal,
        ProductKind.APlusBMinusC => V1.ProductKind.ThirdThreeSignal,
        ProductKind.ThreeAMinusTwoB => V1.ProductKind.FifthTwoSignal,
        _ => V1.ProductKind.FifthThreeSignal,
    };

    private static int Order(V1.ProductKind kind) => kind is V1.ProductKind.ThirdTwoSignal or V1.ProductKind.ThirdThreeSignal ? 3 : 5;

    private static string Words(ProductKind kind, long[] membersHz)
    {
        string[] m = [.. membersHz.Select(hz => (hz / 1e6).ToString("0.000###", CultureInfo.InvariantCulture))];
        return kind switch
        {
            ProductKind.TwoAMinusB => $"2 × {m[0]} − {m[1]}",
            ProductKind.APlusBMinusC => $"{m[0]} + {m[1]} − {m[2]}",
            ProductKind.ThreeAMinusTwoB => $"3 × {m[0]} − 2 × {m[1]}",
            ProductKind.ThreeAMinusBMinusC => $"3 × {m[0]} − {m[1]} − {m[2]}",
            _ => $"2 × {m[0]} + {m[1]} − 2 × {m[2]}",
        };
    }
}
