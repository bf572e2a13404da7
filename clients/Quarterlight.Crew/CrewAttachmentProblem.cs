using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew;

/// <summary>What can be wrong with a file that a transport found in a message.</summary>
public enum CrewAttachmentProblem
{
    /// <summary>There is no such file.</summary>
    NotFound,

    /// <summary>It is a folder.</summary>
    IsFolder,

    /// <summary>It may not be read.</summary>
    NotAllowed,

    /// <summary>It has no bytes.</summary>
    Empty,

    /// <summary>It is larger than <see cref="CrewAttachment.LargestBytes"/>.</summary>
    TooLarge,

    /// <summary>Reading it failed, or ended too soon.</summary>
    NotReadable,

    /// <summary>There is more than one.</summary>
    Several,
}

/// <summary>Answers for files that cannot be judged, so that no transport writes its own.</summary>
public static class CrewAttachmentAnswers
{
    /// <summary>One private sentence that says what to do.</summary>
    /// <param name="problem">What is wrong.</param>
    /// <param name="fileName">Name of the file; any text is safe.</param>
    /// <param name="memory">What the conversation remembers, handed on unchanged.</param>
    public static CrewAnswer Of(CrewAttachmentProblem problem, string fileName, CrewMemory memory)
    {
        ArgumentNullException.ThrowIfNull(fileName);
        ArgumentNullException.ThrowIfNull(memory);
        string name = ClipText.FileName(fileName);
        string sentence = problem switch
        {
            CrewAttachmentProblem.NotFound => $"There is no file {name}: check the path, and put it in quotes if it has spaces.",
            CrewAttachmentProblem.IsFolder => $"{name} is a folder: name one file in it.",
            CrewAttachmentProblem.NotAllowed => $"{name} may not be read: change its permissions or copy it to a folder of your own.",
            CrewAttachmentProblem.Empty => $"{name} is empty: check that the recorder closed it, and send it again.",
            CrewAttachmentProblem.TooLarge => Wordings.Say($"{name} is larger than {CrewAttachment.LargestBytes / 1024 / 1024} MiB: cut out a minute that matters and send that."),
            CrewAttachmentProblem.NotReadable => $"{name} could not be read to its end: check that it is still there, and send it again.",
            _ => "One clip at a time: send the first, then the next.",
        };
        return new CrewAnswer { Outcome = CrewOutcome.Refused, Intent = CrewIntent.JudgeClip, Headline = Wordings.Capital(sentence), Private = true, FollowUps = ["judge the demo clip"], Memory = memory };
    }
}
