using System.Globalization;

namespace Quarterlight.Discord.Gateway;

/// <summary>Keeps the times in a file, one a line in seconds since 1970. Written aside and moved into place, so that it is whole or the old one.</summary>
/// <param name="path">The file, of one bot token and one process.</param>
public sealed class FileIdentifyLedger(string path) : IIdentifyLedger
{
    /// <inheritdoc/>
    /// <exception cref="InvalidDataException">The file holds something else.</exception>
    public async Task<IReadOnlyList<DateTimeOffset>> ReadAsync(CancellationToken cancellation)
    {
        if (!File.Exists(path))
        {
            return [];
        }

        string[] lines = await File.ReadAllLinesAsync(path, cancellation).ConfigureAwait(false);
        return [.. lines.Where(l => l.Length > 0).Select(Parse)];
    }

    /// <inheritdoc/>
    public async Task WriteAsync(IReadOnlyList<DateTimeOffset> identifies, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(identifies);
        string aside = path + ".new";
        if (Path.GetDirectoryName(path) is { Length: > 0 } folder)
        {
            Directory.CreateDirectory(folder);
        }

        FileStream file = new(aside, FileMode.Create, FileAccess.Write, FileShare.None);
        await using (file.ConfigureAwait(false))
        {
            string text = string.Concat(identifies.Select(i => i.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture) + "\n"));
            await file.WriteAsync(System.Text.Encoding.ASCII.GetBytes(text), cancellation).ConfigureAwait(false);
            file.Flush(flushToDisk: true);
        }

        File.Move(aside, path, overwrite: true);
    }

    private static DateTimeOffset Parse(string line) => long.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out long seconds) && seconds < 253_402_300_800
        ? DateTimeOffset.FromUnixTimeSeconds(seconds)
        : throw new InvalidDataException("The ledger of identifies holds something else than times.");
}
