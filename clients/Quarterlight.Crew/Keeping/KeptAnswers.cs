namespace Quarterlight.Crew.Keeping;

/// <summary>Answers about what the team keeps.</summary>
internal static class KeptAnswers
{
    public static CrewAnswer Done(string understood, string headline, IReadOnlyList<CrewLine> lines, CrewMemory memory, params IReadOnlyList<string> followUps) => new()
    {
        Intent = CrewIntent.Keep,
        Understood = understood,
        Headline = headline,
        Lines = lines,
        FollowUps = followUps,
        Memory = memory,
    };

    public static CrewAnswer Refused(string understood, string headline, CrewMemory memory, params IReadOnlyList<string> followUps) => Done(understood, headline, [], memory, followUps) with
    {
        Outcome = CrewOutcome.Refused,
        Private = true,
    };
}
