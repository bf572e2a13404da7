using Quarterlight.Crew.Commands;

namespace Quarterlight.CrewBot;

/// <summary>Fills in a form at a terminal, a field at a time.</summary>
internal static class FormFiller
{
    private const string Leave = "cancel";

    /// <summary>What was written; null when it was left or the input ended.</summary>
    /// <param name="form">The form.</param>
    /// <param name="input">Where lines come from.</param>
    /// <param name="output">Where fields are shown.</param>
    /// <param name="cancellation">Ends it.</param>
    public static async Task<CrewFormEntry?> FillAsync(CrewForm form, TextReader input, TextWriter output, CancellationToken cancellation)
    {
        await output.WriteLineAsync($"{form.Title}. An empty line keeps what is shown, \"{Leave}\" leaves.").ConfigureAwait(false);
        var values = new Dictionary<string, string>();
        foreach (CrewFormField field in form.Fields)
        {
            string hint = field.Hint.Length > 0 ? $" ({field.Hint})" : "", shown = field.Value.Length == 0 ? "" : field.Value.Contains('\n', StringComparison.Ordinal) ? $"\n{field.Value}\n" : $" [{field.Value}]";
            await output.WriteLineAsync($"{field.Label}{(field.Required ? "" : ", if any")}{hint}{(field.SeveralLines ? ", several lines, then an empty one" : "")}:{shown}").ConfigureAwait(false);
            if (await LinesAsync(field, input, cancellation).ConfigureAwait(false) is not { } written)
            {
                return null;
            }

            values[field.Id] = written.Length == 0 ? field.Value : written;
        }

        return new CrewFormEntry(form.Id, values);
    }

    private static async Task<string?> LinesAsync(CrewFormField field, TextReader input, CancellationToken cancellation)
    {
        var lines = new List<string>();
        do
        {
            string? line = await input.ReadLineAsync(cancellation).ConfigureAwait(false);
            if (line is null || line.Trim() == Leave)
            {
                return null;
            }

            if (string.IsNullOrWhiteSpace(line))
            {
                break;
            }

            lines.Add(line);
        }
        while (field.SeveralLines);
        return string.Join('\n', lines);
    }
}
