namespace Quarterlight.Store;

/// <summary>Keeps a second owner out of a data folder; the operating system lets go of it when the process ends.</summary>
internal sealed class StoreLock : IDisposable
{
    private readonly FileStream _file;

    private StoreLock(FileStream file) => _file = file;

    /// <summary>Takes the folder.</summary>
    /// <exception cref="StoreInUseException">Somebody has it.</exception>
    public static StoreLock Take(string folder)
    {
        try
        {
            return new StoreLock(new FileStream(Path.Combine(folder, "quarterlight.lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException inner)
        {
            throw new StoreInUseException(folder, inner);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => _file.Dispose();
}
