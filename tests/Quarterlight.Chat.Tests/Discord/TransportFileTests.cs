using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.CrewBot.Discord;
using Quarterlight.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>Files that come with commands.</summary>
public sealed class TransportFileTests
{
    private static readonly DiscordAttachment Wav = new(5, "take.wav", 1000, "https://cdn.discordapp.com/attachments/1/2/take.wav");

    [Fact]
    public async Task Option_File_IsHandedToTheDeskAndReadThrough()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Platform.Open = a => a == Wav ? new MemoryStream(new byte[1000]) : throw new InvalidOperationException();
        long read = 0;
        bench.Desk.Runs = async (call, c) =>
        {
            await using Stream stream = await call.File!.OpenAsync(c);
            var buffer = new byte[300];
            for (int n; (n = await stream.ReadAsync(buffer, c)) > 0;)
            {
                read += n;
            }

            return new CrewOutput(new CrewAnswer { Headline = "Use it." }, null);
        };

        OutgoingMessage shown = await bench.AnswerToAsync(Clip(bench, Wav));

        Assert.Equal(1000, read);
        Assert.True(shown.Private);
        CrewAttachment given = Assert.Single(bench.Desk.Ran).Call.File!;
        Assert.Equal(("take.wav", 1000), (given.FileName, given.ByteCount));
    }

    [Fact]
    public async Task Option_File_ProgressSaysHowFarItIsRead()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Platform.Open = _ => new MemoryStream(new byte[1000]);
        var end = new TaskCompletionSource();
        bench.Desk.Runs = async (call, c) =>
        {
            await using Stream stream = await call.File!.OpenAsync(c);
            await stream.ReadExactlyAsync(new byte[400], c);
            await end.Task.WaitAsync(c);
            return new CrewOutput(new CrewAnswer { Headline = "Use it." }, null);
        };
        bench.Receive(Clip(bench, Wav));
        await TransportBench.UntilAsync(() => !bench.Desk.Ran.IsEmpty, "the desk");

        await bench.MoveUntilAsync(() => bench.Platform.Calls.Any(c => c.What == Sent.Edit), TimeSpan.FromMilliseconds(50), "the word on progress");
        end.SetResult();
        await bench.EndedAsync();

        Assert.Equal("Reading the file… 40 %", bench.Platform.Calls.First(c => c.What == Sent.Edit).Message!.Content);
    }

    [Theory]
    [InlineData(CrewAttachment.LargestBytes + 1, "larger than 200 MiB")]
    [InlineData(0, "is empty")]
    public async Task Option_FileOfTheWrongSize_IsRefusedBeforeAnythingIsFetched(long bytes, string says)
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        OutgoingMessage shown = await bench.AnswerToAsync(Clip(bench, Wav with { ByteCount = bytes }));

        Assert.Contains(says, shown.Content, StringComparison.Ordinal);
        Assert.True(shown.Private);
        Assert.Empty(bench.Desk.Ran);
    }

    [Theory]
    [InlineData(DiscordFault.NotFound)]
    [InlineData(DiscordFault.Refused)]
    [InlineData(DiscordFault.TooLarge)]
    [InlineData(DiscordFault.Unavailable)]
    public async Task Option_FileThatCannotBeFetched_FailsForTheDeskAsFilesDo(DiscordFault fault)
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Platform.Open = _ => throw new DiscordException(fault, "no");
        Exception? seen = null;
        bench.Desk.Runs = async (call, c) =>
        {
            seen = await Record.ExceptionAsync(() => call.File!.OpenAsync(c));
            return new CrewOutput(new CrewAnswer { Headline = "It could not be read." }, null);
        };

        await bench.AnswerToAsync(Clip(bench, Wav));

        Assert.IsType<IOException>(seen);
    }

    [Fact]
    public async Task Option_FileThatBreaksOff_FailsForTheDeskAsFilesDo()
    {
        await using TransportBench bench = await TransportBench.StartAsync();
        bench.Platform.Open = _ => new BreakingStream();
        Exception? seen = null;
        bench.Desk.Runs = async (call, c) =>
        {
            await using Stream stream = await call.File!.OpenAsync(c);
            seen = await Record.ExceptionAsync(async () => await stream.ReadExactlyAsync(new byte[10], c));
            return new CrewOutput(new CrewAnswer { Headline = "It could not be read." }, null);
        };

        await bench.AnswerToAsync(Clip(bench, Wav));

        Assert.IsType<IOException>(seen);
    }

    [Fact]
    public async Task Menu_OneFile_IsJudged()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        await bench.AnswerToAsync(Menu(bench, Wav));

        (_, CrewCommandCall call) = Assert.Single(bench.Desk.Ran);
        Assert.Equal(("clip", "take.wav"), (call.Name, call.File!.FileName));
    }

    [Fact]
    public async Task Menu_NoFile_SaysWhatToDo()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        OutgoingMessage shown = await bench.AnswerToAsync(Menu(bench));

        Assert.Contains("has no file", shown.Content, StringComparison.Ordinal);
        Assert.True(shown.Private);
        Assert.Empty(bench.Desk.Ran);
    }

    [Fact]
    public async Task Menu_SeveralFiles_SaysOneAtATime()
    {
        await using TransportBench bench = await TransportBench.StartAsync();

        OutgoingMessage shown = await bench.AnswerToAsync(Menu(bench, Wav, Wav with { Id = 6 }));

        Assert.Contains("One clip at a time", shown.Content, StringComparison.Ordinal);
        Assert.True(shown.Private);
    }

    [Fact]
    public async Task Files_TakingAllTheirPlaces_DoNotHoldUpQuestions()
    {
        await using TransportBench bench = await TransportBench.StartAsync(new DiscordTransportOptions { FilesAtOnce = 1, FilesWaiting = 1 });
        var end = new TaskCompletionSource();
        bench.Desk.Runs = async (call, c) =>
        {
            if (call.File is not null)
            {
                await end.Task.WaitAsync(c);
            }

            return new CrewOutput(new CrewAnswer { Headline = "Done." }, null);
        };
        bench.Receive(Clip(bench, Wav));
        await TransportBench.UntilAsync(() => !bench.Desk.Ran.IsEmpty, "the first file");
        bench.Receive(Clip(bench, Wav));

        OutgoingMessage quick = await bench.AnswerToAsync(bench.Command("plan"));
        end.SetResult();
        await bench.EndedAsync(3);

        Assert.Equal("**Done.**", quick.Content);
    }

    private static Interaction Clip(TransportBench bench, DiscordAttachment file) => bench.Any(InteractionKind.Command) with
    {
        Command = new CommandData
        {
            Name = "clip",
            Kind = CommandKind.Slash,
            Options = [new CommandOptionValue("file", file.Id.ToString(System.Globalization.CultureInfo.InvariantCulture))],
            Attachments = new Dictionary<ulong, DiscordAttachment> { [file.Id] = file },
        },
    };

    private static Interaction Menu(TransportBench bench, params DiscordAttachment[] files) => bench.Any(InteractionKind.Command) with
    {
        Command = new CommandData { Name = "Judge this clip", Kind = CommandKind.Message, TargetAttachments = files },
    };

    private sealed class BreakingStream : MemoryStream
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => throw new DiscordException(DiscordFault.Unavailable, "gone");
    }
}
