using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

public sealed class PagingTests(PlannerFixture fixture) : IClassFixture<PlannerFixture>
{
    private readonly RunningPlanner _planner = fixture.Planner;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task ListCabins_PageByPage_EachOnceInOrder()
    {
        string[] ids = ["d", "a", "c", "b", "a-2", "e", "b9"];
        foreach (string id in ids)
        {
            await _planner.Cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = id, Cabin = Samples.Cabin() }, cancellationToken: Stop);
        }

        var sizes = new List<int>();
        var names = new List<string>();
        string token = "";
        do
        {
            ListCabinsResponse page = await _planner.Cabins.ListCabinsAsync(new ListCabinsRequest { PageSize = 3, PageToken = token }, cancellationToken: Stop);
            sizes.Add(page.Cabins.Count);
            names.AddRange(page.Cabins.Select(c => c.Name));
            token = page.NextPageToken;
        }
        while (token.Length > 0);

        Assert.Equal([3, 3, 1], sizes);
        Assert.Equal(ids.Order(StringComparer.Ordinal).Select(i => $"cabins/{i}"), names);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(201)]
    [InlineData(int.MaxValue)]
    public async Task List_PageSizeOutOfRange_NamesTheField(int size)
    {
        (await Refused.ForFieldsAsync(_planner.Cabins.ListCabinsAsync(new ListCabinsRequest { PageSize = size }, cancellationToken: Stop))).Names("page_size");
        (await Refused.ForFieldsAsync(_planner.Plans.ListPlansAsync(new ListPlansRequest { PageSize = size }, cancellationToken: Stop))).Names("page_size");
    }

    [Theory]
    [InlineData("?")]
    [InlineData("not a token")]
    public async Task List_BadToken_NamesTheField(string token) =>
        (await Refused.ForFieldsAsync(_planner.Scenes.ListScenesAsync(new ListScenesRequest { PageToken = token }, cancellationToken: Stop))).Names("page_token");

    [Fact]
    public async Task ListPlans_MoreThanAMessageHolds_PagesEndEarlyAndMissNothing()
    {
        Plan plan = (await _planner.Placement.PlanPlacementAsync(new PlanPlacementRequest { Bundle = Samples.Bundle() }, cancellationToken: Stop)).Plan;
        plan.RefusedSites.AddRange(Enumerable.Range(0, 2000).Select(i => new RefusedSite { SiteId = $"site-{i}", Words = "a place that is described with many words", Explanation = new string('x', 60) }));
        int count = (5_000_000 / plan.CalculateSize()) + 1;
        for (int i = 0; i < count; i++)
        {
            await _planner.Plans.CreatePlanAsync(new CreatePlanRequest { PlanId = $"p-{i:000}", Plan = plan }, cancellationToken: Stop);
        }

        int seen = 0;
        int pages = 0;
        string token = "";
        do
        {
            ListPlansResponse page = await _planner.Plans.ListPlansAsync(new ListPlansRequest { PageSize = 200, PageToken = token, View = PlanView.Full }, cancellationToken: Stop);
            Assert.NotEmpty(page.Plans);
            seen += page.Plans.Count;
            pages++;
            token = page.NextPageToken;
        }
        while (token.Length > 0);

        Assert.Equal(count, seen);
        Assert.InRange(pages, 2, count);
    }
}
