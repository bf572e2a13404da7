using System.CommandLine;
using Quarterlight.Audio;
using Quarterlight.Crew.Demo;
using Quarterlight.Crew.Language;
using Quarterlight.Training.Card;
using Quarterlight.Training.Learning;
using Quarterlight.Training.Reading;

namespace Quarterlight.Training;

/// <summary>The command line: <c>train</c>, <c>score</c>, <c>compare</c>, <c>card</c>, <c>crew-train</c>, <c>crew-score</c>, <c>demo-pack</c>.</summary>
public static class TrainingProgram
{
    /// <summary>Exit code: done.</summary>
    public const int Done = 0;

    /// <summary>Exit code: something is missing or damaged.</summary>
    public const int Failed = 1;

    private static readonly Option<string> s_clips = new("--clips") { Description = "Folder of labelled clips with a MANIFEST.csv.", DefaultValueFactory = _ => Path.Combine("..", "shared", "clips") };
    private static readonly Option<string?> s_own = new("--own") { Description = "Folder of your own labelled clips: one folder a combination of tags, such as engine, engine+wind, ac, clean, quiet, other." };
    private static readonly Option<string> s_out = new("--out") { Description = "Where the model goes.", DefaultValueFactory = _ => Path.Combine("services", "Quarterlight.Tagger", "Model", "tagger.zip") };
    private static readonly Option<string> s_docs = new("--docs") { Description = "Folder the card goes to, in models and pictures.", DefaultValueFactory = _ => "docs" };
    private static readonly Option<string?> s_cache = new("--cache") { Description = "File that keeps the features between commands. Delete it when clips or code change." };
    private static readonly Option<bool> s_each = new("--each") { Description = "Leaves out one recording at a time instead of a tenth of them; takes about eight times as long." };

    private static readonly Option<string> s_examples = new("--examples") { Description = "File of labelled questions.", DefaultValueFactory = _ => Path.Combine("clients", "Quarterlight.Crew", "Language", "crew-examples.txt") };
    private static readonly Option<string> s_weights = new("--weights") { Description = "Where the weights go.", DefaultValueFactory = _ => Path.Combine("clients", "Quarterlight.Crew", "Language", "crew-intents.bin") };

    private static readonly Option<string> s_demo = new("--demo") { Description = "Folder of the demo data.", DefaultValueFactory = _ => Path.Combine("clients", "Quarterlight.Crew", "Demo") };

    /// <summary>Runs the program.</summary>
    /// <param name="args">Command line.</param>
    /// <param name="output">Where results go.</param>
    /// <param name="error">Where complaints go.</param>
    /// <param name="cancellation">Ends the program.</param>
    /// <returns>Exit code.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(error);
        var root = new RootCommand("Trains, scores and describes the sound tagger, and the model that reads what crews ask.")
        {
            Make("train", "Trains the model that ships and writes it.", [s_clips, s_own, s_cache, s_out], TrainAsync),
            Make("score", "Scores the shipped learners on recordings they have not heard.", [s_clips, s_own, s_cache, s_each], ScoreAsync),
            Make("compare", "Compares all learners and a plain rule.", [s_clips, s_own, s_cache], CompareAsync),
            Make("card", "Writes the model card with its pictures.", [s_clips, s_cache, s_docs], CardAsync),
            Make("crew-train", "Trains the model that reads what crews ask and writes its weights.", [s_examples, s_weights], TrainReadingAsync),
            Make("crew-score", "Scores that model on examples it has not seen.", [s_examples], ScoreReadingAsync),
            Make("demo-pack", "Packs the demo data as written into what ships.", [s_demo], PackDemoAsync),
        };
        return await root.Parse(args).InvokeAsync(new InvocationConfiguration { Output = output, Error = error }, cancellation).ConfigureAwait(false);

