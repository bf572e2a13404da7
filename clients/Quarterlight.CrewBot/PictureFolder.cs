using Quarterlight.Crew;

namespace Quarterlight.CrewBot;

/// <summary>Writes pictures and files of answers.</summary>
public sealed class PictureFolder
{
    private readonly string folder;

    /// <summary>A folder, made when the first of them is written.</summary>
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
            files.Add(await WriteOneAsync(picture.FileName, picture.Png, cancellation).ConfigureAwait(false));
        }

        return files;
    }

    /// <summary>Writes the other files of an answer beside the pictures, each whole or not at all.</summary>
    public async Task<IReadOnlyList<string?>> WriteFilesAsync(CrewAnswer answer, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var files = new List<string?>();
        foreach (CrewFile file in answer.Files)
        {
            files.Add(await WriteOneAsync(file.FileName, file.Bytes, cancellation).ConfigureAwait(false));
        }

        return files;
    }

    private async Task<string?> WriteOneAsync(string fileName, ReadOnlyMemory<byte> bytes, CancellationToken cancellation)
    {
        string path = Path.Combine(folder, Path.GetFileName(fileName)), partial = path + ".part";
        try
        {
            Directory.CreateDirectory(folder);
            await File.WriteAllBytesAsync(partial, bytes, cancellation).ConfigureAwait(false);
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
