using Quarterlight.Radio.Law;
using Quarterlight.Radio.Link;
using Quarterlight.Radio.Reception;

namespace Quarterlight.Radio.Tests.Link;

public class QuietChannelsTests
{
    [Fact]
    public void Raster_OfTheUs_IsAHundredOddTenths()
    {
        // 47 CFR 73.501: channels 201 to 300, 88.1 to 107.9 MHz, 0.2 MHz apart.
        double[] raster = [.. QuietChannels.Raster(LawBook.Find("US")!)];

        Assert.Equal(100, raster.Length);
        Assert.Equal((88.1, 107.9), (raster[0], raster[^1]));
        Assert.Contains(98.1, raster);
    }

    [Fact]
    public void Rank_AgainstTryingEachChannel_PutsTheSameOneFirst()
    {
        LinkTask task = Links.HiddenFm with { Stations = [new(88.5, 60), new(91.3, 70), new(95.1, 45), new(98.1, 75), new(99.9, 30), new(103.3, 66), new(106.7, 50)] };
        CountryLaw us = LawBook.Find("US")!;
        IReadOnlyList<QuietChannel> ranked = QuietChannels.Rank(task, us, 20);

        // Brute force: power sum of what noise and each station ask for, from the planning table, channel by channel.
        double least = QuietChannels.Raster(us).Min(Asked);
        Assert.Equal(least, Asked(ranked[0].FrequencyMHz), 0.1);
        for (int i = 1; i < ranked.Count; i++)
        {
            Assert.True(ranked[i].InterferenceDb >= ranked[i - 1].InterferenceDb - 0.11);
        }

        Assert.All(ranked, c => Assert.True(task.Stations.All(s => Math.Abs(s.FrequencyMHz - c.FrequencyMHz) > 0.35), c.Words));

        double Asked(double channel) => 10 * Math.Log10(task.Stations
            .Select(s => BroadcastProtection.RatioDb((s.FrequencyMHz - channel) * 1e3, false) is { } r ? s.FieldDbuvPerM + r : -200)
            .Append(23).Sum(db => Math.Pow(10, db / 10)));
    }

    [Fact]
    public void Rank_NoStations_SaysNothingDisturbs()
    {
        QuietChannel first = QuietChannels.Rank(Links.HiddenFm, LawBook.Find("DE")!, 1)[0];

        Assert.Null(first.WorstStationMHz);
        Assert.Equal(0, first.InterferenceDb, 1e-9);
        Assert.True(first.RangeM > 50);
    }
}
