using System.Text.Json.Nodes;
using Quarterlight.Chat.Emulator.Cdn;
using Quarterlight.Chat.Emulator.Interactions;
using Quarterlight.Chat.Emulator.World;

namespace Quarterlight.Chat.Emulator.Driver;

/// <summary>
/// Somebody in a channel: does what a person does in the app. Every method sends at once and returns what can be awaited.
/// An app sends only what is registered and fits; what it would not send is an <see cref="ArgumentException"/> here.
/// </summary>
public sealed class UserInChannel
{
    private readonly EmulatedPlatform platform;

    internal UserInChannel(EmulatedPlatform platform, EmulatedUser user, EmulatedChannel channel)
    {
        this.platform = platform;
        User = user;
        Channel = channel;
    }

    /// <summary>Who.</summary>
    public EmulatedUser User { get; }

    /// <summary>Where.</summary>
    public EmulatedChannel Channel { get; }

    /// <summary>Sends a command typed with a slash.</summary>
    /// <param name="command">Its name, with the subcommand behind a space: "scene new".</param>
    /// <param name="options">Options by name: text, whole number, number, bool or <see cref="EmulatedFile"/>.</param>
    /// <exception cref="ArgumentException">It is not registered here, or the options do not fit.</exception>
    public SentInteraction Slash(string command, params (string Name, object Value)[] options)
    {
        var data = new CommandFiller(platform, this).Fill(command, options, focused: null);
        return platform.Send(new SentInteraction(platform, SentKind.Command, this, platform.NewToken()), this, data.Json);
    }

    /// <summary>Types an option that is completed.</summary>
    /// <param name="command">The command, with the subcommand behind a space.</param>
    /// <param name="option">The option being typed.</param>
    /// <param name="text">What stands in it so far.</param>
    /// <param name="others">Options filled in already.</param>
    /// <exception cref="ArgumentException">The option is not registered with autocomplete.</exception>
    public SentInteraction Type(string command, string option, string text, params (string Name, object Value)[] others)
    {
        var data = new CommandFiller(platform, this).Fill(command, [.. others, (option, text)], option);
        return platform.Send(
            new SentInteraction(platform, SentKind.Autocomplete, this, platform.NewToken()) { FocusedOptionType = data.FocusedType }, this, data.Json);
    }

    /// <summary>Uses a command of a message's menu.</summary>
    /// <param name="command">Its name.</param>
    /// <param name="target">The message.</param>
    /// <exception cref="ArgumentException">It is not registered here.</exception>
    public SentInteraction Menu(string command, VisibleMessage target)
    {
        JsonObject data = new CommandFiller(platform, this).FillMenu(command, target);
        return platform.Send(new SentInteraction(platform, SentKind.Command, this, platform.NewToken()) { IsMenu = true }, this, data);
    }

    /// <summary>Presses a button.</summary>
    /// <param name="message">The message it stands in.</param>
    /// <param name="button">Its label or its id.</param>
    /// <exception cref="ArgumentException">There is no such button, or it cannot be pressed.</exception>
    public SentInteraction Press(VisibleMessage message, string button)
    {
        VisibleButton found = message.Buttons.FirstOrDefault(b => b.CustomId == button) ?? message.Buttons.FirstOrDefault(b => b.Label == button)
            ?? throw new ArgumentException($"There is no button {button}; there are: {string.Join(", ", message.Buttons.Select(b => b.Label))}", nameof(button));
        return found is { Disabled: false, CustomId: { } id }
            ? PressForged(message, id)
            : throw new ArgumentException($"The button {button} cannot be pressed.", nameof(button));
    }

    /// <summary>Presses a button that need not be there, as one of an older version or a forged one would be.</summary>
    /// <param name="message">The message it is said to stand in.</param>
    /// <param name="customId">Its id.</param>
    public SentInteraction PressForged(VisibleMessage message, string customId) =>
        Component(message, new JsonObject { ["component_type"] = 2, ["custom_id"] = customId, ["id"] = 2 });

    /// <summary>Chooses in a select.</summary>
    /// <param name="message">The message it stands in.</param>
    /// <param name="customId">Its id.</param>
    /// <param name="values">What is chosen.</param>
    public SentInteraction Select(VisibleMessage message, string customId, params string[] values) =>
        Component(message, new JsonObject { ["component_type"] = 3, ["custom_id"] = customId, ["id"] = 2, ["values"] = new JsonArray([.. values.Select(v => (JsonNode)v)]) });

    /// <summary>Sends a form in. Fields not named keep what stands in them.</summary>
    /// <param name="form">The form.</param>
    /// <param name="values">By field: text or <see cref="EmulatedFile"/>.</param>
    /// <param name="from">What opened it; needed when a button did.</param>
    /// <exception cref="ArgumentException">A field is unknown, or a required one empty, or a text too long or short: the app would not send it.</exception>
    public SentInteraction Submit(OpenedForm form, IReadOnlyDictionary<string, object> values, SentInteraction? from = null) =>
        Submit(FormFiller.Fill(platform, this, form, values, mustFit: true), from);

    /// <summary>Sends a form in without looking at the form's own rules, as a tampered app could.</summary>
    /// <param name="form">The form.</param>
    /// <param name="values">By field: text or <see cref="EmulatedFile"/>.</param>
    /// <param name="from">What opened it; needed when a button did.</param>
    public SentInteraction SubmitUnchecked(OpenedForm form, IReadOnlyDictionary<string, object> values, SentInteraction? from = null) =>
        Submit(FormFiller.Fill(platform, this, form, values, mustFit: false), from);

    /// <summary>Writes an ordinary message, such as one with a clip.</summary>
    /// <param name="content">Its text.</param>
    /// <param name="files">Its files.</param>
    public VisibleMessage Post(string content, params EmulatedFile[] files)
    {
        var message = new StoredMessage
        {
            Id = platform.Ids.Next(),
            Channel = Channel,
            Author = User,
            Written = platform.Clock.GetUtcNow(),
            Content = content,
            Files = [.. files.Select(Upload)],
        };
        return platform.Locked(() =>
        {
            platform.Desk.Add(message);
            return message.Look(platform);
        });
    }

    internal HostedFile Upload(EmulatedFile file) => platform.Files.Keep(Channel.Id, file.Name, file.ContentType, file.Bytes, null);

    private SentInteraction Component(VisibleMessage message, JsonObject data)
    {
        StoredMessage on = platform.Locked(() => platform.Desk.Message(message.Id)) ?? throw new ArgumentException("There is no such message.", nameof(message));
        return platform.Send(new SentInteraction(platform, SentKind.Component, this, platform.NewToken()) { On = on }, this, data);
    }

    private SentInteraction Submit(JsonObject data, SentInteraction? from) =>
        platform.Send(new SentInteraction(platform, SentKind.FormSubmit, this, platform.NewToken()) { On = from?.On }, this, data);
}
