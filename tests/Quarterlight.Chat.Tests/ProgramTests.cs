using System.Net;
using System.Net.Sockets;
using Quarterlight.CrewBot;

namespace Quarterlight.Chat.Tests;

/// <summary>The command line itself: usage, exit codes, other planners, folders.</summary>
public sealed class ProgramTests(SharedPlanner planner)
{
    [Theory]
    [InlineData("ask")]
    [InlineData("ask", "hello", "--units", "furlongs")]
    [InlineData("ask", "hello", "--server", "not an address")]
    [InlineData("ask", "hello", "--server", "ftp://127.0.0.1")]
    [InlineData("sing")]
    [InlineData("ask", "one", "two")]
    public async Task Run_WrongUsage_ExitsTwoAndSaysHow(params string[] args)
    {
        BotRun run = await planner.RunAsync(args);

        Assert.Equal(CrewBotProgram.WrongUsage, run.Exit);
        Assert.Contains("crewbot --help", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_ServerThatIsNotThere_ExitsThreeAndSaysSo()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        int port = ((IPEndPoint)taken.LocalEndpoint).Port;
        taken.Stop();

        BotRun run = await planner.AskAsync("where do the mics go?", "--server", $"http://127.0.0.1:{port}");

        Assert.Equal(CrewBotProgram.PlannerUnreachable, run.Exit);
        Assert.StartsWith($"The planner at http://127.0.0.1:{port} cannot be reached.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_ServerByAddress_AnswersLikeTheEmbeddedOne()
    {
        BotRun near = await planner.AskAsync("list scenes");
        BotRun far = await planner.AskAsync("list scenes", "--server", planner.Address, "--key", "anything");

        Assert.Equal(0, far.Exit);
        Assert.Equal(near.Output, far.Output);
    }

    [Fact]
    public async Task Ask_PlannerThatDoesNotStart_ExitsThreeAndNamesTheFolder()
    {
        var error = new StringWriter();
        var surroundings = new CrewBotSurroundings
        {
            Input = TextReader.Null,
            Output = TextWriter.Null,
            Error = error,
            StartEmbedded = (_, _) => throw new IOException("disk on fire"),
            DefaultDataFolder = "some-folder",
        };

        int exit = await CrewBotProgram.RunAsync(["ask", "hello"], surroundings, TestContext.Current.CancellationToken);

        Assert.Equal(CrewBotProgram.PlannerUnreachable, exit);
        Assert.Contains("some-folder", error.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("disk on fire", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_PictureFolderThatCannotBeMade_AnswersWithoutThePicture()
    {
        string file = Path.GetTempFileName();
        try
        {
            BotRun run = await planner.RunAsync(["demo", "--pictures", Path.Combine(file, "inside-a-file")]);

            Assert.Equal(0, run.Exit);
            Assert.Contains("Picture: it could not be written", run.Output, StringComparison.Ordinal);
            Assert.Contains("In words: ", run.Output, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
