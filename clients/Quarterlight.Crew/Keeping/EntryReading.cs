using Quarterlight.Crew.Commands;
using Quarterlight.Crew.Wording;

namespace Quarterlight.Crew.Keeping;

/// <summary>A filled-in form while it is read: what was written, what was not understood, and what was taken as usual because nobody said.</summary>
/// <param name="entry">As filled in.</param>
/// <param name="form">The form as it was shown, for its labels.</param>
internal sealed class EntryReading(CrewFormEntry entry, CrewForm form)
{
    private const int MostProblems = 20;

    private readonly List<(string Field, string Sentence, string Hint)> problems = [];
    private readonly List<string> usual = [];

    /// <summary>True while everything was understood.</summary>
    public bool Good => problems.Count == 0;

    /// <summary>What was taken as usual, in words.</summary>
    public IReadOnlyList<string> Usual => usual;

    /// <summary>Lines written into a field.</summary>
    public IReadOnlyList<string> Lines(string fieldId) => FormText.Lines(Raw(fieldId));

    /// <summary>A field as one line.</summary>
    public string Line(string fieldId) => string.Join(' ', Lines(fieldId));

    /// <summary>True when a field still says what it said at first, in whichever units.</summary>
    public bool Same(string fieldId, params ReadOnlySpan<string> shown)
    {
        foreach (string text in shown)
        {
            if (FormText.Same(Raw(fieldId), text))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Notes what was not understood.</summary>
    /// <param name="fieldId">Where.</param>
    /// <param name="sentence">What, and what would be right for this one.</param>
    /// <param name="hint">How the whole field is written, in a sentence; said once a field, however much of it was not understood.</param>
    public void Problem(string fieldId, string sentence, string hint = "") => problems.Add((fieldId, sentence, hint));

    /// <summary>Notes what was taken as usual.</summary>
    public void TakeAsUsual(string words)
    {
        if (!usual.Contains(words))
        {
            usual.Add(words);
        }
    }

    /// <summary>Notes fields that hold more than they may: nothing of them is left out in silence.</summary>
    public void CheckLengths()
    {
        foreach (CrewFormField field in form.Fields)
        {
            string raw = Raw(field.Id);
            if (raw.Length > field.MostCharacters || raw.Split('\n').Length > FormText.MostLines || raw.Split('\n').Any(l => l.Length > FormText.LongestLine))
            {
                Problem(field.Id, Wordings.Say($"too long: at most {field.MostCharacters} characters, {FormText.MostLines} lines, {FormText.LongestLine} a line."));
            }
            else if (field.Required && Lines(field.Id).Count == 0)
            {
                Problem(field.Id, $"this must not be empty. Write for example: {field.Hint}.");
            }
        }
    }

    /// <summary>Nothing was kept: what was not understood first, then everything written, so that it can be copied.</summary>
    public CrewAnswer Refusal(CrewMemory memory) => Refused(
        problems.Count == 1 ? "Nothing kept: one thing is not clear." : Wordings.Say($"Nothing kept: {problems.Count} things are not clear."),
        [.. ProblemLines(), .. problems.Count > MostProblems ? [new(CrewLineKind.Plain, Wordings.Say($"And {problems.Count - MostProblems} more."))] : Array.Empty<CrewLine>()], memory);

    /// <summary>Nothing was kept, with the lines that say why and everything written.</summary>
    public CrewAnswer Refused(string headline, IReadOnlyList<CrewLine> why, CrewMemory memory) => new()
    {
        Outcome = CrewOutcome.Refused,
        Intent = CrewIntent.Keep,
        Understood = form.Title,
        Headline = headline,
        Lines = [.. why, new(CrewLineKind.Plain, "What you wrote, to copy:"), .. Written()],
        Private = true,
        Memory = memory,
    };

    // Field by field, as they stand in the form; the hint of a field behind its last line.
    private IEnumerable<CrewLine> ProblemLines()
    {
        foreach (IGrouping<string, (string Field, string Sentence, string Hint)> field in problems.Take(MostProblems).GroupBy(p => p.Field))
        {
            string hints = string.Join(' ', field.Select(p => p.Hint).Where(h => h.Length > 0).Distinct());
            (string Field, string Sentence, string Hint)[] all = [.. field];
            for (int i = 0; i < all.Length; i++)
            {
                string hint = i == all.Length - 1 && hints.Length > 0 ? " " + hints : "";
                yield return new(CrewLineKind.Refused, $"{Label(field.Key)}: {all[i].Sentence}{hint}");
            }
        }
    }

    private IEnumerable<CrewLine> Written()
    {
        foreach (CrewFormField field in form.Fields)
        {
            IReadOnlyList<string> lines = Lines(field.Id);
            if (lines.Count == 1)
            {
                yield return new(CrewLineKind.Plain, $"{field.Label}: {lines[0]}");
            }
            else if (lines.Count > 1)
            {
                yield return new(CrewLineKind.Plain, $"{field.Label}:");
                foreach (string line in lines)
                {
                    yield return new(CrewLineKind.Plain, line);
                }
            }
        }
    }

    private string Label(string fieldId) => form.Fields.FirstOrDefault(f => f.Id == fieldId)?.Label ?? fieldId;

    private string Raw(string fieldId) => entry.Values.GetValueOrDefault(fieldId) ?? "";
}
