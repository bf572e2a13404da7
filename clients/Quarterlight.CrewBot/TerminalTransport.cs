using Quarterlight.Crew;
using Quarterlight.Crew.Commands;

namespace Quarterlight.CrewBot;

/// <summary>The crew at a terminal: a line in, an answer out.</summary>
public sealed class TerminalTransport : ICrewTransport
{
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
    public async Task RunAsync(TeamDesk desk, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(desk);
        var terminal = new TerminalDesk(desk, surroundings);
        if (surroundings.Prompts)
        {
            await surroundings.Output.WriteLineAsync("Ask where the mics go, why not there, what if; name or drop a sound file to have it judged. a line that begins with / is a command, such as /link 300 m. \"help\" lists more, \"quit\" ends.").ConfigureAwait(false);
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

            CrewOutput output = CommandLine.IsCommand(line) ? await terminal.RunAsync(pattern, line, null, cancellation).ConfigureAwait(false)
                : new CrewOutput(await terminal.AskAsync(pattern, line, null, cancellation).ConfigureAwait(false), null);
            CrewAnswer? answer = output.Answer ?? await FillAsync(terminal, output.Form!, cancellation).ConfigureAwait(false);
            if (answer is null)
            {
                await surroundings.Output.WriteLineAsync("Left as it was.").ConfigureAwait(false);
            }
            else
            {
                IReadOnlyList<string?> drawn = await pictures.WriteAsync(answer, cancellation).ConfigureAwait(false);
                AnswerPrinter.Print(answer, drawn, await pictures.WriteFilesAsync(answer, cancellation).ConfigureAwait(false), surroundings.Output);
            }

            await surroundings.Output.WriteLineAsync().ConfigureAwait(false);
        }
    }

    private async Task<CrewAnswer?> FillAsync(TerminalDesk terminal, CrewForm form, CancellationToken cancellation) =>
        await FormFiller.FillAsync(form, surroundings.Input, surroundings.Output, cancellation).ConfigureAwait(false) is { } entry ? await terminal.SubmitAsync(entry, cancellation).ConfigureAwait(false) : null;
}
