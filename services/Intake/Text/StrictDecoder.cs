using System.Buffers;

namespace LabPipeline.Intake.Text;

/// <summary>Decodes a stream in the declared encoding, chunk by chunk; stops for good at the first byte that does not belong.</summary>
public sealed class StrictDecoder : IDisposable
{
    private const int ChunkBytes = 32 * 1024;

    private static readonly SearchValues<char> Refused = SearchValues.Create('\0', '\uFFFD');

    private readonly Stream _stream;
    private readonly byte[] _bytes = ArrayPool<byte>.Shared.Rent(ChunkBytes);
    private TextEncoding _encoding;
    private int _held;
    private long _consumed;
    private bool _started;
    private bool _streamEnded;

    public StrictDecoder(Stream stream, TextEncoding encoding)
    {
        _stream = stream;
        _encoding = encoding;
    }

    public DecodeProblem Problem { get; private set; }

    /// <summary>Offset in the stream of the first byte of what <see cref="Problem"/> is about.</summary>
    public long ProblemOffset { get; private set; }

    /// <summary>Decodes some more characters into <paramref name="target"/>; 0 at the end of the stream or at a problem.</summary>
    public int Read(Span<char> target)
    {
        if (Problem != DecodeProblem.None || (!_started && !Start()))
        {
            return 0;
        }

        while (true)
        {
            Fill();
            if (_held == 0)
            {
                return 0;
            }

            var problem = CharacterCodes.Decode(_encoding, _bytes.AsSpan(0, _held), target, _streamEnded, out var read, out var written);
            var kept = Examine(target[..written]);
            if (Problem == DecodeProblem.None && problem != DecodeProblem.None)
            {
                Fail(problem, read);
            }

            Consume(read);
            if (kept > 0 || Problem != DecodeProblem.None)
            {
                return kept;
            }
        }
    }

    public void Dispose() => ArrayPool<byte>.Shared.Return(_bytes);

    private bool Start()
    {
        _started = true;
        while (_held < 4 && !_streamEnded)
        {
            Fill();
        }

        var mark = ByteOrderMark.Find(_bytes.AsSpan(0, _held));
        if (mark is null)
        {
            if (_encoding == TextEncoding.Utf16)
            {
                Fail(DecodeProblem.MarkMissing, 0);
            }

            return Problem == DecodeProblem.None;
        }

        if (mark.Value != _encoding && !(_encoding == TextEncoding.Utf16 && mark.Value != TextEncoding.Utf8))
        {
            Fail(DecodeProblem.MarkContradictsEncoding, 0);
            return false;
        }

        _encoding = mark.Value;
        Consume(ByteOrderMark.Length(_encoding));
        return true;
    }

    private void Fill()
    {
        if (_streamEnded || _held == _bytes.Length)
        {
            return;
        }

        var read = _stream.Read(_bytes, _held, _bytes.Length - _held);
        _held += read;
        _streamEnded = read == 0;
    }

    private int Examine(ReadOnlySpan<char> decoded)
    {
        var index = decoded.IndexOfAny(Refused);
        if (index < 0)
        {
            return decoded.Length;
        }

        Fail(
            decoded[index] == '\0' ? DecodeProblem.NullCharacter : DecodeProblem.ReplacementCharacter,
            CharacterCodes.ByteCount(_encoding, decoded[..index]));
        return index;
    }

    private void Fail(DecodeProblem problem, int bytesAhead)
    {
        Problem = problem;
        ProblemOffset = _consumed + bytesAhead;
    }

    private void Consume(int count)
    {
        _consumed += count;
        _held -= count;
        _bytes.AsSpan(count, _held).CopyTo(_bytes);
    }
}
