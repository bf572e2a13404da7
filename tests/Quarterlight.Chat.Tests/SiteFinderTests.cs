using Quarterlight.Crew.Language;
using Quarterlight.V1;

namespace Quarterlight.Chat.Tests;

/// <summary>Places as said, looked up among the sites the real planner lists.</summary>
public sealed class SiteFinderTests(SharedPlanner planner)
{
    [Theory]
    [InlineData("cabins/demo-saloon", "visor", "front-passenger", "visor-passenger-")]
    [InlineData("cabins/demo-saloon", "passenger visor inner edge", null, "visor-passenger-inner")]
    [InlineData("cabins/demo-saloon", "driver visor outer edge", null, "visor-driver-outer")]
    [InlineData("cabins/demo-saloon", "headliner above the rear left", null, "headliner-above-rear-driver")]
    [InlineData("cabins/demo-hatch", "headliner above the rear left", null, "headliner-above-rear-passenger")]
    [InlineData("cabins/demo-saloon", "headliner above the driver", null, "headliner-above-front-driver")]
    [InlineData("cabins/demo-saloon", "headrest", "rear-right", "headrest-rear-right-")]
    [InlineData("cabins/demo-saloon", "a pillar high", "driver", "pillar-a-driver-high")]
    [InlineData("cabins/demo-saloon", "mirror", "driver", "mirror-foot")]
    [InlineData("cabins/demo-saloon", "parcel shelf", "rear-left", "shelf-")]
    [InlineData("cabins/demo-saloon", "grab handle", "front-passenger", "grab-passenger")]
    [InlineData("cabins/demo-saloon", "windscreen low", "driver", "windscreen-low")]
    [InlineData("cabins/demo-saloon", "glove box", "front-passenger", "dash-face-passenger")]
    [InlineData("cabins/demo-saloon", "back of the passenger seat upper", "rear-right", "seatback-front-passenger-upper")]
    [InlineData("cabins/demo-saloon", "lapel", "driver", "body-worn")]
    [InlineData("cabins/demo-saloon", "bulkhead", "driver", "")]
    public async Task Find_PlaceAsSaid_TheSitesMeant(string cabin, string words, string? talkerSeatId, string idStart)
    {
        ListMountSitesResponse all = await new PlacementService.PlacementServiceClient(planner.Invoker).ListMountSitesAsync(new() { Name = cabin }, cancellationToken: TestContext.Current.CancellationToken);
        SiteMention said = SiteReader.Read(Phrases.Join(Tokenizer.Split(words)), windowsAreConditions: false)!;

        IReadOnlyList<MountSite> found = SiteFinder.Find(said, talkerSeatId, all.Sites, all.Seats, driverOnLeft: cabin != "cabins/demo-hatch");

        if (idStart.Length == 0)
        {
            Assert.Empty(found);
            return;
        }

        Assert.InRange(found.Count, 1, SiteFinder.MostSites);
        Assert.All(found, s => Assert.StartsWith(idStart, s.Id, StringComparison.Ordinal));
    }
}
