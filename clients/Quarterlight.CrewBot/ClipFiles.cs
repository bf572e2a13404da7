using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>What a typed line came to: a question, with its clip if it names one, or the answer that says what is wrong with the file.</summary>
/// <param name="Question">The question; its text holds no path.</param>
/// <param name="Refusal">Set when the file cannot be judged; then nothing is asked.</param>
public sealed record ClipQuestion(CrewQuestion Question, CrewAnswer? Refusal);

/// <summary>Attaches files of this machine to questions.</summary>
public sealed class ClipFiles
{
    private const int ReadBufferBytes = 64 * 1024;

    private readonly string? home;

    /// <summary>Files of this machine.</summary>
    /// <param name="home">What a leading ~ stands for; null leaves it as it is.</param>
    public ClipFiles(string? home) => this.home = home;

    /// <summary>Cuts the path out of the question's text and attaches its file.</summary>
    /// <param name="question">The question as typed.</param>
    /// <param name="path">A path given apart from the text; null for none.</param>
    public ClipQuestion Read(CrewQuestion question, string? path = null)
    {
        ArgumentNullException.ThrowIfNull(question);
        ClipLine line = ClipPaths.Find(question.Text, p => Whole(p) is var whole && (File.Exists(whole) || Directory.Exists(whole)));
        string[] paths = path is null ? [.. line.Paths] : [path, .. line.Paths];
        if (paths.Length == 0)
        {
            return new ClipQuestion(question, null);
        }

        if (paths.Select(Whole).Distinct(StringComparer.Ordinal).Count() > 1)
        {
            return Refused(question, CrewAttachmentProblem.Several, paths[0]);
        }

        return AttachWhole(question with { Text = line.Text }, Whole(paths[0]));
    }

    /// <summary>Attaches the file of a path, quoted or not.</summary>
    /// <param name="question">The question; its text is left as it is.</param>
    /// <param name="path">Path as typed.</param>
    public ClipQuestion Attach(CrewQuestion question, string path)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(path);
        string plain = path.Trim().Trim('"', '\'');
        plain = plain.StartsWith("file://", StringComparison.OrdinalIgnoreCase) && Uri.TryCreate(plain, UriKind.Absolute, out Uri? address) ? address.LocalPath : plain;
        return plain.Length == 0 || plain.Contains('\0', StringComparison.Ordinal) ? Refused(question, CrewAttachmentProblem.NotFound, path) : AttachWhole(question, Whole(plain));
    }

    private static ClipQuestion AttachWhole(CrewQuestion question, string path)
    {
        string name = Path.GetFileName(Path.TrimEndingDirectorySeparator(path));
        try
        {
            if (Directory.Exists(path))
            {
                return Refused(question, CrewAttachmentProblem.IsFolder, name);
            }

            var file = new FileInfo(path);
            if (!file.Exists)
            {
                return Refused(question, CrewAttachmentProblem.NotFound, name);
            }

            // Told before it is opened: a pipe or a device has no length, and opening one may never end.
            if (file.Length == 0)
            {
                return Refused(question, CrewAttachmentProblem.Empty, name);
            }

            if (file.Length > CrewAttachment.LargestBytes)
            {
                return Refused(question, CrewAttachmentProblem.TooLarge, name);
            }

            using (Open(path))
            {
            }

            return new ClipQuestion(question with { Attachment = new CrewAttachment(name, file.Length, _ => Task.FromResult<Stream>(Open(path))) }, null);
        }
        catch (UnauthorizedAccessException)
        {
            return Refused(question, CrewAttachmentProblem.NotAllowed, name);
        }
        catch (Exception e) when (e is IOException or ArgumentException or NotSupportedException)
        {
            return Refused(question, CrewAttachmentProblem.NotReadable, name);
        }
    }

    private static FileStream Open(string path) => new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, ReadBufferBytes, useAsync: true);

    private static ClipQuestion Refused(CrewQuestion question, CrewAttachmentProblem problem, string name) => new(question, CrewAttachmentAnswers.Of(problem, name, question.Memory));

    private string Whole(string path) => home is not null && (path.StartsWith("~/", StringComparison.Ordinal) || path.StartsWith("~\\", StringComparison.Ordinal)) ? Path.Combine(home, path[2..]) : path;
}
