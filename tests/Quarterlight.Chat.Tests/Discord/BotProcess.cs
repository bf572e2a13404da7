using System.Diagnostics;
using System.Globalization;
using System.Text;
using Quarterlight.Chat.Emulator;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>The bot as a process of its own, as an operator runs it.</summary>
internal sealed class BotProcess : IAsyncDisposable
{
    private readonly Process process;
    private readonly StringBuilder error = new();

    private BotProcess(Process process) => this.process = process;

    /// <summary>What it wrote for people so far.</summary>
    public string Error
    {
        get
        {
            lock (error)
            {
                return error.ToString();
            }
        }
    }

    /// <summary>Starts it on an emulated platform.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="folder">Folder for what outlives a restart.</param>
    /// <param name="token">Another token than the right one; null for the right one.</param>
    /// <param name="arguments">What stands after "serve".</param>
    public static BotProcess Start(EmulatedPlatform platform, string folder, string? token, params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet") { RedirectStandardError = true, RedirectStandardInput = true, RedirectStandardOutput = true };
        foreach (string argument in (string[])[Path.Combine(AppContext.BaseDirectory, "crewbot.dll"), "serve", .. arguments, "--data", folder, "--health-port", "0"])
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["DISCORD_TOKEN"] = token ?? platform.Token;
        start.Environment["DISCORD_PUBLIC_KEY"] = platform.PublicKey;
        start.Environment["DISCORD_API_URL"] = platform.ApiBase.ToString();
        start.Environment["DISCORD_FILE_HOSTS"] = platform.Address.GetLeftPart(UriPartial.Authority);
        var bot = new BotProcess(Process.Start(start)!);
        bot.process.ErrorDataReceived += (_, line) => bot.Hear(line.Data);
        bot.process.OutputDataReceived += (_, line) => bot.Hear(line.Data);
        bot.process.BeginErrorReadLine();
        bot.process.BeginOutputReadLine();
        return bot;
    }

    /// <summary>Ends it without a word, as a machine that loses its power.</summary>
    public async Task KillAsync()
    {
        process.Kill();
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Asks it to end, as an operator does.</summary>
    public async Task TerminateAsync()
    {
        using Process kill = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    /// <summary>Waits until it has ended, and gives its exit code.</summary>
    public async Task<int> ExitAsync()
    {
        await process.WaitForExitAsync(TestContext.Current.CancellationToken).WaitAsync(WholeTalk.Patience, TestContext.Current.CancellationToken);
        return process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
        }

        process.Dispose();
    }

    private void Hear(string? line)
    {
        lock (error)
        {
            error.AppendLine(line);
        }
    }
}
