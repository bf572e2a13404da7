using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;

namespace Quarterlight.Chat.Emulator.Control;

/// <summary>
/// The emulator as a program, for tests that are not written in .NET. Arguments: --port, --token, --heartbeat-ms, --seed, --first-answer-ms. It prints one JSON
/// line that says where it listens; then it takes orders as JSON lines on standard input, or as POST /control, and answers each with a JSON line. It ends when
/// standard input ends.
/// </summary>
internal static class ControlProgram
{
    /// <summary>Runs until standard input ends.</summary>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments)
    {
        PlatformOptions options = Read(arguments);
        EmulatedPlatform platform = await EmulatedPlatform.StartAsync(options).ConfigureAwait(false);
        await using (platform.ConfigureAwait(false))
        {
            var desk = new ControlDesk(platform);
            platform.TakeControl(http => OverHttpAsync(http, desk));
            await Console.Out.WriteLineAsync(desk.Info().ToJsonString()).ConfigureAwait(false);
            while (await Console.In.ReadLineAsync().ConfigureAwait(false) is { } line)
            {
                if (line.Trim().Length > 0)
                {
                    await Console.Out.WriteLineAsync((await desk.DoAsync(line, CancellationToken.None).ConfigureAwait(false)).ToJsonString()).ConfigureAwait(false);
                }
            }
        }

        return 0;
    }

    private static async Task<bool> OverHttpAsync(HttpContext http, ControlDesk desk)
    {
        if (http.Request.Path != "/control" || http.Request.Method != "POST")
        {
            return false;
        }

        using var reader = new StreamReader(http.Request.Body);
        JsonObject answer = await desk.DoAsync(await reader.ReadToEndAsync(http.RequestAborted).ConfigureAwait(false), http.RequestAborted).ConfigureAwait(false);
        http.Response.ContentType = "application/json";
        await http.Response.WriteAsync(answer.ToJsonString(), http.RequestAborted).ConfigureAwait(false);
        return true;
    }

    private static PlatformOptions Read(IReadOnlyList<string> arguments)
    {
        var options = new PlatformOptions();
        for (int i = 0; i + 1 < arguments.Count; i += 2)
        {
            string value = arguments[i + 1];
            options = arguments[i] switch
            {
                "--port" => options with { Port = Whole(value) },
                "--token" => options with { Token = value },
                "--heartbeat-ms" => options with { HeartbeatInterval = TimeSpan.FromMilliseconds(Whole(value)) },
                "--seed" => options with { Seed = Whole(value) },
                "--first-answer-ms" => options with { FirstAnswer = TimeSpan.FromMilliseconds(Whole(value)) },
                string other => throw new ArgumentException($"Unknown argument {other}.", nameof(arguments)),
            };
        }

        return options;
    }

    private static int Whole(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
