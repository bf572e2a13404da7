using System.Text.Json;
using Quarterlight.Chat.Emulator.Checks;
using Quarterlight.Chat.Emulator.Interactions;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>What a user did (Interaction Type).</summary>
public enum SentKind
{
    /// <summary>A command, typed or from a message's menu.</summary>
    Command = 2,

    /// <summary>A button or a select.</summary>
    Component = 3,

    /// <summary>Typing an option.</summary>
    Autocomplete = 4,

    /// <summary>A form sent in.</summary>
    FormSubmit = 5,
}

/// <summary>How the bot answered first (Interaction Callback Type).</summary>
public enum FirstAnswerKind
{
    /// <summary>With a message.</summary>
    Message = 4,

    /// <summary>"Thinking", a message follows.</summary>
    DeferredMessage = 5,

    /// <summary>Taken note of, the message with the button changes later or not at all.</summary>
    DeferredUpdate = 6,

    /// <summary>By changing the message with the button.</summary>
    Update = 7,

    /// <summary>With choices.</summary>
    Choices = 8,

    /// <summary>With a form.</summary>
    Form = 9,
}

/// <summary>A choice offered while typing.</summary>
/// <param name="Name">What is shown.</param>
/// <param name="Value">What is sent: text, or a number as text.</param>
public sealed record OfferedChoice(string Name, string Value);

/// <summary>Something a user did, and what came of it so far. All members may be read at any time from any thread.</summary>
public sealed class SentInteraction
{
    private readonly EmulatedPlatform platform;
    private long? deliveredTimestamp;

    internal SentInteraction(EmulatedPlatform platform, SentKind kind, UserInChannel by, string token)
    {
        this.platform = platform;
        Kind = kind;
        User = by.User;
        Channel = by.Channel;
        Id = platform.Ids.Next();
        Token = token;
        SentTimestamp = platform.Clock.GetTimestamp();
    }

    /// <summary>Its id.</summary>
    public ulong Id { get; }

    /// <summary>Its token.</summary>
    public string Token { get; }

    /// <summary>What was done.</summary>
    public SentKind Kind { get; }

    /// <summary>Who did it.</summary>
    public EmulatedUser User { get; }

    /// <summary>Where.</summary>
    public EmulatedChannel Channel { get; }

    /// <summary>The interaction as sent.</summary>
    public string Json { get; internal set; } = "";

    /// <summary>How the bot answered first; null when it has not yet.</summary>
    public FirstAnswerKind? FirstAnswer { get; private set; }

    /// <summary>Real time from delivery (written to the socket, or posted) to the first answer; null when there is none.</summary>
    public TimeSpan? AcknowledgedAfter { get; private set; }

    /// <summary>True when the time for a first answer is over and there is none: the user reads "The application did not respond".</summary>
    public bool Failed => FirstAnswer is null && platform.Clock.GetElapsedTime(SentTimestamp) > platform.Options.FirstAnswer;

    /// <summary>True when the bot used the deprecated way of filling a deferred answer by a follow-up.</summary>
    public bool UsedFollowUpAsEdit { get; internal set; }

    /// <summary>Choices offered; null when none came.</summary>
    public IReadOnlyList<OfferedChoice>? Choices { get; private set; }

    /// <summary>Form opened; null when none was.</summary>
    public OpenedForm? Form { get; private set; }

    /// <summary>The first answer as it is seen now (for an update: the message with the button); null when there is none.</summary>
    public VisibleMessage? First => platform.Locked(() => Original?.Look(platform));

    /// <summary>Follow-ups as they are seen now, those taken away left out.</summary>
    public IReadOnlyList<VisibleMessage> Later => platform.Locked<IReadOnlyList<VisibleMessage>>(() => [.. FollowUps.Where(m => !m.Deleted).Select(m => m.Look(platform))]);

