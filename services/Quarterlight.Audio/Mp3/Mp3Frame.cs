using NLayer;

namespace Quarterlight.Audio.Mp3;

/// <summary>One frame as the decoder wants it: the bits behind header and checksum.</summary>
internal sealed class Mp3Frame : IMpegFrame
{
    private const int MostBytes = 1500;
    private readonly byte[] _bytes = new byte[MostBytes];
    private Mp3Header _header;
    private int _at;
    private ulong _bucket;
    private int _bits;

    public int SampleRate => _header.SampleRateHz;

    public int SampleRateIndex => _header.SampleRateIndex;

    public int FrameLength { get; private set; }

    public int BitRate => _header.BitRate;

    public MpegVersion Version => _header.Version;

    public MpegLayer Layer => MpegLayer.LayerIII;

    public MpegChannelMode ChannelMode => _header.ChannelMode;

    public int ChannelModeExtension => _header.ChannelModeExtension;

    public int SampleCount => _header.SampleCount;

    public int BitRateIndex => _header.BitRateIndex;

    public bool IsCopyrighted => false;

    public bool HasCrc => _header.HasCrc;

    public bool IsCorrupted => false;

    /// <summary>Takes the next frame.</summary>
    public void Load(Mp3Header header, ReadOnlySpan<byte> frame)
    {
        _header = header;
        frame.CopyTo(_bytes);
        FrameLength = frame.Length;
        Reset();
    }

    public void Reset()
    {
        _at = Mp3Header.Bytes + (HasCrc ? 2 : 0);
        _bucket = 0;
        _bits = 0;
    }

    public int ReadBits(int bitCount)
    {
        while (_bits < bitCount)
        {
            if (_at >= FrameLength)
            {
                throw new EndOfStreamException();
            }

            _bucket = _bucket << 8 | _bytes[_at++];
            _bits += 8;
        }

        _bits -= bitCount;
        return (int)(_bucket >> _bits & ((1UL << bitCount) - 1));
    }
}
