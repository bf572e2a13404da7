using Quarterlight.Chat.Emulator;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Rest;

namespace Quarterlight.Emulator.Tests;

/// <summary>Limits and faults (Rate Limits): what goes wrong goes wrong as ordered, and the work behind it is done or not as ordered.</summary>
public sealed class FaultTests : IAsyncLifetime
{
    private EmulatedPlatform platform = null!;
    private ApiClient api = null!;

    public async ValueTask InitializeAsync()
    {
        platform = await EmulatedPlatform.StartAsync(StillClock.Options, TestContext.Current.CancellationToken);
        api = new ApiClient(platform);
        await api.CallAsync("PUT", api.Commands, """[{"name":"help","description":"x"}]""");
    }

    public async ValueTask DisposeAsync()
    {
        api.Dispose();
        await platform.DisposeAsync();
    }

    [Fact]
    public async Task Bucket_UsedUp_IsRefusedWithItsWait()
    {
        platform.RateLimits.Set("GET /gateway", 2, TimeSpan.FromMinutes(1));
        ApiResult first = await api.CallAsync("GET", "/gateway");
        Assert.Equal(("2", "1"), (Header(first, "X-RateLimit-Limit"), Header(first, "X-RateLimit-Remaining")));
        Assert.Equal("0", Header(await api.CallAsync("GET", "/gateway"), "X-RateLimit-Remaining"));
        ApiResult third = await api.CallAsync("GET", "/gateway");
        Assert.Equal((429, "user"), (third.Status, Header(third, "X-RateLimit-Scope")));
        Assert.InRange((double)third.Json!["retry_after"]!, 1, 60);
        Assert.Equal(Header(first, "X-RateLimit-Bucket"), Header(third, "X-RateLimit-Bucket"));
        Assert.Equal(200, (await api.CallAsync("GET", "/users/@me")).Status);
    }

    [Fact]
    public async Task Global_UsedUp_LeavesInteractionsAlone()
    {
        platform.RateLimits.GlobalPerSecond = 0;
        ApiResult refused = await api.CallAsync("GET", "/users/@me");
        Assert.Equal((429, "global", "true"), (refused.Status, Header(refused, "X-RateLimit-Scope"), Header(refused, "X-RateLimit-Global")));
        Assert.Equal(204, (await DeferAsync()).Status);
    }

    [Theory]
    [InlineData(LimitScope.User)]
    [InlineData(LimitScope.Global)]
    [InlineData(LimitScope.Shared)]
    public async Task Limited_ByRule_TellsItsScopeAndDoesNothing(LimitScope scope)
    {
        platform.Faults.Add(new FaultRule(FaultKind.RateLimited) { Path = "callback$", Scope = scope });
        SentInteraction asked = platform.Crew.Slash("help");
        ApiResult refused = await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""");
        Assert.Equal((429, scope.ToString().ToLowerInvariant()), (refused.Status, Header(refused, "X-RateLimit-Scope")));
        Assert.Null(asked.FirstAnswer);
        Assert.Equal(204, (await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""")).Status);
        Assert.Equal(scope == LimitScope.Shared ? 0 : 1, platform.Recording.InvalidRequests);
    }

    [Theory]
    [InlineData(FaultKind.CutBefore, false)]
    [InlineData(FaultKind.CutAfter, true)]
    public async Task Cut_BeforeOrAfter_DoesTheWorkOrNot(FaultKind kind, bool done)
    {
        platform.Faults.Add(new FaultRule(kind) { Path = "callback$" });
        SentInteraction asked = platform.Crew.Slash("help");
        await Assert.ThrowsAsync<HttpRequestException>(() => api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}"""));
        Assert.Equal(done, asked.FirstAnswer is not null);
    }

    [Theory]
    [InlineData(FaultKind.Status, false)]
    [InlineData(FaultKind.ErrorAfter, true)]
    public async Task Error_BeforeOrAfter_DoesTheWorkOrNot(FaultKind kind, bool done)
    {
        platform.Faults.Add(new FaultRule(kind) { Path = "callback$" });
        SentInteraction asked = platform.Crew.Slash("help");
        Assert.Equal(500, (await api.CallAsync("POST", ApiClient.Callback(asked), """{"type":5}""")).Status);
        Assert.Equal(done, asked.FirstAnswer is not null);
    }

    [Fact]
    public async Task Hang_LastsUntilTheClientGivesUp()
    {
        platform.Faults.Add(new FaultRule(FaultKind.Hang) { Path = "gateway$" });
        using var http = new HttpClient();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        Task<HttpResponseMessage> hanging = http.GetAsync(new Uri($"{platform.ApiBase}/gateway"), patience.Token);
        await platform.UntilAsync(() => platform.Recording.Requests.Any(r => r.Fault == "Hang"), "the request", TestContext.Current.CancellationToken);
        Assert.False(hanging.IsCompleted);
        await patience.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => hanging);
        Assert.Equal(0, Assert.Single(platform.Recording.Requests, r => r.Fault == "Hang").Status);
        Assert.Equal(200, (await api.CallAsync("GET", "/gateway")).Status);
    }

    [Fact]
    public async Task Probability_OfOneSeed_StrikesTheSameRequests()
    {
        string first = await StatusesAsync();
        await using EmulatedPlatform again = await EmulatedPlatform.StartAsync(cancellation: TestContext.Current.CancellationToken);
        using var other = new ApiClient(again);
        string second = await StatusesAsync(again, other);
        Assert.Equal(first, second);
        Assert.Contains("500", first, StringComparison.Ordinal);
        Assert.Contains("200", first, StringComparison.Ordinal);
    }

    private Task<string> StatusesAsync() => StatusesAsync(platform, api);

    private static async Task<string> StatusesAsync(EmulatedPlatform platform, ApiClient api)
    {
        platform.Faults.Add(new FaultRule(FaultKind.Status) { Path = "gateway$", Probability = 0.5, Times = null });
        var statuses = new List<int>();
        for (int i = 0; i < 20; i++)
        {
            statuses.Add((await api.CallAsync("GET", "/gateway")).Status);
        }

        return string.Join(' ', statuses);
    }

    private Task<ApiResult> DeferAsync() => api.CallAsync("POST", ApiClient.Callback(platform.Crew.Slash("help")), """{"type":5}""");

    private static string Header(ApiResult result, string name) => result.Headers.GetValues(name).Single();
}
