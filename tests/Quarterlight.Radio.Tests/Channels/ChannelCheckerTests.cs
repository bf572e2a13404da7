using Quarterlight.Radio.Channels;

namespace Quarterlight.Radio.Tests.Channels;

public class ChannelCheckerTests
{
    private static readonly CoordinationLimits s_unit = new()
    {
        MinSpacingHz = Tasks.UnitHz,
        ThirdOrderGuardHz = Tasks.UnitHz,
        FifthOrder = FifthOrderScope.TwoSignal,
        FifthOrderGuardHz = Tasks.UnitHz,
    };

    [Fact]
    public void Check_PublishedSets_HaveTheStatedProductsAndHits()
    {
        // intermod_sets.csv; see its source page.
        foreach (Dictionary<string, string> row in Vectors.Read("intermod_sets"))
        {
            double[] channels = Vectors.Numbers(row["channel_numbers_from_1"]);
            ChannelCheck check = ChannelChecker.Check(Tasks.Carriers(channels), s_unit);
            Assert.Equal((int)Vectors.Number(row["carriers"]), channels.Length);
            Assert.Equal((int)Vectors.Number(row["two_signal_3rd_products"]), check.ProductCounts[ProductKind.TwoAMinusB]);
            Assert.Equal((int)Vectors.Number(row["three_signal_3rd_products"]), check.ProductCounts[ProductKind.APlusBMinusC]);
            Assert.Equal((int)Vectors.Number(row["two_signal_5th_hits"]), check.HitCounts.GetValueOrDefault(ProductKind.ThreeAMinusTwoB));
            bool free = row["third_order_free"] == "yes";
            Assert.Equal(free ? 0 : 4, check.HitCounts.GetValueOrDefault(ProductKind.TwoAMinusB));
            Assert.Equal(free ? 0 : 6, check.HitCounts.GetValueOrDefault(ProductKind.APlusBMinusC));
        }
    }

    [Fact]
    public void Check_WorkedPair_PutsProductsWhereTheSumsSay()
    {
        // 2 x 600.0 - 600.6 = 599.4 and so on: by hand.
        IEnumerable<IntermodProduct> products = IntermodProducts.Enumerate([600_000_000, 600_600_000], FifthOrderScope.TwoAndThreeSignal);
        Assert.Equal(
            [(3, 599_400_000L), (3, 601_200_000L), (5, 598_800_000L), (5, 601_800_000L)],
            products.Select(p => (p.Order, p.FrequencyHz)).Order());
    }

    [Fact]
    public void Check_WorkedTriple_PutsThreeSignalProductsWhereTheSumsSay()
    {
        // 600.0 + 600.6 - 601.0 = 599.6, 600.0 + 601.0 - 600.6 = 600.4, 600.6 + 601.0 - 600.0 = 601.6: by hand.
        IEnumerable<IntermodProduct> products = IntermodProducts.Enumerate([600_000_000, 600_600_000, 601_000_000], FifthOrderScope.None);
        Assert.Equal(
            [599_600_000, 600_400_000, 601_600_000],
            products.Where(p => p.Kind == ProductKind.APlusBMinusC).Select(p => p.FrequencyHz).Order());
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(7)]
    public void Enumerate_NCarriers_GivesEachKindAsOftenAsCounted(int n)
    {
        long[] carriers = [.. Enumerable.Range(0, n).Select(i => 500_000_000L + (i * i * 1000))];
        ILookup<ProductKind, IntermodProduct> kinds = IntermodProducts.Enumerate(carriers, FifthOrderScope.TwoAndThreeSignal).ToLookup(p => p.Kind);
        Assert.Equal(n * (n - 1), kinds[ProductKind.TwoAMinusB].Count());
        Assert.Equal(n * (n - 1) * (n - 2) / 2, kinds[ProductKind.APlusBMinusC].Count());
        Assert.Equal(n * (n - 1), kinds[ProductKind.ThreeAMinusTwoB].Count());
        Assert.Equal(n * (n - 1) * (n - 2) / 2, kinds[ProductKind.ThreeAMinusBMinusC].Count());
        Assert.Equal(n * (n - 1) * (n - 2), kinds[ProductKind.TwoAPlusBMinusTwoC].Count());
    }

    [Theory]
    [InlineData(50_000, 0)]
    [InlineData(50_001, 1)]
    [InlineData(0, 0)]
    public void Check_ProductAtTheGuard_IsAllowedAndNearerIsNot(long guardHz, int hits)
    {
        // 2 x 600.6 - 600.0 = 601.2, 50 kHz below the third carrier; 2 x 600.6 - 601.25 = 599.95, 50 kHz below the first, is the same
        // equation, and so is 600.0 + 601.25 - 600.6 = 600.65 on the middle one.
        ChannelCheck check = ChannelChecker.Check(Tasks.CarriersMHz(600, 600.6, 601.25), new CoordinationLimits { ThirdOrderGuardHz = guardHz });
        Assert.Equal(hits * 3, check.HitCount);
        Assert.Equal(50_000, check.NearestThirdOrderHz);
        Assert.All(check.Hits, h => Assert.Equal((50_000, -1), (h.DistanceHz, h.MarginHz)));
    }

    [Fact]
    public void Check_ProductExactlyOnACarrier_IsAHitEvenWithoutGuard()
    {
        ChannelCheck check = ChannelChecker.Check(Tasks.CarriersMHz(600, 601, 602), new CoordinationLimits { ThirdOrderGuardHz = 0 });
        Assert.Equal(0, check.NearestThirdOrderHz);
        Assert.Contains(check.Hits, h => h.Kind == ProductKind.TwoAMinusB && h.MemberIds.SequenceEqual(["601", "600"]) && h.VictimId == "602");
        Assert.Equal(3, check.HitCount);
    }

    [Fact]
    public void Check_CloseCarriers_AreReportedUnlessBothAreNeighbours()
    {
        CheckedCarrier[] carriers = [new("a", 600_000_000), new("b", 600_200_000), new("n1", 700_000_000, true), new("n2", 700_200_000, true)];
        ChannelCheck check = ChannelChecker.Check(carriers, new CoordinationLimits { ThirdOrderGuardHz = 1000 });
        Assert.Equal([new SpacingShortfall("a", "b", 200_000)], check.SpacingShortfalls);
        Assert.False(check.Clean);
    }

    [Fact]
    public void Check_NeighboursAmongThemselves_AreCountedApart()
    {
        CheckedCarrier[] carriers = [new("a", 500_000_000), new("n1", 600_000_000, true), new("n2", 601_000_000, true), new("n3", 602_000_000, true)];
        ChannelCheck check = ChannelChecker.Check(carriers, new CoordinationLimits());
        Assert.Equal(0, check.HitCount);
        Assert.Equal(3, check.NeighbourOnlyHitCount);
    }
}
