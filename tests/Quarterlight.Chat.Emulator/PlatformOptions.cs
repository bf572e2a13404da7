namespace Quarterlight.Chat.Emulator;

/// <summary>How the emulated platform is set up.</summary>
public sealed record PlatformOptions
{
    /// <summary>The bot's token.</summary>
    public string Token { get; init; } = "emulated.bot.token-which-is-no-secret";

    /// <summary>The bot's account name.</summary>
    public string BotName { get; init; } = "quarterlight";

    /// <summary>Port on 127.0.0.1; 0 takes a free one.</summary>
    public int Port { get; init; }

    /// <summary>Seeds everything that is drawn: interaction tokens, session ids, the signing key, faults with a probability.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Clock below <see cref="EmulatedPlatform.Clock"/>, which is the one interactions and signed links live by.</summary>
    public TimeProvider Time { get; init; } = TimeProvider.System;

    /// <summary>What HELLO tells. The platform's own is near 41 s; tests want less.</summary>
    public TimeSpan HeartbeatInterval { get; init; } = TimeSpan.FromSeconds(41.25);

    /// <summary>Time for the first answer.</summary>
    public TimeSpan FirstAnswer { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Life of an interaction's token.</summary>
    public TimeSpan TokenLife { get; init; } = TimeSpan.FromMinutes(15);

    /// <summary>Life of a signed link to a file (one day, from memory).</summary>
    public TimeSpan LinkLife { get; init; } = TimeSpan.FromHours(24);

    /// <summary>Largest file of an answer, bytes: sent as attachment_size_limit and held to.</summary>
    public long AttachmentLimitBytes { get; init; } = 10L * 1024 * 1024;

    /// <summary>Largest request, bytes.</summary>
    public long RequestLimitBytes { get; init; } = 25L * 1024 * 1024;

    /// <summary>Identifies left today.</summary>
    public int SessionStarts { get; init; } = 1000;

    /// <summary>Identifies allowed in <see cref="IdentifyWindow"/>.</summary>
    public int MaxConcurrency { get; init; } = 1;

    /// <summary>The five seconds in which no more than <see cref="MaxConcurrency"/> identifies are taken; zero does not look.</summary>
    public TimeSpan IdentifyWindow { get; init; } = TimeSpan.Zero;

    /// <summary>Frames a client may send in 60 s on one connection.</summary>
    public int FramesPerMinute { get; init; } = 120;

    /// <summary>Events kept for a session that may resume.</summary>
    public int ReplayEvents { get; init; } = 10_000;

    /// <summary>Privileged intents switched on for the application; none by default.</summary>
    public long PrivilegedIntents { get; init; }

    /// <summary>Takes messages of components alone (IS_COMPONENTS_V2). Off: this project does not use them, so one would be a mistake.</summary>
    public bool AllowComponentsV2 { get; init; }
}
