using Quarterlight.Crew;
using Quarterlight.Crew.Commands;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>A command of the platform read as a call of the desk, or the answer when it cannot be.</summary>
/// <param name="Call">The call; null when there is a refusal.</param>
/// <param name="Refusal">What to answer instead; null when there is a call.</param>
internal sealed record CommandCall(CrewCommandCall? Call, CrewAnswer? Refusal);

/// <summary>Reads commands; files are named here and fetched only when the desk opens them.</summary>
internal sealed class CommandCalls(IInteractionResponder responder)
{
    /// <summary>Reads a command that was sent.</summary>
    /// <param name="data">The command as received.</param>
    /// <param name="command">The one it is.</param>
    /// <param name="read">Told the share of the file read, 0 to 1.</param>
    public CommandCall Read(CommandData data, CrewCommand command, IProgress<double> read)
    {
        ArgumentNullException.ThrowIfNull(data);
        ArgumentNullException.ThrowIfNull(command);
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        DiscordAttachment? file = null;
        foreach (CommandOptionValue option in data.Options)
        {
            CrewOption? known = command.Options.FirstOrDefault(o => o.Name == option.Name);
            if (known?.Kind != CrewOptionKind.File)
            {
                values[option.Name] = option.Text;
            }
            else if (ulong.TryParse(option.Text, out ulong id))
            {
                data.Attachments.TryGetValue(id, out file);
            }
        }

        if (data.Kind == CommandKind.Message)
        {
            switch (data.TargetAttachments.Count)
            {
                case 0:
                    return new CommandCall(null, PlatformSentences.Answer(PlatformSentences.NoFileInMessage));
                case > 1:
                    return Refused(CrewAttachmentProblem.Several, data.TargetAttachments[0]);
                default:
                    file = data.TargetAttachments[0];
                    break;
            }
        }

        return file switch
        {
            null => new CommandCall(new CrewCommandCall(command.Name, values), null),
            { ByteCount: > CrewAttachment.LargestBytes } => Refused(CrewAttachmentProblem.TooLarge, file),
            { ByteCount: <= 0 } => Refused(CrewAttachmentProblem.Empty, file),
            _ => new CommandCall(new CrewCommandCall(command.Name, values) { File = Attachment(file, read) }, null),
        };
    }

    /// <summary>Reads a command still being typed: no files.</summary>
    public static CrewCommandCall ReadTyped(CommandData data, CrewCommand command) =>
        new(command.Name, data.Options.GroupBy(o => o.Name).ToDictionary(g => g.Key, g => g.Last().Text, StringComparer.Ordinal));

    private static CommandCall Refused(CrewAttachmentProblem problem, DiscordAttachment file) => new(null, CrewAttachmentAnswers.Of(problem, file.FileName, CrewMemory.Empty));

    private CrewAttachment Attachment(DiscordAttachment file, IProgress<double> read) => new(file.FileName, file.ByteCount, async cancellation =>
    {
        try
        {
            return new AttachmentStream(await responder.OpenAttachmentAsync(file, file.ByteCount, cancellation).ConfigureAwait(false), file.ByteCount, read);
        }
        catch (DiscordException e)
        {
            throw new IOException("The file host did not hand the file out.", e);
        }
    });
}
