using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Notes of answers put off, and what a new process does with them.</summary>
public sealed class PendingLedgerTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-ledger-").FullName;
    private readonly ManualTime time = new();
    private readonly FakePlatform platform = new();
    private readonly ListLog log = new();

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Take_ThenRecover_GivesBackWhatItTakesToAnswer()
    {
        PendingLedger ledger = Ledger();
        ledger.Take(Ticket(1), isPrivate: true);
        ledger.Take(Ticket(2), isPrivate: false);
        ledger.Sending(Ticket(2));
        ledger.Take(Ticket(3), isPrivate: false);
        ledger.Done(Ticket(3));

        IReadOnlyList<PendingAnswer> open = Ledger().Recover();

        Assert.Equal([new PendingAnswer(Ticket(1), true, false), new PendingAnswer(Ticket(2), false, true)], open.OrderBy(o => o.Ticket.InteractionId));
    }

    [Fact]
    public void Take_File_IsForItsOwnerAlone()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Ledger().Take(Ticket(1), isPrivate: false);

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Assert.Single(Directory.GetFiles(folder))));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Made()));

        string Made()
        {
            string inner = Path.Combine(folder, "inner");
            _ = new PendingLedger(inner, time);
            return inner;
        }
    }

    [Fact]
    public void Recover_OlderThanItsToken_IsClearedAway()
    {
        Ledger().Take(Ticket(1), isPrivate: false);
        time.Advance(DiscordLimits.TokenLife);

        Assert.Empty(Ledger().Recover());
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Theory]
    [InlineData("7.pending", "")]
    [InlineData("7.pending", "{\"ApplicationId\":1,\"Inter")]
    [InlineData("7.pending", "null")]
    [InlineData("7.pending", "[]")]
    [InlineData("7.pending.part", "{}")]
    public void Recover_HalfWritten_IsClearedAway(string name, string content)
    {
        File.WriteAllText(Path.Combine(folder, name), content);

        Assert.Empty(Ledger().Recover());
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task Recovery_PutOffOnly_IsToldInPlace()
    {
        await platform.DeferAsync(Ticket(1), false, TestContext.Current.CancellationToken);
        Ledger().Take(Ticket(1), isPrivate: false);

        await RecoverAsync();

        Assert.Equal("I was restarted in the middle of this: ask again.", Assert.Single(platform.Shown(1)).Content);
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task Recovery_AnswerWasOnItsWay_LeavesItAndSaysSoBeside()
    {
        await platform.ReplyAsync(Ticket(1), new OutgoingMessage { Content = "the answer" }, TestContext.Current.CancellationToken);
        PendingLedger ledger = Ledger();
        ledger.Take(Ticket(1), isPrivate: false);
        ledger.Sending(Ticket(1));

        await RecoverAsync();

        Assert.Equal(2, platform.Shown(1).Count);
        Assert.Equal("the answer", platform.Shown(1)[0].Content);
        Assert.True(platform.Shown(1)[1].Private);
    }

    [Fact]
    public async Task Recovery_NeverPutOff_SaysNothing()
    {
        Ledger().Take(Ticket(1), isPrivate: false);

        await RecoverAsync();

        Assert.Empty(platform.Shown(1));
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task Recovery_PlatformAway_KeepsTheNoteForTheNextStart()
    {
        await platform.DeferAsync(Ticket(1), false, TestContext.Current.CancellationToken);
        Ledger().Take(Ticket(1), isPrivate: false);
        platform.Fail(Sent.Edit, DiscordFault.Unavailable);

        await RecoverAsync();
        Assert.Single(Directory.GetFiles(folder));
        await RecoverAsync();

        Assert.Contains("restarted in the middle", Assert.Single(platform.Shown(1)).Content, StringComparison.Ordinal);
        Assert.DoesNotContain(log.Lines, l => l.Contains(TransportBench.TokenText, StringComparison.Ordinal));
    }

    private static InteractionTicket Ticket(ulong id) => new(7, id, TransportBench.TokenText);

    private PendingLedger Ledger() => new(folder, time);

    private async Task RecoverAsync()
    {
        using var meters = new CrewBotMeters();
        await new LedgerRecovery(Ledger(), platform, meters, log).RunAsync(TestContext.Current.CancellationToken);
    }
}
