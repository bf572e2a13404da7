using Quarterlight.Fuzz;

FuzzOptions options;
try
{
    options = FuzzOptions.Parse(args);
}
catch (Exception wrong) when (wrong is ArgumentException or FormatException or OverflowException)
{
    await Console.Error.WriteLineAsync($"{wrong.Message}. {FuzzOptions.Usage}");
    return 2;
}

if (options.Replay is { } file)
{
    Console.WriteLine(await new ReaderTarget(options.Ffmpeg).ReadAsync(await File.ReadAllBytesAsync(file), [int.MaxValue], 700));
    return 0;
}

if (options.Corpus is null && !options.Planted)
{
    await Console.Error.WriteLineAsync(FuzzOptions.Usage);
    return 2;
}

if (options.IsChild)
{
    FuzzChild.Run(options);
    return 0;
}

(int findings, string summary) = await new FuzzRun(options).RunAsync();
Console.WriteLine(summary);
return findings == 0 ? 0 : 1;
