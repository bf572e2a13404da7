using Quarterlight.Crew;
using Quarterlight.Crew.Commands;

namespace Quarterlight.CrewBot;

/// <summary>What is typed at a terminal, asked of the desk: questions and commands, with the files they name.</summary>
internal sealed class TerminalDesk(TeamDesk desk, CrewBotSurroundings surroundings)
{
    private const string ConversationId = "terminal";

    private readonly ClipFiles files = new(surroundings.HomeFolder);

    /// <summary>Answers a question.</summary>
    /// <param name="pattern">What every question starts from: units and scene.</param>
    /// <param name="text">The question; a path in it is cut out and its file attached.</param>
    /// <param name="path">A path given apart from the text; null for none.</param>
    /// <param name="cancellation">Calls it off.</param>
    public async Task<CrewAnswer> AskAsync(CrewQuestion pattern, string text, string? path, CancellationToken cancellation)
    {
        ClipQuestion asked = files.Read(pattern with { Text = text }, path);
        return asked.Refusal ?? await WithProgressAsync(asked.Question, ready => desk.AskAsync(ConversationId, ready, cancellation)).ConfigureAwait(false);
    }

    /// <summary>Does what a typed command says.</summary>
    /// <param name="pattern">What every command starts from: units and scene.</param>
    /// <param name="line">The command, with or without the stroke.</param>
    /// <param name="path">A path given apart from the line; null for none.</param>
    /// <param name="cancellation">Calls it off.</param>
    public async Task<CrewOutput> RunAsync(CrewQuestion pattern, string line, string? path, CancellationToken cancellation)
    {
        TypedCommand typed = CommandLine.Read(line);
        if (typed.Call is not { } call)
        {
            return new CrewOutput(new CrewAnswer { Outcome = CrewOutcome.Refused, Private = true, Headline = typed.Wrong!, Memory = pattern.Memory }, null);
        }

        // On a line of text a file is the path to it.
        string? option = CrewCommands.Find(call.Name)?.Options.FirstOrDefault(o => o.Kind == CrewOptionKind.File)?.Name;
        string? named = option is not null && call.Values.TryGetValue(option, out string? value) ? value : path;
        if (named is not null)
        {
            ClipQuestion attached = files.Attach(pattern, named);
            if (attached.Refusal is { } refusal)
            {
                return new CrewOutput(refusal, null);
            }

            call = new CrewCommandCall(call.Name, call.Values.Where(v => v.Key != option).ToDictionary(v => v.Key, v => v.Value)) { File = attached.Question.Attachment };
        }

        return await WithProgressAsync(pattern with { Attachment = call.File }, ready => desk.RunAsync(ConversationId, call, ready, cancellation)).ConfigureAwait(false);
    }

    /// <summary>Hands a filled-in form in.</summary>
    public Task<CrewAnswer> SubmitAsync(CrewFormEntry entry, CancellationToken cancellation) => desk.SubmitAsync(ConversationId, entry, cancellation);

    private async Task<T> WithProgressAsync<T>(CrewQuestion question, Func<CrewQuestion, Task<T>> ask)
    {
        ProgressLine? progress = surroundings.ShowsProgress && question.Attachment is not null ? new ProgressLine(surroundings.Error) : null;
        T answer = await ask(question with { Progress = progress }).ConfigureAwait(false);
        progress?.Clear();
        return answer;
    }
}
