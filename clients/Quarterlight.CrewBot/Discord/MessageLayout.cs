using System.Text;
using Quarterlight.Crew;
using Quarterlight.Discord;

namespace Quarterlight.CrewBot.Discord;

/// <summary>
/// Lays an answer out as a message: the decision in bold, then the lines, then in small what was understood; pictures with their text alternatives; the next
/// questions as buttons. Whatever text is in the answer, the message stays within the platform's limits.
/// </summary>
internal static class MessageLayout
{
    /// <summary>Longest text shown in the message itself, characters; a longer answer goes along whole as a file.</summary>
    public const int LongestShown = 1900;

    /// <summary>Longest label of a button, characters: what a phone shows in one line.</summary>
    public const int LongestLabel = 38;

    /// <summary>Most buttons of an answer.</summary>
    public const int MostButtons = 3;

    // From memory: the platform takes ten files with a message.
    private const int MostFiles = 10;

    /// <summary>The message with everything.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="isPrivate">True when only the asker may see it.</param>
    /// <param name="largestFileBytes">Largest file that may be attached.</param>
    /// <param name="buttonId">Id of the button that asks a question; null when there is no such button.</param>
    public static OutgoingMessage Of(CrewAnswer answer, bool isPrivate, long largestFileBytes, Func<string, string?> buttonId)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(buttonId);
        var files = new List<OutgoingFile>();
        var lost = new List<string>();
        foreach (CrewPicture picture in answer.Pictures)
        {
            string words = Markdown.Plain(picture.TextAlternative);
            if (Fits(picture.Png.Length))
            {
                files.Add(new OutgoingFile(FileNames.Safe(picture.FileName, "picture.png"), "image/png", picture.Png, words.Length == 0 ? null : CutText.AtSentence(words, DiscordLimits.AltTextCharacters)));
            }
            else
            {
                lost.Add($"{PlatformSentences.PictureNotAttached} {words}");
            }
        }

        foreach (CrewFile file in answer.Files)
        {
            if (Fits(file.Bytes.Length))
            {
                files.Add(new OutgoingFile(FileNames.Safe(file.FileName, "file.bin"), file.MediaType, file.Bytes, null));
            }
            else
            {
                lost.Add(PlatformSentences.FileNotAttached);
            }
        }

        return Finish(answer, isPrivate, buttonId, files, lost, mayAttach: true);

        // One place is left for the answer as a file.
        bool Fits(long bytes) => bytes > 0 && bytes <= largestFileBytes && files.Count < MostFiles - 1;
    }

    /// <summary>The message when files were refused: pictures in words instead.</summary>
    public static OutgoingMessage WithoutFiles(CrewAnswer answer, bool isPrivate, Func<string, string?> buttonId)
    {
        ArgumentNullException.ThrowIfNull(answer);
        List<string> lost =
        [
            .. answer.Pictures.Select(p => $"{PlatformSentences.PictureNotAttached} {Markdown.Plain(p.TextAlternative)}"),
            .. answer.Files.Select(_ => PlatformSentences.FileNotAttached).Distinct(),
        ];
        return Finish(answer, isPrivate, buttonId, [], lost, mayAttach: false);
    }

    /// <summary>The message of one sentence of the transport's own.</summary>
    public static OutgoingMessage Sentence(string sentence, bool isPrivate = true) => new() { Content = CutText.AtWord(Markdown.Escape(sentence), LongestShown), Private = isPrivate };

    private static OutgoingMessage Finish(CrewAnswer answer, bool isPrivate, Func<string, string?> buttonId, List<OutgoingFile> files, List<string> lost, bool mayAttach)
    {
        IReadOnlyList<OutgoingButton> buttons = Buttons(answer, buttonId);
        List<MessageLine> lines = Lines(answer, lost, answer.FollowUps.Where(f => Markdown.Plain(f).Length > 0 && buttonId(f) is null));
        string content = MessageLine.Join(lines, LongestShown, out bool whole);
        if (!whole)
        {
            // The note must fit too, in small print below what is shown.
            var note = new MessageLine("-# ", mayAttach ? PlatformSentences.WholeAnswerInFile : PlatformSentences.CutShort, "");
            int room = LongestShown - note.Write().Length - 1;
            content = MessageLine.Join(MessageLine.MostNeeded(lines, room), room, out _) + "\n" + note.Write();
            if (mayAttach)
            {
                files.Add(new OutgoingFile("answer.txt", "text/plain", Encoding.UTF8.GetBytes(string.Join('\n', lines.Select(l => Markdown.Plain(l.Text))) + "\n"), null));
            }
        }

        return new OutgoingMessage { Content = content, Files = files, Buttons = buttons, Private = isPrivate };
    }

    private static List<MessageLine> Lines(CrewAnswer answer, List<string> lost, IEnumerable<string> withoutButton)
    {
        var lines = new List<MessageLine>();
        string headline = Markdown.Plain(answer.Headline);
        lines.Add(headline.Length == 0 ? new MessageLine("", "…", "") : new MessageLine("**", headline, "**"));
        lines.AddRange(answer.Lines.Select(l => new MessageLine("", l.Text, "") { Need = NeedOf(l.Kind) }));
        lines.AddRange(lost.Select(l => new MessageLine("", l, "") { Need = 2 }));
        if (Markdown.Plain(answer.Understood) is { Length: > 0 } understood)
        {
            lines.Add(new MessageLine("-# ", $"Understood: {understood}.", "") { Need = 1 });
        }

        lines.AddRange(withoutButton.Take(MostButtons).Select(f => new MessageLine("-# ", $"Ask next: {f}", "") { Need = 2 }));
        return lines;
    }

    // What is left out first when not everything fits: never a caution before a figure.
    private static int NeedOf(CrewLineKind kind) => kind switch
    {
        CrewLineKind.Caution => 1,
        CrewLineKind.Figures or CrewLineKind.Certainty or CrewLineKind.Comparison => 3,
        CrewLineKind.Refused or CrewLineKind.RunnerUp or CrewLineKind.Proof => 4,
        _ => 2,
    };

    private static List<OutgoingButton> Buttons(CrewAnswer answer, Func<string, string?> buttonId)
    {
        var buttons = new List<OutgoingButton>();
        foreach (string question in answer.FollowUps)
        {
            string label = CutText.AtWord(Markdown.Plain(question), LongestLabel);
            if (buttons.Count < MostButtons && label.Length > 0 && buttonId(question) is { } id && buttons.All(b => b.CustomId != id))
            {
                buttons.Add(new OutgoingButton(label, id, buttons.Count == 0 ? ButtonLook.Primary : ButtonLook.Secondary));
            }
        }

        return buttons;
    }
}
