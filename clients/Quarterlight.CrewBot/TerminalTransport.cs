using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>The crew at a terminal: a line in, an answer out.</summary>
public sealed class TerminalTransport : ICrewTransport
{
    private const string ConversationId = "terminal";

    private readonly CrewBotSurroundings surroundings;
    private readonly PictureFolder pictures;
    private readonly CrewQuestion pattern;

    /// <summary>A terminal.</summary>
    /// <param name="surroundings">Where lines come from and answers go.</param>
    /// <param name="pictures">Where pictures are written.</param>
    /// <param name="pattern">What every question starts from: units and scene.</param>
    public TerminalTransport(CrewBotSurroundings surroundings, PictureFolder pictures, CrewQuestion pattern)
    {
        ArgumentNullException.ThrowIfNull(surroundings);
        ArgumentNullException.ThrowIfNull(pictures);
        ArgumentNullException.ThrowIfNull(pattern);
        (this.surroundings, this.pictures, this.pattern) = (surroundings, pictures, pattern);
    }

    /// <inheritdoc/>
    public async Task RunAsync(CrewConversations conversations, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(conversations);
        if (surroundings.Prompts)
        {
            await surroundings.Output.WriteLineAsync("Ask where the mics go, why not there, what if; name or drop a sound file to have it judged. \"help\" lists more, \"quit\" ends.").ConfigureAwait(false);
        }

        while (true)
        {
            if (surroundings.Prompts)
            {
                await surroundings.Output.WriteAsync("> ").ConfigureAwait(false);
            }

            string? line = await surroundings.Input.ReadLineAsync(cancellation).ConfigureAwait(false);
            if (line is null || line.Trim() is "quit" or "exit" or "bye")
            {
                return;
            }

            if (string.IsNullOrWhiteSpace(line))
            {
                continue;
            }

            ClipQuestion asked = new ClipFiles(surroundings.HomeFolder).Read(pattern with { Text = line });
            ProgressLine? progress = surroundings.ShowsProgress ? new ProgressLine(surroundings.Error) : null;
            CrewAnswer answer = asked.Refusal ?? await conversations.AskAsync(ConversationId, asked.Question with { Progress = progress }, cancellation).ConfigureAwait(false);
            progress?.Clear();
            AnswerPrinter.Print(answer, await pictures.WriteAsync(answer, cancellation).ConfigureAwait(false), surroundings.Output);
            await surroundings.Output.WriteLineAsync().ConfigureAwait(false);
        }
    }
}
