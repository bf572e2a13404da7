using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>Limits: learned from answers, kept, waited for (Rate Limits).</summary>
public sealed class RateLimitTests
{
    private static readonly OutgoingMessage Message = new() { Content = "a" };

    [Fact]
    public async Task Bucket_Spent_NextWaitsForTheReset()
    {
        using var rig = new RestRig((_, n) => ScriptedHandler.Json(200, "{}", ScriptedHandler.Bucket("b", 2, 2 - n > 0 ? 2 - n : 0, 3)));
        await rig.RunAsync(Task.WhenAll(Enumerable.Range(0, 3).Select(_ => rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop))));
        Assert.True(rig.Sent[1].At < TimeSpan.FromSeconds(0.5));
        Assert.InRange(rig.Sent[2].At - rig.Sent[1].At, TimeSpan.FromSeconds(2.9), TimeSpan.FromSeconds(3.5));
    }

    [Fact]
    public async Task Bucket_OtherWebhook_DoesNotWait()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(200, "{}", ScriptedHandler.Bucket("b", 1, 0, 30)));
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(1), Message, RestRig.Stop));
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(2), Message, RestRig.Stop));
        Assert.True(rig.Now < TimeSpan.FromSeconds(1));
    }

    [Fact]
    public async Task Bucket_SharedByTwoRoutes_IsOneBucket()
    {
        using var rig = new RestRig((_, n) => ScriptedHandler.Json(200, "{}", ScriptedHandler.Bucket("b", 5, n == 3 ? 0 : 4, 2)));
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(1), Message, RestRig.Stop));
        await rig.RunAsync(rig.Responder.FollowUpAsync(rig.Ticket(1), Message, RestRig.Stop));
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(9), Message, RestRig.Stop));
        await rig.RunAsync(rig.Responder.FollowUpAsync(rig.Ticket(9), Message, RestRig.Stop));
        Assert.True(rig.Sent[3].At - rig.Sent[2].At >= TimeSpan.FromSeconds(2));
    }

    [Fact]
    public async Task Bucket_ManyAtOnce_GoInOrderOneAtATime()
    {
        int inside = 0;
        using var rig = new RestRig(async (_, _, stop) =>
        {
            Assert.Equal(1, Interlocked.Increment(ref inside));
            await Task.Yield();
            Interlocked.Decrement(ref inside);
            return ScriptedHandler.Json(200, "{}", ScriptedHandler.Bucket("b", 50, 40, 1));
        });
        await rig.RunAsync(Task.WhenAll(Enumerable.Range(0, 20).Select(i => rig.Responder.FollowUpAsync(rig.Ticket(), new OutgoingMessage { Content = $"n{i:00}" }, RestRig.Stop))));
        Assert.Equal(Enumerable.Range(0, 20).Select(i => $"n{i:00}"), rig.Sent.Select(s => s.Text[12..15]));
    }

    [Fact]
    public async Task Bucket_WaiterGivesUp_TheOthersGoOn()
    {
        var release = new TaskCompletionSource();
        using var rig = new RestRig(async (_, n, _) =>
        {
            await (n == 1 ? release.Task : Task.CompletedTask);
            return ScriptedHandler.Json(200, "{}");
        });
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(RestRig.Stop);
        Task first = rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop);
        Task second = rig.Responder.EditFirstAsync(rig.Ticket(), Message, stop.Token);
        Task third = rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop);
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
        release.SetResult();
        await rig.RunAsync(Task.WhenAll(first, third));
        Assert.Equal(2, rig.Sent.Count);
    }

    [Fact]
    public async Task Bucket_TurnDoesNotCome_EndsByItself()
    {
        using var rig = new RestRig(
            async (_, n, stop) =>
            {
                await Task.Delay(n == 1 ? Timeout.Infinite : 0, stop);
                return ScriptedHandler.Json(200, "{}");
            },
            new RestOptions { TryTimeout = TimeSpan.FromMinutes(5), LongestQueue = TimeSpan.FromSeconds(20) });
        Task first = rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop);
        DiscordException fault = await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop), 500);
        Assert.Equal(DiscordFault.RateLimited, fault.Fault);
        Assert.InRange(rig.Now, TimeSpan.FromSeconds(20), TimeSpan.FromSeconds(30));
        await rig.FaultAsync(first, 2000);
        await rig.RunAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop));
    }

    [Theory]
    [InlineData("user")]
    [InlineData("shared")]
    public async Task Limited_OfItsBucket_WaitsAndIsSentAgain(string scope)
    {
        using var rig = new RestRig((_, n) => n == 1 ? ScriptedHandler.Limited(1.5, scope) : ScriptedHandler.Json(200, "{}"));
        await rig.RunAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.InRange(rig.Sent[1].At - rig.Sent[0].At, TimeSpan.FromSeconds(1.5), TimeSpan.FromSeconds(2));
    }

    [Fact]
    public async Task Limited_ForEver_EndsAfterThreeTries()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Limited(0.2));
        Assert.Equal(DiscordFault.RateLimited, (await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop))).Fault);
        Assert.Equal(3, rig.Sent.Count);
    }

    [Fact]
    public async Task Limited_ForAnHour_EndsAtOnce()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Limited(3600));
        Assert.Equal(DiscordFault.RateLimited, (await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(), Message, RestRig.Stop))).Fault);
        Assert.True(rig.Now < TimeSpan.FromSeconds(1));
        Assert.Single(rig.Sent);
    }

    [Fact]
    public async Task Limited_FirstAnswer_OnlyAsLongAsTheInteractionLives()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Limited(5));
        Assert.Equal(DiscordFault.RateLimited, (await rig.FaultAsync(rig.Responder.DeferAsync(rig.Ticket(), false, RestRig.Stop))).Fault);
        Assert.Single(rig.Sent);
        Assert.True(rig.Now < TimeSpan.FromSeconds(1));
    }

    [Fact]
    public async Task Limited_Globally_StopsTheBotsRoutesAndNotInteractions()
    {
        using var rig = new RestRig((s, n) => n == 1 ? ScriptedHandler.Limited(4, "global", global: true) : ScriptedHandler.Json(200, "[]"));
        Task first = rig.ReadCommandsAsync(1);
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop));
        Assert.True(rig.Now < TimeSpan.FromSeconds(2));
        await rig.RunAsync(Task.WhenAll(first, rig.ReadCommandsAsync(2)));
        Assert.All(rig.Sent.Where((s, i) => i > 0 && s.Authorization is not null), s => Assert.True(s.At >= TimeSpan.FromSeconds(4)));
    }

    [Fact]
    public async Task Limited_ByAPage_StopsEverything()
    {
        using var rig = new RestRig((_, n) =>
        {
            if (n > 1)
            {
                return ScriptedHandler.Json(200, "{}");
            }

            HttpResponseMessage page = ScriptedHandler.Empty(429, ("Retry-After", "6"));
            page.Content = new StringContent("<html>error code: 1015</html>");
            return page;
        });
        Task first = rig.ReadCommandsAsync();
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(), Message, RestRig.Stop));
        await rig.RunAsync(first);
        Assert.All(rig.Sent.Skip(1), s => Assert.True(s.At >= TimeSpan.FromSeconds(6)));
    }

    [Fact]
    public async Task BotRequests_Many_NeverMoreThanFiftyInASecond()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(200, "[]"));
        await rig.RunAsync(Task.WhenAll(Enumerable.Range(1, 180).Select(i => rig.ReadCommandsAsync((ulong)i))));
        TimeSpan[] at = [.. rig.Sent.Select(s => s.At).Order()];
        Assert.Equal(180, at.Length);
        for (int i = 50; i < at.Length; i++)
        {
            Assert.True(at[i] - at[i - 50] >= TimeSpan.FromSeconds(1), $"request {i}");
        }

        Assert.True(at[^1] < TimeSpan.FromSeconds(6));
    }

    [Fact]
    public async Task Refusals_Many_StopEverythingUntilTheyAreOld()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Error(403, 50013), new RestOptions { RefusedRequestsLimit = 5 });
        for (ulong i = 0; i < 5; i++)
        {
            Assert.Equal(DiscordFault.Forbidden, (await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(i), Message, RestRig.Stop))).Fault);
        }

        Assert.Equal(DiscordFault.RateLimited, (await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(9), Message, RestRig.Stop))).Fault);
        Assert.Equal(DiscordFault.RateLimited, (await rig.FaultAsync(rig.ReadCommandsAsync())).Fault);
        Assert.Equal(5, rig.Sent.Count);
        Assert.Single(rig.Log.Lines, l => l.Id == 3106);
        rig.Time.Advance(TimeSpan.FromMinutes(10.2));
        Assert.Equal(DiscordFault.Forbidden, (await rig.FaultAsync(rig.ReadCommandsAsync())).Fault);
    }

    [Fact]
    public async Task Refusals_SharedLimit_AreNotCounted()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Limited(0.01, "shared"), new RestOptions { RefusedRequestsLimit = 2 });
        await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(1), Message, RestRig.Stop));
        await rig.FaultAsync(rig.Responder.FollowUpAsync(rig.Ticket(2), Message, RestRig.Stop));
        Assert.Equal(6, rig.Sent.Count);
    }

    [Fact]
    public async Task Buckets_OfOldInteractions_AreForgotten()
    {
        using var rig = new RestRig((_, _) => ScriptedHandler.Json(200, "{}", ScriptedHandler.Bucket("b", 5, 4, 1)));
        for (ulong i = 0; i < 600; i++)
        {
            await rig.Responder.EditFirstAsync(rig.Ticket(i), Message, RestRig.Stop);
            rig.Time.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.InRange(rig.Client.BucketCount, 1, 200);
    }
}