    /// <summary>Everything there is to read now: the first answer once it is no longer "thinking", then follow-ups; those taken away left out.</summary>
    public IReadOnlyList<VisibleMessage> Readable => platform.Locked<IReadOnlyList<VisibleMessage>>(
        () => [.. FollowUps.Prepend(Original).Where(m => m is { Deleted: false, Loading: false }).Select(m => m!.Look(platform))]);

    internal long SentTimestamp { get; }

    internal bool IsMenu { get; init; }

    internal bool TokenKilled { get; set; }

    internal StoredMessage? Original { get; set; }

    internal StoredMessage? On { get; init; }

    internal List<StoredMessage> FollowUps { get; } = [];

    internal long FocusedOptionType { get; init; } = 3;

    /// <summary>Waits for the first answer.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">There was none; says what was refused meanwhile.</exception>
    public async Task<FirstAnswerKind> AnsweredAsync(CancellationToken cancellation, TimeSpan? within = null)
    {
        await UntilAsync(i => i.FirstAnswer is not null, cancellation, within).ConfigureAwait(false);
        return FirstAnswer!.Value;
    }

    /// <summary>Waits until there is something to read, and gives all there is.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="count">Messages to wait for.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">There were not as many.</exception>
    public async Task<IReadOnlyList<VisibleMessage>> MessagesAsync(CancellationToken cancellation, int count = 1, TimeSpan? within = null)
    {
        await UntilAsync(i => i.Readable.Count >= count, cancellation, within).ConfigureAwait(false);
        return Readable;
    }

    /// <summary>Waits for something to read and gives the first message.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">There was nothing.</exception>
    public async Task<VisibleMessage> MessageAsync(CancellationToken cancellation, TimeSpan? within = null) =>
        (await MessagesAsync(cancellation, 1, within).ConfigureAwait(false))[0];

    /// <summary>Waits for choices.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">None were offered.</exception>
    public async Task<IReadOnlyList<OfferedChoice>> ChoicesAsync(CancellationToken cancellation, TimeSpan? within = null)
    {
        await UntilAsync(i => i.Choices is not null, cancellation, within).ConfigureAwait(false);
        return Choices!;
    }

    /// <summary>Waits for a form.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">None was opened.</exception>
    public async Task<OpenedForm> FormAsync(CancellationToken cancellation, TimeSpan? within = null)
    {
        await UntilAsync(i => i.Form is not null, cancellation, within).ConfigureAwait(false);
        return Form!;
    }

    /// <summary>Waits until something holds.</summary>
    /// <param name="condition">What is to hold.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <param name="within">Longest wait; 10 s by default.</param>
    /// <exception cref="TimeoutException">It did not; the message says what the bot was refused meanwhile.</exception>
    public Task UntilAsync(Func<SentInteraction, bool> condition, CancellationToken cancellation, TimeSpan? within = null) =>
        platform.UntilAsync(() => condition(this), $"{this}", cancellation, within);

    /// <summary>Delivers the very same interaction once more, as the platform may.</summary>
    public void DeliverAgain() => platform.Deliver(this);

    /// <summary>Ends the life of the token now: every later call with it is refused with 50027.</summary>
    public void KillToken() => TokenKilled = true;

    /// <inheritdoc/>
    public override string ToString() => $"interaction {Id} ({Kind}, first answer {FirstAnswer?.ToString() ?? "none"}, {FollowUps.Count} follow-ups)";

    internal void Delivered() => deliveredTimestamp ??= TimeProvider.System.GetTimestamp();

    internal void Acknowledge(FirstAnswerKind kind)
    {
        FirstAnswer = kind;
        AcknowledgedAfter = deliveredTimestamp is { } then ? TimeProvider.System.GetElapsedTime(then) : TimeSpan.Zero;
    }

    internal void TakeChoices(JsonElement data) =>
        Choices = [.. data.List("choices").Select(c => new OfferedChoice(c.Text("name")!, c.Field("value")!.Value.ToString()))];

    internal void TakeForm(JsonElement data) => Form = OpenedForm.Of(data);
}
