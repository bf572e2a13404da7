using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>Lays an answer out as plain text.</summary>
public static class AnswerPrinter
{
    /// <summary>Prints an answer: the decision, the lines, pictures with their text alternatives, what was understood, what to ask next.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="pictureFiles">Where each picture was written; null where it could not be.</param>
    /// <param name="otherFiles">Where each other file was written; null where it could not be.</param>
    /// <param name="output">Where to.</param>
    public static void Print(CrewAnswer answer, IReadOnlyList<string?> pictureFiles, IReadOnlyList<string?> otherFiles, TextWriter output)
    {
        ArgumentNullException.ThrowIfNull(otherFiles);
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(pictureFiles);
        ArgumentNullException.ThrowIfNull(output);
        output.WriteLine(answer.Headline);
        CrewLineKind? last = null;
        foreach (CrewLine line in answer.Lines)
        {
            // Air between what to rig and what to expect of it.
            if (last is null || (last == CrewLineKind.Talker && line.Kind != last))
            {
                output.WriteLine();
            }

            output.WriteLine(line.Text);
            last = line.Kind;
        }

        for (int i = 0; i < answer.Pictures.Count; i++)
        {
            output.WriteLine();
            output.WriteLine(i < pictureFiles.Count && pictureFiles[i] is { } file ? $"Picture: {file}" : "Picture: it could not be written; check the folder given with --pictures.");
            output.WriteLine($"In words: {answer.Pictures[i].TextAlternative}");
        }

        for (int i = 0; i < answer.Files.Count; i++)
        {
            output.WriteLine(i < otherFiles.Count && otherFiles[i] is { } file ? $"File: {file}" : $"File: {answer.Files[i].FileName} could not be written; check the folder given with --pictures.");
        }

        if (answer.Understood.Length > 0)
        {
            output.WriteLine();
            output.WriteLine($"Understood: {answer.Understood}.");
        }

        if (answer.FollowUps.Count > 0)
        {
            output.WriteLine($"Ask next: {string.Join("  |  ", answer.FollowUps)}");
        }
    }
}
