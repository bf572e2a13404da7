using System.CommandLine;
using System.Globalization;
using System.Net;

namespace Quarterlight.CrewBot.Discord;

/// <summary>The options of <c>crewbot serve</c>. There is none for a secret.</summary>
internal sealed class ServeOptions
{
    private readonly Option<string?> server = new("--server") { Description = "Address of the planner, such as http://127.0.0.1:5180." };
    private readonly Option<bool> embedded = new("--embedded") { Description = "Starts a planner in this process instead, to try things out." };
    private readonly Option<string?> data = new("--data") { Description = "Folder for what must outlive a restart; one for each process." };
    private readonly Option<string?> guild = new("--guild") { Description = "Id of the one server to register commands for, at once, to try things out; all servers when not given." };
    private readonly Option<string?> listen = new("--listen") { Description = "Address and port for signed requests, such as 0.0.0.0:5191; 127.0.0.1:5191 when not given." };
    private readonly Option<int> healthPort = new("--health-port") { Description = "Port of GET /healthz on the loopback address; 0 for none.", DefaultValueFactory = _ => ServeSettings.DefaultHealthPort };
    private readonly Option<string?> delegateName = new("--delegate") { Description = "Name the planner knows this bot as; teams are called by it.", DefaultValueFactory = _ => ServeSettings.DefaultDelegate };
    private readonly Option<double> userRate = new("--user-rate") { Description = "Questions a user may ask each minute.", DefaultValueFactory = _ => new DiscordTransportOptions().UserRate.PerMinute };
    private readonly Option<double> teamRate = new("--team-rate") { Description = "Questions a server's users may ask together each minute.", DefaultValueFactory = _ => new DiscordTransportOptions().TeamRate.PerMinute };

    public ServeOptions()
    {
        Check(server, text => Uri.TryCreate(text, UriKind.Absolute, out Uri? address) && address.Scheme is "http" or "https", "--server takes an address such as http://127.0.0.1:5180.");
        Check(guild, text => ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out _), "--guild takes the id of a server: digits alone.");
        Check(listen, text => IPEndPoint.TryParse(text, out IPEndPoint? point) && point.Port > 0, "--listen takes an address and a port, such as 0.0.0.0:5191.");
        Check(delegateName, text => text.Length is > 0 and <= 40 && char.IsAsciiLetterLower(text[0]) && text.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-'), "--delegate takes 1 to 40 of a-z, 0-9 and dashes, starting with a letter.");
        healthPort.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int>() is < 0 or > 65535)
            {
                result.AddError("--health-port takes a port, 0 to 65535.");
            }
        });
        foreach (Option<double> rate in new[] { userRate, teamRate })
        {
            rate.Validators.Add(result =>
            {
                if (!(result.GetValueOrDefault<double>() is > 0 and <= 1_000_000))
                {
                    result.AddError($"{rate.Name} takes a number above 0.");
                }
            });
        }
    }

    public void AddTo(Command command, DiscordWay way)
    {
        foreach (Option option in new Option[] { server, embedded, data, guild, healthPort, delegateName, userRate, teamRate })
        {
            command.Options.Add(option);
        }

        if (way == DiscordWay.Signed)
        {
            command.Options.Add(listen);
        }

        command.Validators.Add(result =>
        {
            bool address = result.GetResult(server) is not null, here = result.GetValue(embedded);
            if (address == here)
            {
                result.AddError(here ? "Give --server or --embedded, not both." : "Name the planner with --server, or start one in this process with --embedded.");
            }
        });
    }

    public ServeSettings Read(ParseResult parsed, DiscordWay way, CrewBotSurroundings surroundings)
    {
        var usual = new DiscordTransportOptions();
        double user = parsed.GetValue(userRate), team = parsed.GetValue(teamRate);
        return new ServeSettings
        {
            Way = way,
            Server = parsed.GetValue(server) is { } address ? new Uri(address) : null,
            DataFolder = parsed.GetValue(data) ?? surroundings.DefaultDataFolder,
            Guild = parsed.GetValue(guild) is { } id ? ulong.Parse(id, CultureInfo.InvariantCulture) : null,
            Listen = way == DiscordWay.Signed && parsed.GetValue(listen) is { } point ? IPEndPoint.Parse(point) : new IPEndPoint(IPAddress.Loopback, 5191),
            HealthPort = parsed.GetValue(healthPort),
            Delegate = parsed.GetValue(delegateName)!,
            Transport = usual with { UserRate = Rate(usual.UserRate, user), TeamRate = Rate(usual.TeamRate, team) },
        };
    }

    // As many at once as before in proportion.
    private static AskingRate Rate(AskingRate usual, double perMinute) => new(Math.Max(1, (int)Math.Ceiling(usual.AtOnce * perMinute / usual.PerMinute)), perMinute);

    private static void Check(Option<string?> option, Func<string, bool> fits, string problem) => option.Validators.Add(result =>
    {
        if (result.GetValueOrDefault<string?>() is { } text && !fits(text))
        {
            result.AddError(problem);
        }
    });
}