        Command Make(string name, string description, Option[] options, Func<ParseResult, TextWriter, CancellationToken, Task> run)
        {
            var command = new Command(name, description);
            foreach (Option option in options)
            {
                command.Options.Add(option);
            }

            command.SetAction(async (parsed, c) =>
            {
                try
                {
                    await run(parsed, output, c).ConfigureAwait(false);
                    return Done;
                }
                catch (Exception e) when (e is IOException or UnauthorizedAccessException or FormatException or AudioFaultException)
                {
                    await error.WriteLineAsync(options.Contains(s_clips) ? $"{e.Message} The clips are looked for in {parsed.GetValue(s_clips)}; name another folder with --clips." : e.Message).ConfigureAwait(false);
                    return Failed;
                }
            });
            return command;
        }
    }

    private static async Task<Study> PrepareAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        await output.WriteLineAsync("Reading, making and mixing sounds.").ConfigureAwait(false);
        return await Study.PrepareAsync(parsed.GetValue(s_clips)!, parsed.CommandResult.Command.Options.Contains(s_own) ? parsed.GetValue(s_own) : null, parsed.GetValue(s_cache), cancellation).ConfigureAwait(false);
    }

    private static async Task TrainAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        Study study = await PrepareAsync(parsed, output, cancellation).ConfigureAwait(false);
        await output.WriteLineAsync("Scoring held-out recordings, for the calibration.").ConfigureAwait(false);
        IReadOnlyList<ScoredCase>[] members = [.. Study.Shipped.Select(study.Score)];
        await output.WriteLineAsync("Training on everything that may train.").ConfigureAwait(false);
        string path = parsed.GetValue(s_out)!;
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        FileStream file = File.Create(path);
        await using (file.ConfigureAwait(false))
        {
            Trainer.Write(Study.Shipped, study.Training, study.Sounds, members, file);
        }

        await output.WriteLineAsync(ScoreTable.Full(Study.Judge(members))).ConfigureAwait(false);
        await output.WriteLineAsync($"Wrote {path}. Build again to ship it.").ConfigureAwait(false);
    }

    private static async Task ScoreAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        Study study = await PrepareAsync(parsed, output, cancellation).ConfigureAwait(false);
        bool each = parsed.GetValue(s_each);
        IReadOnlyList<JudgedCase> judged = Study.Judge([.. Study.Shipped.Select(l => each ? HeldOut.Score(l, study.Training, study.Folds, true) : study.Score(l))]);
        await output.WriteLineAsync(each ? "One recording left out at a time." : $"{Mixing.TestCases.Blocks} blocks of recordings left out, one at a time.").ConfigureAwait(false);
        await output.WriteLineAsync(ScoreTable.Full(judged)).ConfigureAwait(false);
    }

    private static async Task CompareAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        Study study = await PrepareAsync(parsed, output, cancellation).ConfigureAwait(false);
        foreach ((string name, IReadOnlyList<JudgedCase> judged) in CardFigures.Compare(study, out _))
        {
            await output.WriteLineAsync($"== {name}\n{ScoreTable.Full(judged)}").ConfigureAwait(false);
        }
    }

    private static async Task CardAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        Study study = await PrepareAsync(parsed, output, cancellation).ConfigureAwait(false);
        await output.WriteLineAsync("Scoring all learners on held-out recordings.").ConfigureAwait(false);
        var figures = CardFigures.Work(study);
        string docs = parsed.GetValue(s_docs)!;
        Directory.CreateDirectory(Path.Combine(docs, "models"));
        Directory.CreateDirectory(Path.Combine(docs, "pictures"));
        await File.WriteAllTextAsync(Path.Combine(docs, "models", "tagger-card.md"), CardText.Write(figures), cancellation).ConfigureAwait(false);
        foreach ((string name, byte[] png) in CardPictures.All(figures))
        {
            await File.WriteAllBytesAsync(Path.Combine(docs, "pictures", name), png, cancellation).ConfigureAwait(false);
        }

        await output.WriteLineAsync($"Wrote the card to {docs}.").ConfigureAwait(false);
    }

    private static async Task TrainReadingAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        using var weights = new MemoryStream();
        ReadingStudy.Train(await ExamplesAsync(parsed, cancellation).ConfigureAwait(false), weights);
        string to = parsed.GetValue(s_weights)!;
        await File.WriteAllBytesAsync(to, weights.ToArray(), cancellation).ConfigureAwait(false);
        await output.WriteLineAsync($"Wrote {weights.Length} bytes to {to}.").ConfigureAwait(false);
    }

    private static async Task ScoreReadingAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation) =>
        await output.WriteLineAsync(ReadingStudy.Score(await ExamplesAsync(parsed, cancellation).ConfigureAwait(false))).ConfigureAwait(false);

    private static async Task<IReadOnlyList<IntentExample>> ExamplesAsync(ParseResult parsed, CancellationToken cancellation) =>
        IntentExamples.Parse(await File.ReadAllLinesAsync(parsed.GetValue(s_examples)!, cancellation).ConfigureAwait(false));

    private static async Task PackDemoAsync(ParseResult parsed, TextWriter output, CancellationToken cancellation)
    {
        string folder = parsed.GetValue(s_demo)!;
        foreach ((string name, byte[] bytes) in DemoPack.Pack(folder))
        {
            await File.WriteAllBytesAsync(Path.Combine(folder, name), bytes, cancellation).ConfigureAwait(false);
        }

        await output.WriteLineAsync($"Packed what is in {folder}. Build again to ship it.").ConfigureAwait(false);
    }
}
