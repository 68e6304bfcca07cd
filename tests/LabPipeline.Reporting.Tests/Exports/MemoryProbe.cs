using System.Text;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>Throws lines away and notes once, at a given line, how much managed memory is held.</summary>
internal sealed class MemoryProbe(int atLine) : TextWriter
{
    private int _lines;

    public long Held { get; private set; }

    public override Encoding Encoding => Encoding.UTF8;

    public override Task WriteAsync(StringBuilder? value, CancellationToken cancellationToken = default)
    {
        if (++_lines == atLine)
        {
            Held = GC.GetTotalMemory(forceFullCollection: true);
        }

        return Task.CompletedTask;
    }
}
