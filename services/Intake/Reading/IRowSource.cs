namespace LabPipeline.Intake.Reading;

/// <summary>A file as rows of named cells, whatever its layout. Spans stay valid until the next call of <see cref="Next"/>.</summary>
internal interface IRowSource
{
    /// <summary>Column names in the order of their numbers; known once <see cref="Open"/> succeeded.</summary>
    IReadOnlyList<string> Columns { get; }

    /// <summary>Line on which the column names stand; 0 when the profile states them.</summary>
    int HeaderLine { get; }

    /// <summary>Line on which the current row begins.</summary>
    int Line { get; }

    /// <summary>What is wrong with the shape of the current row, so that its cells cannot be told apart.</summary>
    Fault? RowFault { get; }

    /// <summary>Finds the columns; false when the file cannot be read on.</summary>
    bool Open();

    /// <summary>Goes to the next row; false at the end, or where the file cannot be read on.</summary>
    bool Next();

    /// <summary>The cell without blanks around it; empty when the row has none.</summary>
    ReadOnlySpan<char> Cell(int column);

    CellPlace PlaceOf(int column);
}
