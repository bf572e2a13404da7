using Quarterlight.Discord.Gateway;

namespace Quarterlight.Discord.Tests.OverGateway;

/// <summary>The count of identifies in a file.</summary>
public sealed class FileIdentifyLedgerTests : IDisposable
{
    private static readonly DateTimeOffset Noon = new(2031, 5, 4, 12, 0, 0, TimeSpan.Zero);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("quarterlight-ledger-");

    private string Path => System.IO.Path.Combine(folder.FullName, "inner", "identifies.txt");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task Read_NoFile_IsEmpty() => Assert.Empty(await new FileIdentifyLedger(Path).ReadAsync(TestContext.Current.CancellationToken));

    [Fact]
    public async Task Write_ThenReadByAnother_IsTheSame()
    {
        DateTimeOffset[] times = [Noon, Noon.AddSeconds(5), Noon.AddHours(7)];
        await new FileIdentifyLedger(Path).WriteAsync([Noon], TestContext.Current.CancellationToken);
        await new FileIdentifyLedger(Path).WriteAsync(times, TestContext.Current.CancellationToken);
        Assert.Equal(times, await new FileIdentifyLedger(Path).ReadAsync(TestContext.Current.CancellationToken));
        Assert.Equal(["identifies.txt"], new DirectoryInfo(System.IO.Path.GetDirectoryName(Path)!).GetFiles().Select(f => f.Name));
    }

    [Fact]
    public async Task Write_BrokenOff_LeavesTheOldOneWhole()
    {
        var ledger = new FileIdentifyLedger(Path);
        await ledger.WriteAsync([Noon], TestContext.Current.CancellationToken);

        // What a crash in the middle of writing leaves: half a file aside.
        await File.WriteAllTextAsync(Path + ".new", "19", TestContext.Current.CancellationToken);
        Assert.Equal([Noon], await ledger.ReadAsync(TestContext.Current.CancellationToken));
        await ledger.WriteAsync([Noon, Noon.AddSeconds(9)], TestContext.Current.CancellationToken);
        Assert.Equal(2, (await ledger.ReadAsync(TestContext.Current.CancellationToken)).Count);
    }

    [Fact]
    public async Task Write_CannotBePutAside_LeavesTheOldOneWhole()
    {
        var ledger = new FileIdentifyLedger(Path);
        await ledger.WriteAsync([Noon], TestContext.Current.CancellationToken);
        Directory.CreateDirectory(Path + ".new");
        await Assert.ThrowsAnyAsync<Exception>(() => ledger.WriteAsync([Noon, Noon], TestContext.Current.CancellationToken));
        Assert.Equal([Noon], await ledger.ReadAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("nonsense\n")]
    [InlineData("-5\n")]
    [InlineData("99999999999999\n")]
    public async Task Read_SomethingElse_IsRefused(string text)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(Path)!);
        await File.WriteAllTextAsync(Path, text, TestContext.Current.CancellationToken);
        await Assert.ThrowsAsync<InvalidDataException>(() => new FileIdentifyLedger(Path).ReadAsync(TestContext.Current.CancellationToken));
    }
}
