using System.Collections.Concurrent;
using System.Globalization;
using Grpc.Core;
using Quarterlight.Store;
using Quarterlight.V1;

namespace Quarterlight.Wire.Tests;

/// <summary>
/// The planner is killed (SIGKILL) again and again while it writes. What it acknowledged must be there, whole, at the
/// revision acknowledged. A kill leaves the system's page cache alone, so this says nothing about a power cut.
/// </summary>
public sealed class KillTests
{
    private const int Rounds = 16;
    private const int Writers = 6;
    private const int CabinsPerWriter = 5;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Kill_WhileWriting_EveryAcknowledgedWriteIsThereWhole()
    {
        using var folder = new TempFolder();
        var moments = new Random(20311117);
        var record = new Record();
        int total = 0;
        for (int round = 0; round < Rounds; round++)
        {
            await using PlannerProcess planner = await PlannerProcess.StartAsync(folder.Path, Stop);
            var cabins = new CabinService.CabinServiceClient(planner.Channel);
            var started = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            int count = 0;
            Task[] writers = [.. Enumerable.Range(0, Writers).Select(w => WriteUntilGoneAsync(cabins, w, record, () =>
            {
                Interlocked.Increment(ref count);
                started.TrySetResult();
            }))];
            await started.Task.WaitAsync(TimeSpan.FromSeconds(60), Stop);
            await Task.Delay(moments.Next(1, 300), Stop);
            planner.Kill();
            await Task.WhenAll(writers);

            Assert.True(count > 0, $"round {round}: nothing was acknowledged before the kill");
            total += count;
            await VerifyAsync(folder.Path, record, round);
        }

        Assert.InRange(total, Rounds * Writers, int.MaxValue);
        TestContext.Current.SendDiagnosticMessage("{0} kills, {1} acknowledged writes, none lost", Rounds, total);
    }

    [Fact]
    public async Task Terminate_WhileRunning_EndsCleanlyWithTheLogFolded()
    {
        using var folder = new TempFolder();
        await using PlannerProcess planner = await PlannerProcess.StartAsync(folder.Path, Stop);
        await new CabinService.CabinServiceClient(planner.Channel).CreateCabinAsync(new CreateCabinRequest { CabinId = "a", Cabin = Samples.Cabin() }, cancellationToken: Stop);

        Assert.Equal(0, await planner.TerminateAsync(Stop));
        var log = new FileInfo(Path.Combine(folder.Path, "quarterlight-log.db"));
        Assert.True(!log.Exists || log.Length == 0, "the log still holds pages");
    }

    [Theory]
    [InlineData("--address", "0.0.0.0")]
    [InlineData("--address", "somewhere")]
    [InlineData("--grpc-port", "70000")]
    [InlineData("--Teams:crew", "no hash")]
    public async Task Start_UnsafeOrWrongOption_OneLineAndExitCodeOne(string option, string value)
    {
        using var folder = new TempFolder();
        (int code, string error) = await PlannerProcess.RunToEndAsync(Stop, "--data", folder.Path, "--grpc-port", "0", "--http-port", "0", option, value);
        Assert.Equal(1, code);
        Assert.Single(error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
    }

    // Each writer owns its cars, so at most one write of each is under way when the planner dies.
    private static async Task WriteUntilGoneAsync(CabinService.CabinServiceClient cabins, int writer, Record record, Action onAcknowledged)
    {
        try
        {
            for (int i = 0; ; i++)
            {
                string id = $"w{writer}-{i % CabinsPerWriter}";
                await WriteNextAsync(cabins, id, record);
                onAcknowledged();
            }
        }
        catch (RpcException gone) when (gone.GetRpcStatus() is null)
        {
            // The planner is dead; what it acknowledged is on record. Its own refusals carry details and would fail the test.
        }
    }

    private static async Task WriteNextAsync(CabinService.CabinServiceClient cabins, string id, Record record)
    {
        long now = 0;
        if (record.Sent.TryGetValue(id, out long sent))
        {
            try
            {
                now = (await cabins.GetCabinAsync(new GetCabinRequest { Name = $"cabins/{id}" }, cancellationToken: Stop)).Cabin.Revision;
            }
            catch (RpcException none) when (none.StatusCode == StatusCode.NotFound)
            {
                now = 0; // sent just before the kill, never acknowledged
            }

            Assert.InRange(now, record.Acknowledged.GetValueOrDefault(id), sent);
        }

        V1.Cabin next = Named(id, now + 1);
        record.Sent[id] = now + 1;
        if (now == 0)
        {
            await cabins.CreateCabinAsync(new CreateCabinRequest { CabinId = id, Cabin = next }, cancellationToken: Stop);
            record.Acknowledged[id] = 1;
            return;
        }

        next.Name = $"cabins/{id}";
        next.Revision = now;
        record.Acknowledged[id] = (await cabins.UpdateCabinAsync(new UpdateCabinRequest { Cabin = next }, cancellationToken: Stop)).Cabin.Revision;
    }

    private static V1.Cabin Named(string id, long revision) => Samples.Cabin($"{id} revision {revision}");

    private static async Task VerifyAsync(string folder, Record record, int round)
    {
        await using LiteDocumentStore store = LiteDocumentStore.Open(folder, TimeProvider.System);
        foreach ((string id, long revision) in record.Acknowledged)
        {
            StoredDocument? document = await store.GetAsync(new DocumentKey("local", "cabins", id), Stop);
            Assert.True(document is not null, $"round {round}: {id} was acknowledged at revision {revision} and is gone");
            Assert.InRange(document.Revision, revision, record.Sent[id]);
            V1.Cabin cabin = V1.Cabin.Parser.ParseFrom(document.Payload.Span);
            Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{id} revision {document.Revision}"), cabin.DisplayName);
        }

        // Whole also means: the list holds what was sent and nothing else.
        DocumentPage page = await store.ListAsync("local", "cabins", 1000, null, Stop);
        Assert.InRange(page.Documents.Count, record.Acknowledged.Count, record.Sent.Count);
    }

    /// <summary>Revisions by id: what was sent last, and what was acknowledged last. A write sent and not acknowledged may count or not.</summary>
    private sealed class Record
    {
        public ConcurrentDictionary<string, long> Sent { get; } = new();

        public ConcurrentDictionary<string, long> Acknowledged { get; } = new();
    }
}
