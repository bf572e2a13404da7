using System.Globalization;
using System.Net;
using Quarterlight.Planner;
using Quarterlight.Store;

// Settings come from the command line (--grpc-port 5180 --http-port 5181 --data FOLDER --address 127.0.0.1), from the
// environment with the prefix QUARTERLIGHT_ (QUARTERLIGHT_Teams__<team>=<hash>, QUARTERLIGHT_Delegates__<name>=<hash>), or from appsettings.json.
IConfiguration settings = new ConfigurationBuilder()
    .SetBasePath(AppContext.BaseDirectory)
    .AddJsonFile("appsettings.json", optional: true)
    .AddEnvironmentVariables("QUARTERLIGHT_")
    .AddCommandLine(args)
    .Build();
try
{
    var options = new PlannerHostOptions
    {
        DataFolder = settings["data"] ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create), "quarterlight"),
        Address = IPAddress.TryParse(settings["address"] ?? "127.0.0.1", out IPAddress? address) ? address : throw new PlannerStartException("address is not an IP address: use 127.0.0.1, or 0.0.0.0 with team keys."),
        StopOnSignals = true,
        GrpcPort = Port("grpc-port", 5180),
        HttpPort = Port("http-port", 5181),
        KeyHashByTeam = Hashes("Teams"),
        KeyHashByDelegate = Hashes("Delegates"),
    };
    await using PlannerHost host = await PlannerHost.StartAsync(options);
    await host.WaitForShutdownAsync();
    return 0;
}
catch (Exception problem) when (problem is PlannerStartException or StoreInUseException or IOException)
{
    Console.Error.WriteLine(problem.Message);
    return 1;
}

Dictionary<string, string> Hashes(string section) => settings.GetSection(section).GetChildren().ToDictionary(t => t.Key, t => t.Value ?? "");

int Port(string name, int fallback) => settings[name] is not { } text ? fallback
    : int.TryParse(text, CultureInfo.InvariantCulture, out int port) && port is >= 0 and <= 65535 ? port
    : throw new PlannerStartException($"{name} is not a port: use 0 to 65535.");
