using System.Buffers;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Reading;

/// <summary>A sliding window of decoded characters: always holds the row being read, never more than a row and a chunk.</summary>
internal sealed class CharWindow : IDisposable
{
    private const int Chunk = 32 * 1024;

    private readonly StrictDecoder _decoder;
    private readonly CancellationToken _cancellationToken;
    private readonly char[] _chars;
    private int _start;
    private int _end;

    public CharWindow(StrictDecoder decoder, int longestRow, CancellationToken cancellationToken)
    {
        _decoder = decoder;
        _cancellationToken = cancellationToken;
        _chars = ArrayPool<char>.Shared.Rent(longestRow + Chunk);
    }

    /// <summary>No more characters will come: the stream has ended or cannot be decoded further.</summary>
    public bool Ended { get; private set; }

    public DecodeProblem Problem => _decoder.Problem;

    public long ProblemOffset => _decoder.ProblemOffset;

    /// <summary>The last character decoded so far; '\0' before the first.</summary>
    public char Last { get; private set; }

    public ReadOnlySpan<char> Unread => _chars.AsSpan(_start, _end - _start);

    /// <summary>Where <see cref="Unread"/> begins; with <see cref="At"/> it reaches a row already passed, until <see cref="More"/> is called.</summary>
    public int Position => _start;

    public Span<char> At(int position, int length) => _chars.AsSpan(position, length);

    public void Advance(int count) => _start += count;

    /// <summary>Makes <see cref="Unread"/> longer; false when it cannot be, because the stream has ended or the window is full.</summary>
    public bool More()
    {
        if (Ended)
        {
            return false;
        }

        _cancellationToken.ThrowIfCancellationRequested();
        Slide();
        if (_chars.Length - _end < Chunk / 2)
        {
            return false;
        }

        var count = _decoder.Read(_chars.AsSpan(_end));
        if (count == 0)
        {
            Ended = true;
            return false;
        }

        _end += count;
        Last = _chars[_end - 1];
        return true;
    }

    public void Dispose() => ArrayPool<char>.Shared.Return(_chars);

    private void Slide()
    {
        if (_start > 0)
        {
            _chars.AsSpan(_start, _end - _start).CopyTo(_chars);
            _end -= _start;
            _start = 0;
        }
    }
}
