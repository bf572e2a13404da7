using CsCheck;
using Quarterlight.Discord.Rest;

namespace Quarterlight.Discord.Tests.Rest;

/// <summary>
/// Whatever the platform answers, in whatever order: no bucket gets more than its limit in its window, no request is lost, none is done twice that
/// must not be, and everybody comes to an end.
/// </summary>
public sealed class RatePropertyTests
{
    [Fact]
    public void Requests_AnySequenceOfAnswers_KeepEveryLimit()
    {
        Gen.Int[0, 1_000_000].Sample(seed => RunAsync(seed).GetAwaiter().GetResult(), iter: 24, threads: 1, seed: "0000KZ3Y4Z06");
    }

    private static async Task RunAsync(int seed)
    {
        var random = new Random(seed);
        var world = new World(random);
        using var rig = new RestRig(world.AnswerAsync, new RestOptions { JitterSeed = seed, TryTimeout = TimeSpan.FromSeconds(2), LongestQueue = TimeSpan.FromMinutes(10), RefusedRequestsLimit = 100_000 });
        world.Now = () => rig.Now;

        // The routes are made known first: how many go out before the platform has named a bucket is nobody's to know.
        world.Calm = true;
        await rig.RunAsync(rig.Responder.EditFirstAsync(rig.Ticket(999), new OutgoingMessage { Content = "warm" }, RestRig.Stop), 50);
        await rig.RunAsync(rig.Responder.FollowUpAsync(rig.Ticket(998), new OutgoingMessage { Content = "warm" }, RestRig.Stop), 50);
        world.Calm = false;

        int count = random.Next(10, 60);
        var work = new List<(string Name, bool Safe, Task Task, CancellationTokenSource Stop)>();
        for (int i = 0; i < count; i++)
        {
            string name = $"r{i}.";
            bool safe = random.Next(2) == 0;
            var message = new OutgoingMessage { Content = name };
            InteractionTicket ticket = rig.Ticket((ulong)random.Next(3));
            var stop = CancellationTokenSource.CreateLinkedTokenSource(RestRig.Stop);
            work.Add((name, safe, safe ? rig.Responder.EditFirstAsync(ticket, message, stop.Token) : rig.Responder.FollowUpAsync(ticket, message, stop.Token), stop));
            if (random.Next(10) == 0)
            {
                await work[random.Next(work.Count)].Stop.CancelAsync();
            }
        }

        await rig.RunAsync(Task.WhenAll(work.Select(w => w.Task.ContinueWith(_ => { }, TaskScheduler.Default))), 50);
        Assert.Empty(world.Broken);
        foreach ((string name, bool safe, Task task, CancellationTokenSource stop) in work)
        {
            int done = world.Done.Count(d => d == name);
            Assert.True(task.IsCompletedSuccessfully || task.IsCanceled || task.Exception?.InnerException is DiscordException { Fault: DiscordFault.Unavailable or DiscordFault.RateLimited }, $"{name} {task.Exception}");
            Assert.True(!task.IsCompletedSuccessfully || done >= 1, $"{name} was lost");
            Assert.True(safe || done <= 1, $"{name} was done {done} times");
            stop.Dispose();
        }
    }

    /// <summary>A platform with fixed windows that begin with their first request, and with faults of every kind.</summary>
    private sealed class World(Random random)
    {
        private readonly Lock gate = new();
        private readonly int limit = random.Next(1, 6);
        private readonly TimeSpan window = TimeSpan.FromSeconds(random.Next(1, 6));
        private readonly bool shared = random.Next(2) == 0;
        private readonly double trouble = random.NextDouble() * 0.5;
        private readonly Dictionary<string, (TimeSpan Start, int Used)> used = [];

        public bool Calm { get; set; }

        public Func<TimeSpan> Now { get; set; } = () => TimeSpan.Zero;

        public List<string> Done { get; } = [];

        public List<string> Broken { get; } = [];

        public async Task<HttpResponseMessage> AnswerAsync(SentRequest request, int number, CancellationToken stop)
        {
            int what, delay;
            HttpResponseMessage answer;
            lock (gate)
            {
                what = Calm || random.NextDouble() >= trouble ? 0 : random.Next(1, 8);
                delay = Calm ? 0 : random.Next(3);
            }

            if (what == 1)
            {
                throw new HttpRequestException(HttpRequestError.ConnectionError);
            }

            lock (gate)
            {
                answer = Take(request, what);
            }

            // The answer takes its time on the way back, or never comes.
            if (delay > 0 || what == 2)
            {
                await Task.Delay(what == 2 ? Timeout.Infinite : delay * 30, stop).ConfigureAwait(false);
            }

            return what == 3 ? throw new HttpRequestException(HttpRequestError.ResponseEnded) : answer;
        }

        private HttpResponseMessage Take(SentRequest request, int what)
        {
            string[] path = request.Path.Split('/', '?');
            string top = path[5];
            string bucket = shared ? "both" : request.Method;
            string key = $"{bucket} {top}";
            TimeSpan now = Now();
            (TimeSpan Start, int Used) state = used.GetValueOrDefault(key, (now, 0));
            if (now >= state.Start + window)
            {
                state = (now, 0);
            }

            state.Used++;
            used[key] = state;
            if (state.Used > limit)
            {
                Broken.Add($"{key}: {state.Used} of {limit} at {now}");
            }

            (string, string)[] headers = ScriptedHandler.Bucket(bucket, limit, Math.Max(0, limit - state.Used), (state.Start + window - now).TotalSeconds);
            switch (what)
            {
                case 4:
                    HttpResponseMessage limited = ScriptedHandler.Limited(random.NextDouble() * 3, random.Next(2) == 0 ? "user" : "shared");
                    return limited;
                case 5:
                    return ScriptedHandler.Empty(500, headers);
                case 6:
                    // No word on limits at all.
                    Note(request);
                    return ScriptedHandler.Json(200, "{}");
                default:
                    Note(request);
                    return ScriptedHandler.Json(200, "{}", headers);
            }
        }

        private void Note(SentRequest request)
        {
            int at = request.Text.IndexOf("\"r", StringComparison.Ordinal) + 1;
            Done.Add(at > 0 ? request.Text[at..(request.Text.IndexOf('.', at) + 1)] : "");
        }
    }
}
