using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>Times and limits of the transport. Times count from the receipt of an interaction unless they say otherwise.</summary>
public sealed record DiscordTransportOptions
{
    /// <summary>An answer not there by then is put off with "thinking"; well below <see cref="DiscordLimits.FirstAnswer"/>.</summary>
    public TimeSpan DeferAfter { get; init; } = TimeSpan.FromMilliseconds(600);

    /// <summary>A form cannot be put off: not there by then, the asker is told.</summary>
    public TimeSpan FormBy { get; init; } = TimeSpan.FromSeconds(2.2);

    /// <summary>Choices not there by then are none.</summary>
    public TimeSpan ChoicesBy { get; init; } = TimeSpan.FromMilliseconds(900);

    /// <summary>First answers are no longer tried after this.</summary>
    public TimeSpan LastFirstAnswer { get; init; } = TimeSpan.FromSeconds(2.7);

    /// <summary>An answer that takes longer is announced once with a word on its progress.</summary>
    public TimeSpan ProgressAfter { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>An answer that takes longer is given up; below <see cref="DiscordLimits.TokenLife"/>, so that it can still be said.</summary>
    public TimeSpan LongestAnswer { get; init; } = TimeSpan.FromMinutes(13);

    /// <summary>Questions answered at the same time.</summary>
    public int QuestionsAtOnce { get; init; } = 16;

    /// <summary>Questions waiting for their turn; one more is told that too much is asked.</summary>
    public int QuestionsWaiting { get; init; } = 200;

    /// <summary>Files taken at the same time; they take long, so they have turns of their own.</summary>
    public int FilesAtOnce { get; init; } = 4;

    /// <summary>Files waiting for their turn.</summary>
    public int FilesWaiting { get; init; } = 20;

    /// <summary>Interactions under way at all, those that only wait to be told included; more are not taken.</summary>
    public int MostUnderWay { get; init; } = 1000;

    /// <summary>How often one user may ask.</summary>
    public AskingRate UserRate { get; init; } = new(8, 30);

    /// <summary>How often one server's users may ask together.</summary>
    public AskingRate TeamRate { get; init; } = new(40, 200);

    /// <summary>Time given to what is under way when the transport stops, from the moment it is told to.</summary>
    public TimeSpan FinishWithin { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Time given after that to tell those whose answer was not finished.</summary>
    public TimeSpan TellWithin { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>First wait before something is sent again when the platform is away; each further one is twice as long.</summary>
    public TimeSpan RetryAfter { get; init; } = TimeSpan.FromSeconds(3);
}
