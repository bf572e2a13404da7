using System.Collections.Concurrent;
using Quarterlight.Crew;
using Quarterlight.Crew.Commands;

namespace Quarterlight.Chat.Tests.Discord;

/// <summary>A desk that answers what a test says, when it says so.</summary>
internal sealed class FakeDesk : ICrewDesk
{
    public ConcurrentQueue<(string Conversation, CrewQuestion Question)> Asked { get; } = new();

    public ConcurrentQueue<(string Conversation, CrewCommandCall Call)> Ran { get; } = new();

    public ConcurrentQueue<CrewFormEntry> Submitted { get; } = new();

    public Func<CrewQuestion, CancellationToken, Task<CrewAnswer>> Answers { get; set; } = (_, _) => Task.FromResult(new CrewAnswer { Headline = "Visor clip." });

    public Func<CrewCommandCall, CancellationToken, Task<CrewOutput>> Runs { get; set; } = (_, _) => Task.FromResult(new CrewOutput(new CrewAnswer { Headline = "Visor clip." }, null));

    public Func<CrewCommandCall, string, CancellationToken, Task<IReadOnlyList<CrewChoice>>> Completes { get; set; } = (_, _, _) => Task.FromResult<IReadOnlyList<CrewChoice>>([]);

    public Task<CrewAnswer> AskAsync(string conversationId, CrewQuestion question, CancellationToken cancellation)
    {
        Asked.Enqueue((conversationId, question));
        return Answers(question, cancellation);
    }

    public Task<CrewOutput> RunAsync(string conversationId, CrewCommandCall call, CancellationToken cancellation)
    {
        Ran.Enqueue((conversationId, call));
        return Runs(call, cancellation);
    }

    public Task<CrewAnswer> SubmitAsync(string conversationId, CrewFormEntry entry, CancellationToken cancellation)
    {
        Submitted.Enqueue(entry);
        return Answers(new CrewQuestion { Text = entry.FormId }, cancellation);
    }

    public Task<IReadOnlyList<CrewChoice>> CompleteAsync(string conversationId, CrewCommandCall call, string option, CancellationToken cancellation) => Completes(call, option, cancellation);

    public void RunsInto(CrewAnswer answer) => Runs = (_, _) => Task.FromResult(new CrewOutput(answer, null));

    /// <summary>Answers that are given when the test says so, or never.</summary>
    public TaskCompletionSource<CrewOutput> Waits()
    {
        var answer = new TaskCompletionSource<CrewOutput>(TaskCreationOptions.RunContinuationsAsynchronously);
        Runs = (_, c) => answer.Task.WaitAsync(c);
        return answer;
    }
}
