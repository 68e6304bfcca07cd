using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Rows of fixed-width text: every line reaches the end of its last field, and nothing stands between the fields.</summary>
internal sealed class FixedWidthRows : IRowSource
{
    private readonly RowFeed _feed;
    private readonly IReadOnlyList<FixedField> _fields;
    private readonly int _skipped;
    private readonly int _width;
    private readonly bool[] _covered;
    private int _rowStart;

    public FixedWidthRows(RowFeed feed, TextRule text)
    {
        _feed = feed;
        _fields = text.Fields;
        _skipped = text.SkipLines;
        Columns = [.. text.Fields.Select(field => field.Name)];
        _width = text.Fields.Max(field => field.Start - 1 + field.Length);
        _covered = new bool[_width];
        foreach (var field in text.Fields)
        {
            _covered.AsSpan(field.Start - 1, field.Length).Fill(true);
        }
    }

    public IReadOnlyList<string> Columns { get; }

    public int HeaderLine => 0;

    public int Line { get; private set; }

    public Fault? RowFault { get; private set; }

    public bool Open()
    {
        for (var line = 0; line < _skipped && _feed.SkipLine(); line++)
        {
        }

        return true;
    }

    public bool Next()
    {
        RowFault = null;
        if (!_feed.SeekRow())
        {
            return false;
        }

        Line = _feed.Line;
        var length = _feed.LineLength(out var lineEnd);
        if (length < 0)
        {
            return false;
        }

        _rowStart = _feed.Window.Position;
        RowFault = Examine(_feed.Window.At(_rowStart, length));
        _feed.Pass(length + lineEnd, lineEnd);
        return true;
    }

    public ReadOnlySpan<char> Cell(int column) =>
        CellText.Trim(_feed.Window.At(_rowStart + _fields[column].Start - 1, _fields[column].Length));

    public CellPlace PlaceOf(int column) => new(Line, column + 1, Columns[column]);

    private Fault? Examine(ReadOnlySpan<char> line)
    {
        line = line.TrimEnd('\r');
        if (line.Length < _width)
        {
            return FaultCatalogue.ShortLine(Line, line.Length, _width);
        }

        for (var index = 0; index < line.Length; index++)
        {
            if ((index >= _width || !_covered[index]) && line[index] != ' ')
            {
                return FaultCatalogue.TextBetweenFields(Line, line[index..]);
            }
        }

        return null;
    }
}
