namespace LabPipeline.Intake.Tests.Text;

/// <summary>Hands out its bytes a few at a time, as a slow share does.</summary>
internal sealed class TricklingStream(byte[] bytes, int chunk) : MemoryStream(bytes)
{
    public override int Read(byte[] buffer, int offset, int count) => base.Read(buffer, offset, Math.Min(count, chunk));

    public override int Read(Span<byte> buffer) => base.Read(buffer[..Math.Min(buffer.Length, chunk)]);
}
