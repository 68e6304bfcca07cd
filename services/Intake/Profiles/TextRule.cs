using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Profiles;

/// <summary>How the bytes become rows of cells.</summary>
public sealed record TextRule
{
    public required TextEncoding Encoding { get; init; }

    public required TextLayout Layout { get; init; }

    public required NumberFormat Numbers { get; init; }

    public char Delimiter { get; init; } = ',';

    /// <summary>Null when quotes are ordinary characters.</summary>
    public char? Quote { get; init; } = '"';

    /// <summary>Line of the column names, counted from 1; 0 when the file has none and <see cref="Columns"/> names them.</summary>
    public int HeaderLine { get; init; }

    /// <summary>Lines left unread after the header line, or at the start of a file without one.</summary>
    public int SkipLines { get; init; }

    /// <summary>Lines that begin with this are left unread; null when there are none.</summary>
    public string? CommentPrefix { get; init; }

    /// <summary>Names of the columns by position, for delimited files without a header line.</summary>
    public IReadOnlyList<string> Columns { get; init; } = [];

    public IReadOnlyList<FixedField> Fields { get; init; } = [];

    /// <summary>What stands between key and value, for key-value blocks.</summary>
    public string KeySeparator { get; init; } = "=";

    /// <summary>The line that ends a block; empty for a blank line.</summary>
    public string BlockSeparator { get; init; } = "";
}
