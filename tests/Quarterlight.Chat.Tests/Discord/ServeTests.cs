using Quarterlight.CrewBot;
using Quarterlight.CrewBot.Discord;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The command line of <c>crewbot serve</c> and the secrets it takes.</summary>
public sealed class ServeTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("quarterlight-serve-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("serve")]
    [InlineData("serve", "discord")]
    [InlineData("serve", "discord", "--server", "http://127.0.0.1:1", "--embedded")]
    [InlineData("serve", "discord", "--server", "ftp://127.0.0.1:1")]
    [InlineData("serve", "discord", "--embedded", "--guild", "my server")]
    [InlineData("serve", "discord", "--embedded", "--health-port", "70000")]
    [InlineData("serve", "discord", "--embedded", "--user-rate", "0")]
    [InlineData("serve", "discord", "--embedded", "--delegate", "Crew!")]
    [InlineData("serve", "discord", "--embedded", "--token", "abc")]
    [InlineData("serve", "discord", "--embedded", "--listen", "0.0.0.0:5191")]
    [InlineData("serve", "discord-http", "--embedded", "--listen", "everywhere")]
    public async Task Run_WrongUsage_ExitsTwoAndSaysHow(params string[] args)
    {
        (int exit, string error) = await RunAsync(args, []);

        Assert.Equal(CrewBotProgram.WrongUsage, exit);
        Assert.Contains("crewbot --help", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_NoToken_ExitsTwoAndSaysWhatToSet()
    {
        (int exit, string error) = await RunAsync(["serve", "discord", "--server", "http://127.0.0.1:1"], []);

        Assert.Equal(CrewBotProgram.WrongUsage, exit);
        Assert.StartsWith("Set DISCORD_TOKEN_FILE to a file with the bot's token", error, StringComparison.Ordinal);
        Assert.Single(error.Trim().Split('\n'));
    }

    [Fact]
    public async Task Run_SignedWithoutPublicKey_ExitsTwoAndSaysWhatToSet()
    {
        (int exit, string error) = await RunAsync(["serve", "discord-http", "--server", "http://127.0.0.1:1"], new() { ["DISCORD_TOKEN"] = "secret", ["DISCORD_PUBLIC_KEY"] = "not hex" });

        Assert.Equal(CrewBotProgram.WrongUsage, exit);
        Assert.StartsWith("Set DISCORD_PUBLIC_KEY", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Run_DataFolderThatCannotBeMade_ExitsThreeAndNamesIt()
    {
        string file = Path.Combine(folder, "a-file");
        await File.WriteAllTextAsync(file, "x", TestContext.Current.CancellationToken);

        (int exit, string error) = await RunAsync(["serve", "discord", "--server", "http://127.0.0.1:1", "--data", Path.Combine(file, "inside")], new() { ["DISCORD_TOKEN"] = "secret" });

        Assert.Equal(CrewBotProgram.PlannerUnreachable, exit);
        Assert.Contains("cannot be used", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Secrets_FromAFile_AreTakenTrimmedAndWarnedOfWhenOthersCanRead()
    {
        string path = Path.Combine(folder, "token");
        File.WriteAllText(path, " the-token\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.OtherRead);
        }

        Assert.True(ServeSecrets.TryRead(DiscordWay.Gateway, Variables(new() { ["DISCORD_TOKEN_FILE"] = path }), out ServeSecrets? secrets, out _));
        Assert.Equal("the-token", secrets.Token);
        Assert.DoesNotContain("the-token", secrets.ToString(), StringComparison.Ordinal);
        Assert.Equal(OperatingSystem.IsWindows() ? [] : ["DISCORD_TOKEN_FILE"], secrets.ReadableByOthers);
    }

    [Theory]
    [InlineData("DISCORD_TOKEN_FILE", "no-such-file", "cannot be read")]
    [InlineData("QUARTERLIGHT_DELEGATE_KEY_FILE", "no-such-file", "cannot be read")]
    [InlineData("DISCORD_FILE_HOSTS", "https://files.example", "this machine only")]
    [InlineData("DISCORD_API_URL", "file:///etc", "http address")]
    public void Secrets_Wrong_SayWhatToMendWithoutTheValue(string variable, string value, string says)
    {
        var environment = new Dictionary<string, string> { [variable] = value };
        if (variable != "DISCORD_TOKEN_FILE")
        {
            environment["DISCORD_TOKEN"] = "secret";
        }

        Assert.False(ServeSecrets.TryRead(DiscordWay.Gateway, Variables(environment), out _, out string problem));
        Assert.Contains(variable, problem, StringComparison.Ordinal);
        Assert.Contains(says, problem, StringComparison.Ordinal);
        Assert.DoesNotContain(value, problem, StringComparison.Ordinal);
    }

    private static Func<string, string?> Variables(Dictionary<string, string> environment) => name => environment.GetValueOrDefault(name);

    private async Task<(int Exit, string Error)> RunAsync(string[] args, Dictionary<string, string> environment)
    {
        var error = new StringWriter();
        int exit = await CrewBotProgram.RunAsync(args, new CrewBotSurroundings
        {
            Input = TextReader.Null,
            Output = TextWriter.Null,
            Error = error,
            Environment = Variables(environment),
            StartEmbedded = (_, _) => throw new InvalidOperationException("not in this test"),
            DefaultDataFolder = folder,
        }, TestContext.Current.CancellationToken);
        return (exit, error.ToString());
    }
}
