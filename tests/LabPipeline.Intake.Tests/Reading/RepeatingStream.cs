using System.Text;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>A header and the same row many times, without holding them.</summary>
internal sealed class RepeatingStream(string header, string row, int rows) : Stream
{
    private readonly byte[] _row = Encoding.UTF8.GetBytes(row);
    private byte[] _current = Encoding.UTF8.GetBytes(header);
    private int _at;
    private int _left = rows;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        var read = 0;
        while (read < count && (_at < _current.Length || _left > 0))
        {
            if (_at == _current.Length)
            {
                _current = _row;
                _at = 0;
                _left--;
            }

            var part = Math.Min(count - read, _current.Length - _at);
            _current.AsSpan(_at, part).CopyTo(buffer.AsSpan(offset + read));
            _at += part;
            read += part;
        }

        return read;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
