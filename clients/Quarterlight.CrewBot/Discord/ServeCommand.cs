using System.CommandLine;

namespace Quarterlight.CrewBot.Discord;

/// <summary>The command <c>crewbot serve</c> with its two ways in.</summary>
internal static class ServeCommand
{
    /// <summary>Makes the command.</summary>
    public static Command Make(CrewBotSurroundings surroundings)
    {
        var serve = new Command("serve", "Answers the crews of a chat platform until it is stopped. Secrets come from the environment.");
        foreach ((DiscordWay way, string name, string description) in new[]
        {
            (DiscordWay.Gateway, "discord", "Discord, over a connection that this process opens: needs no address of its own."),
            (DiscordWay.Signed, "discord-http", "Discord, as signed requests that the platform sends to an address of yours."),
        })
        {
            var options = new ServeOptions();
            var command = new Command(name, description);
            options.AddTo(command, way);
            command.SetAction((parsed, c) => ServeProgram.RunAsync(options.Read(parsed, way, surroundings), surroundings, c));
            serve.Add(command);
        }

        return serve;
    }
}
