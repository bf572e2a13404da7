using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>What an interaction asks of the desk.</summary>
internal sealed record DeskQuestion
{
    /// <summary>Name of the command as in the catalogue, "button" or "form".</summary>
    public required string What { get; init; }

    /// <summary>True when the answer is for the asker alone whatever it is.</summary>
    public bool Private { get; init; }

    /// <summary>True when a form may come, which cannot be put off.</summary>
    public bool OpensForm { get; init; }

    /// <summary>True when a file is read.</summary>
    public bool WithFile { get; init; }

    /// <summary>True when it goes on from an earlier answer, apart from the asker's own conversation.</summary>
    public bool FromButton { get; init; }

    /// <summary>True when refusing it for haste would lose what somebody wrote.</summary>
    public bool Written { get; init; }

    /// <summary>Share of the file read so far.</summary>
    public FileProgress Progress { get; init; } = new();

    /// <summary>Asks the desk.</summary>
    public required Func<CrewTeam, ChatThread, CancellationToken, Task<CrewOutput>> AskAsync { get; init; }

    /// <summary>Reads an interaction; null with the sentence to say when it is of another version.</summary>
    public static DeskQuestion? Read(Interaction interaction, IReadOnlyList<CrewCommand> commands, CommandCalls calls, out string sentence)
    {
        sentence = "";
        switch (interaction.Kind)
        {
            case InteractionKind.Command when interaction.Command is { } data:
                sentence = PlatformSentences.UnknownCommand;
                return CommandMapping.Find(data, commands) is { } command ? OfCommand(data, command, calls) : null;
            case InteractionKind.FormSubmit when interaction.Form is { } form:
                sentence = PlatformSentences.UnknownForm;
                return FormMapping.FromPlatform(form) is { } entry ? OfForm(entry) : null;
            default:
                sentence = PlatformSentences.OldButton("");
                return interaction.Component is { } component && ButtonId.TryRead(component.CustomId, out ButtonId? button) ? OfButton(button) : null;
        }
    }

    private static DeskQuestion OfCommand(CommandData data, CrewCommand command, CommandCalls calls)
    {
        var progress = new FileProgress();
        CommandCall read = calls.Read(data, command, progress);
        return new DeskQuestion
        {
            What = command.Name,
            Private = command.Private,
            OpensForm = command.OpensForm,
            WithFile = read.Call?.File is not null,
            Progress = progress,
            AskAsync = async (team, thread, c) =>
            {
                if (read.Refusal is { } refusal)
                {
                    return new CrewOutput(refusal, null);
                }

                await thread.BeginAsync(c).ConfigureAwait(false);
                return await team.Desk.RunAsync(thread.Own, read.Call!, c).ConfigureAwait(false);
            },
        };
    }

    private static DeskQuestion OfForm(CrewFormEntry entry) => new()
    {
        What = "form",
        Written = true,
        AskAsync = async (team, thread, c) => new CrewOutput(await team.Desk.SubmitAsync(thread.Own, entry, c).ConfigureAwait(false), null),
    };

    private static DeskQuestion OfButton(ButtonId button) => new()
    {
        What = "button",
        Private = button.Private,
        FromButton = true,
        AskAsync = async (team, thread, c) =>
        {
            if (await thread.RecallAsync(button.Snapshot, c).ConfigureAwait(false) is not { } memory)
            {
                return new CrewOutput(PlatformSentences.Answer(PlatformSentences.OldButton(button.Question)), null);
            }

            return new CrewOutput(await team.Desk.AskAsync(thread.Apart, new CrewQuestion { Text = button.Question, Memory = memory }, c).ConfigureAwait(false), null);
        },
    };
}
