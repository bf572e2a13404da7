using System.Text.Json;
using System.Text.RegularExpressions;
using Quarterlight.Chat.Emulator.Driver;
using Quarterlight.Chat.Emulator.Recording;
using static Quarterlight.Chat.Tests.Discord.WholeTalk;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>What became of interactions, by what users see and what went over the wire: answered once, told by the platform for a reason that is on record, or wrong.</summary>
internal sealed partial class StormVerdict
{
    private readonly ILookup<string, RecordedRequest> byToken;
    private readonly IReadOnlySet<ulong> inGap;

    /// <summary>A verdict on what was recorded.</summary>
    /// <param name="requests">All requests.</param>
    /// <param name="inGap">Interactions sent while there was no connection.</param>
    public StormVerdict(IEnumerable<RecordedRequest> requests, IReadOnlySet<ulong> inGap)
    {
        byToken = requests.Where(r => Token().IsMatch(r.Path)).ToLookup(r => Token().Match(r.Path).Groups[1].Value);
        this.inGap = inGap;
    }

    /// <summary>True when nothing more is waited for: it has its answer or its choices, or the platform says that there was none.</summary>
    public static bool IsOver(SentInteraction asked) => asked.Failed || (asked.Kind == SentKind.Autocomplete ? asked.Choices is not null : Answers(asked).Count > 0);

    /// <summary>Everything recorded about one, a line each.</summary>
    public static IEnumerable<string> About(SentInteraction asked, IEnumerable<RecordedRequest> requests) =>
        requests.Where(r => r.Path.Contains(asked.Token, StringComparison.Ordinal)).Select(r => $"{r.At.TotalSeconds:0.000} {r}");

    /// <summary>True when its first answer was struck by a fault.</summary>
    public bool IsStruck(SentInteraction asked) => Callbacks(asked).Any(r => r.Fault is not null);

    /// <summary>True when the bot was told that its first answer was there already.</summary>
    public bool WasThereBefore(SentInteraction asked) => Callbacks(asked).Any(r => r.ErrorCode == 40060);

    /// <summary>First answers sent once more although there was a clear word to the one before: the bot gave up waiting for that word, or two answered.</summary>
    public int NeedlessFirstAnswers(SentInteraction asked) => Callbacks(asked).SkipLast(1).Count(r => r.Fault is null && r.Status is (>= 200 and < 300) or 400 or 404);

    /// <summary>What is wrong with one; null when nothing is.</summary>
    public string? WrongWith(SentInteraction asked)
    {
        string? wrong = asked switch
        {
            _ when Answers(asked).Count > 1 => "answered more than once",
            _ when asked.Kind != SentKind.Autocomplete && Texts(asked) > 1 => "given two different answers",
            _ when asked.FirstAnswer is not null && !IsOver(asked) => "left without a word after a first answer",
            _ when asked.FirstAnswer is null && !IsExplained(asked) => "left without a word for no reason on record",
            _ => null,
        };
        return wrong is null ? null : $"{asked}: {wrong}; {string.Join("; ", About(asked, byToken[asked.Token]))}";
    }

    // A fault struck its first answer, or the platform refused it as too late, or it was sent while nobody was there to take it.
    private bool IsExplained(SentInteraction asked) => IsStruck(asked) || Callbacks(asked).Any(r => r.ErrorCode == 10062) || inGap.Contains(asked.Id);

    private IEnumerable<RecordedRequest> Callbacks(SentInteraction asked) => byToken[asked.Token].Where(r => r.Path.EndsWith("/callback", StringComparison.Ordinal));

    // Different texts that took effect, whether the bot got to know it or not; a word on progress is none.
    private int Texts(SentInteraction asked) => byToken[asked.Token]
        .Where(r => r.Status is >= 200 and < 300 || r.Fault is "CutAfter" or "ErrorAfter")
        .Select(r => TextOf(r.Json)).Where(t => t is not null && !IsProgress(t)).Distinct().Count();

    private static string? TextOf(string? body)
    {
        if (body is null)
        {
            return null;
        }

        using JsonDocument json = JsonDocument.Parse(body);
        JsonElement message = json.RootElement.TryGetProperty("data", out JsonElement data) ? data : json.RootElement;
        return message.TryGetProperty("content", out JsonElement content) ? content.GetString() : null;
    }

    [GeneratedRegex("/(?:interactions|webhooks)/[0-9]+/([^/]+)")]
    private static partial Regex Token();
}
