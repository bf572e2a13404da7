namespace Quarterlight.Chat.Emulator.Rest;

/// <summary>A request that found its route.</summary>
/// <param name="Values">Values of the pattern's names.</param>
/// <param name="Query">Value of a query field; null when missing.</param>
/// <param name="Body">Its body.</param>
internal sealed record ApiCall(IReadOnlyDictionary<string, string> Values, Func<string, string?> Query, RequestBody Body)
{
    /// <summary>The guild in the path; null for none.</summary>
    public ulong? Guild => Values.TryGetValue("guild", out string? id) && ulong.TryParse(id, out ulong n) ? n : null;
}

/// <summary>A route of the API.</summary>
/// <param name="Method">Its method.</param>
/// <param name="Pattern">Its path below the version; steps that begin with a colon are names.</param>
/// <param name="NeedsBot">True when the bot's token is needed; else the path holds its own credential, or none is needed.</param>
/// <param name="BodyKind">Kind of the body in the schema check; null for no body.</param>
/// <param name="Answer">What it does; runs under the platform's lock.</param>
internal sealed record ApiRoute(string Method, string Pattern, bool NeedsBot, string? BodyKind, Func<ApiCall, ApiAnswer> Answer)
{
    private readonly string[] steps = Pattern.Split('/', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Method and pattern.</summary>
    public string Name => $"{Method} {Pattern}";

    /// <summary>True when calls count towards the bot's global limit: those of interactions do not.</summary>
    public bool CountsGlobally => NeedsBot;

    /// <summary>Values of the names when a path fits; null when it does not.</summary>
    public Dictionary<string, string>? Match(string[] path)
    {
        if (path.Length != steps.Length)
        {
            return null;
        }

        var values = new Dictionary<string, string>();
        for (int i = 0; i < steps.Length; i++)
        {
            if (steps[i][0] == ':')
            {
                values[steps[i][1..]] = Uri.UnescapeDataString(path[i]);
            }
            else if (steps[i] != path[i])
            {
                return null;
            }
        }

        return values;
    }
}

/// <summary>All routes of the API that are emulated.</summary>
internal sealed class RouteTable(IReadOnlyList<ApiRoute> routes)
{
    /// <summary>Finds the route of a request; <paramref name="otherMethod"/> tells that only the method is wrong.</summary>
    public (ApiRoute Route, Dictionary<string, string> Values)? Find(string method, string path, out bool otherMethod)
    {
        string[] steps = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        otherMethod = false;
        foreach (ApiRoute route in routes)
        {
            if (route.Match(steps) is not { } values)
            {
                continue;
            }

            if (route.Method == method)
            {
                return (route, values);
            }

            otherMethod = true;
        }

        return null;
    }
}
