using Grpc.Core.Interceptors;
using Microsoft.Extensions.Logging;
using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Keeping;
using Quarterlight.Discord;
using Quarterlight.Telemetry;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Puts <c>crewbot serve</c> together and runs it.</summary>
internal static class ServeProgram
{
    // One team's conversations and snapshots in this process; the planner keeps them for longer.
    private const int ConversationsOfATeam = 200;

    /// <summary>Serves until told to stop.</summary>
    /// <returns>Exit code.</returns>
    public static async Task<int> RunAsync(ServeSettings settings, CrewBotSurroundings surroundings, CancellationToken cancellation)
    {
        if (!ServeSecrets.TryRead(settings.Way, surroundings.Environment, out ServeSecrets? secrets, out string problem))
        {
            return await EndAsync(problem, CrewBotProgram.WrongUsage).ConfigureAwait(false);
        }

        BotTelemetry telemetry;
        try
        {
            telemetry = BotTelemetry.Start(secrets, surroundings);
        }
        catch (TelemetryOptionsException e)
        {
            return await EndAsync(e.Message, CrewBotProgram.WrongUsage).ConfigureAwait(false);
        }

        await using var disposeTelemetry = telemetry.ConfigureAwait(false);
        ILoggerFactory logs = telemetry.Logs;
        ILogger log = logs.CreateLogger("Quarterlight.CrewBot");
        foreach (string variable in secrets.ReadableByOthers)
        {
            CrewBotLog.SecretReadable(log, variable);
        }

        IPlanner planner;
        PendingLedger ledger;
        try
        {
            ledger = new PendingLedger(Path.Combine(settings.DataFolder, "pending"), surroundings.Time);
            planner = settings.Server is { } server ? new RemotePlanner(server, secrets.DelegateKey) : await surroundings.StartEmbedded(settings.DataFolder, cancellation).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            return await EndAsync($"The folder {settings.DataFolder} cannot be used: check that it can be written and that no other planner or bot uses it.", CrewBotProgram.PlannerUnreachable).ConfigureAwait(false);
        }

        await using (planner.ConfigureAwait(false))
        {
            try
            {
                await ServeAsync(settings, secrets, planner, ledger, surroundings, logs, log, cancellation).ConfigureAwait(false);
                return CrewBotProgram.Answered;
            }
            catch (DiscordException e) when (e.Fault == DiscordFault.BadToken)
            {
                return await EndAsync($"The platform refused the bot's token: put the one from the Bot page of your application into {ServeSecrets.TokenVariable}_FILE or {ServeSecrets.TokenVariable}, and start again.", CrewBotProgram.PlatformRefused).ConfigureAwait(false);
            }
            catch (DiscordException e)
            {
                return await EndAsync($"The platform refused to serve this bot ({e.Fault}{(e.Code is { } code ? $", {code}" : "")}): check the application's settings there, and start again.", CrewBotProgram.PlatformRefused).ConfigureAwait(false);
            }
            catch (IOException)
            {
                return await EndAsync($"Port {settings.HealthPort}{(settings.Way == DiscordWay.Signed ? $" or {settings.Listen.Port}" : "")} is in use: name another with --health-port{(settings.Way == DiscordWay.Signed ? " or --listen" : "")}.", CrewBotProgram.WrongUsage).ConfigureAwait(false);
            }
        }

        async Task<int> EndAsync(string sentence, int code)
        {
            await surroundings.Error.WriteLineAsync(sentence).ConfigureAwait(false);
            return code;
        }
    }

    private static async Task ServeAsync(
        ServeSettings settings, ServeSecrets secrets, IPlanner planner, PendingLedger ledger, CrewBotSurroundings surroundings, ILoggerFactory logs, ILogger log, CancellationToken cancellation)
    {
        var connection = new DiscordConnection(settings, secrets, Environment.ProcessId, surroundings.Time, logs);
        await using var disposeConnection = connection.ConfigureAwait(false);
        using var meters = new CrewBotMeters();
        var teams = new RecentTeams(guild => TeamOf($"{settings.Delegate}-{guild}", planner, surroundings.Time));
        using var transport = new DiscordTransport(new DiscordTransportParts
        {
            Source = connection.Source,
            Responder = connection.Responder,
            Teams = teams,
            Commands = CrewCommands.All,
            Ledger = ledger,
            Users = new UserHash(secrets.DelegateKey ?? secrets.Token),
            Meters = meters,
            Log = log,
            Time = surroundings.Time,
        }, settings.Transport);
        BotWebHost web = await BotWebHost.StartAsync(settings, connection.Source, new PlannerWatch(planner.Invoker, surroundings.Time), connection.Handle, logs, cancellation).ConfigureAwait(false);
        await using (web.ConfigureAwait(false))
        {
            CrewBotLog.Serving(log, planner.Address);
            await RunBothAsync(transport, new CommandRegistration(connection.Registry, CommandMapping.Definitions(CrewCommands.All), settings.Guild, surroundings.Time, log), cancellation).ConfigureAwait(false);
        }
    }

    // Ends when the transport does, and ends it when registering shows that serving is of no use.
    private static async Task RunBothAsync(DiscordTransport transport, CommandRegistration registration, CancellationToken cancellation)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Task registering = registration.RunAsync(stop.Token);
        Task serving = transport.RunAsync(stop.Token);
        if (await Task.WhenAny(serving, registering).ConfigureAwait(false) == serving || !registering.IsFaulted)
        {
            await serving.ConfigureAwait(false);
            return;
        }

        await stop.CancelAsync().ConfigureAwait(false);
        await serving.ConfigureAwait(false);
        await registering.ConfigureAwait(false);
    }

    private static CrewTeam TeamOf(string id, IPlanner planner, TimeProvider time)
    {
        var invoker = planner.ForTeam(id).Intercept(new PlannerTime.Watch());
        // Nobody in a channel can do anything with the planner's address; it is in the log.
        var options = new CrewDeskOptions { Clock = time };
        var conversations = new PlannerConversations(invoker, options, ConversationsOfATeam);
        return new CrewTeam(id, new TeamDesk(invoker, options, conversations), conversations);
    }
}
