using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>Writes pictures of answers as files.</summary>
public sealed class PictureFolder
{
    private readonly string folder;

    /// <summary>A folder, made when the first picture is written.</summary>
    public PictureFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrEmpty(folder);
        this.folder = folder;
    }

    /// <summary>Writes each picture whole or not at all, over one of the same name. A file name of null stands for a picture that could not be written.</summary>
    public async Task<IReadOnlyList<string?>> WriteAsync(CrewAnswer answer, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var files = new List<string?>();
        foreach (CrewPicture picture in answer.Pictures)
        {
            files.Add(await WriteOneAsync(picture, cancellation).ConfigureAwait(false));
        }

        return files;
    }

    private async Task<string?> WriteOneAsync(CrewPicture picture, CancellationToken cancellation)
    {
        string path = Path.Combine(folder, Path.GetFileName(picture.FileName)), partial = path + ".part";
        try
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllBytesAsync(partial, picture.Png, cancellation).ConfigureAwait(false);
            File.Move(partial, path, overwrite: true);
            return path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            // The answer stands without its picture: the text alternative says the same.
            return null;
        }
    }
}
