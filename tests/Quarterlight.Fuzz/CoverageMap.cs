using System.Numerics;
using System.Reflection;
using System.Runtime.InteropServices;

namespace Quarterlight.Fuzz;

/// <summary>
/// What instrumented code writes while it runs: an entry counts how often control went from one branch to a certain next one. How
/// often is told apart by powers of two. Two edges can share an entry; then the second one goes unseen.
/// </summary>
internal sealed unsafe class CoverageMap : IDisposable
{
    /// <summary>Entries; the instrumentation addresses so many.</summary>
    public const int Entries = 65_536;

    // By reflection: SharpFuzz takes an assembly that names this type for one it has instrumented already, and the toy lives in this one.
    private static readonly Type Trace = Type.GetType("SharpFuzz.Common.Trace, SharpFuzz.Common", throwOnError: true)!;
    private static readonly FieldInfo SharedMemory = Trace.GetField("SharedMem") ?? throw new MissingFieldException("SharedMem");
    private static readonly FieldInfo PreviousLocation = Trace.GetField("PrevLocation") ?? throw new MissingFieldException("PrevLocation");

    private readonly byte* _hits = (byte*)NativeMemory.AllocZeroed(Entries);
    private readonly byte[] _seen = new byte[Entries];

    /// <summary>Makes the map and hands it to the instrumentation; instrumented code must not run before.</summary>
    public CoverageMap() => SharedMemory.SetValue(null, Pointer.Box(_hits, typeof(byte*)));

    /// <summary>Edges reached by what was kept.</summary>
    public int Edges { get; private set; }

    private ReadOnlySpan<byte> Hits => new(_hits, Entries);

    /// <summary>Forgets the last run.</summary>
    public void Begin()
    {
        new Span<byte>(_hits, Entries).Clear();
        PreviousLocation.SetValue(null, 0);
    }

    /// <summary>What the last run reached and nothing kept did before; null when nothing, which is the rule.</summary>
    /// <param name="ofEdgesOnly">Leaves out edges that are known and were only passed another number of times.</param>
    public List<(int Entry, byte Bit)>? News(bool ofEdgesOnly = false)
    {
        List<(int, byte)>? news = null;
        ReadOnlySpan<ulong> eights = MemoryMarshal.Cast<byte, ulong>(Hits);
        for (int i = 0; i < eights.Length; i++)
        {
            if (eights[i] == 0)
            {
                continue;
            }

            for (int entry = 8 * i; entry < (8 * i) + 8; entry++)
            {
                byte bit = BitOf(_hits[entry]);
                if ((_seen[entry] & bit) != bit && (!ofEdgesOnly || _seen[entry] == 0))
                {
                    (news ??= []).Add((entry, bit));
                }
            }
        }

        return news;
    }

    /// <summary>True when the last run reached all of these too.</summary>
    public bool Reached(List<(int Entry, byte Bit)> news) => news.TrueForAll(n => BitOf(_hits[n.Entry]) == n.Bit);

    /// <summary>Counts the last run as known.</summary>
    public void Keep()
    {
        foreach ((int entry, byte bit) in News() ?? [])
        {
            Edges += _seen[entry] == 0 ? 1 : 0;
            _seen[entry] |= bit;
        }
    }

    /// <summary>Forgets everything.</summary>
    public void Reset()
    {
        Array.Clear(_seen);
        Edges = 0;
    }

    public void Dispose() => NativeMemory.Free(_hits);

    private static byte BitOf(byte count) => count == 0 ? (byte)0 : (byte)(1 << BitOperations.Log2(count));
}
