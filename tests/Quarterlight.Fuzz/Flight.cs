using System.IO.MemoryMappedFiles;

namespace Quarterlight.Fuzz;

/// <summary>
/// What the fuzzing process has under way, in a file mapped into memory: it outlives the process, so that an input that kills it
/// or never comes back is known.
/// </summary>
internal sealed class Flight : IDisposable
{
    /// <summary>Largest input.</summary>
    public const int MostBytes = 1 << 17;

    private const int InputAt = 64;
    private readonly MemoryMappedFile _file;
    private readonly MemoryMappedViewAccessor _view;

    /// <summary>Opens the file, and makes it when it is not there.</summary>
    public Flight(string path)
    {
        _file = MemoryMappedFile.CreateFromFile(path, FileMode.OpenOrCreate, null, InputAt + MostBytes);
        _view = _file.CreateViewAccessor();
    }

    /// <summary>Inputs taken so far.</summary>
    public long Executions { get => _view.ReadInt64(0); private set => _view.Write(0, value); }

    /// <summary>Edges known after the inputs it began with.</summary>
    public int EdgesAtStart { get => _view.ReadInt32(12); set => _view.Write(12, value); }

    /// <summary>Edges known.</summary>
    public int Edges { get => _view.ReadInt32(16); set => _view.Write(16, value); }

    /// <summary>Inputs kept because they reached something new.</summary>
    public int Kept { get => _view.ReadInt32(20); set => _view.Write(20, value); }

    /// <summary>Longest time one input took, in ms.</summary>
    public long SlowestMs { get => _view.ReadInt64(24); set => _view.Write(24, value); }

    /// <summary>Most bytes one input made the process allocate.</summary>
    public long MostAllocated { get => _view.ReadInt64(32); set => _view.Write(32, value); }

    /// <summary>1 once the process has done all it was asked.</summary>
    public bool IsFinished { get => _view.ReadInt32(40) != 0; set => _view.Write(40, value ? 1 : 0); }

    /// <summary>The input under way.</summary>
    public byte[] Input
    {
        get
        {
            byte[] input = new byte[Math.Clamp(_view.ReadInt32(8), 0, MostBytes)];
            _view.ReadArray(InputAt, input, 0, input.Length);
            return input;
        }
    }

    /// <summary>Notes an input before it is taken.</summary>
    public void Start(byte[] input)
    {
        _view.Write(8, input.Length);
        _view.WriteArray(InputAt, input, 0, input.Length);
        Executions++;
    }

    public void Dispose()
    {
        _view.Dispose();
        _file.Dispose();
    }
}
