namespace LabPipeline.Reporting.Labels;

/// <summary>The geometry of a sheet of labels, in millimetres, and of the symbol on each.</summary>
public sealed record LabelSheet
{
    public required string Name { get; init; }

    public required LabelSymbol Symbol { get; init; }

    /// <summary>Width of the narrowest bar or of one square of the symbol (X dimension).</summary>
    public required double Module { get; init; }

    public required double PageWidth { get; init; }

    public required double PageHeight { get; init; }

    public required double MarginLeft { get; init; }

    public required double MarginTop { get; init; }

    public required int Columns { get; init; }

    public required int Rows { get; init; }

    public required double LabelWidth { get; init; }

    public required double LabelHeight { get; init; }

    public required double GapAcross { get; init; }

    public required double GapDown { get; init; }

    /// <summary>Room kept free inside a label's edge, for sheets that feed a little off.</summary>
    public required double Padding { get; init; }

    public int LabelsPerPage => Columns * Rows;

    /// <summary>Fourteen tags of 99 x 38 mm on A4; bars of three dots at 203 dpi.</summary>
    public static LabelSheet Tags { get; } = new()
    {
        Name = "tags",
        Symbol = LabelSymbol.Code128,
        Module = 0.375,
        PageWidth = 210,
        PageHeight = 297,
        MarginLeft = 5,
        MarginTop = 15.5,
        Columns = 2,
        Rows = 7,
        LabelWidth = 99,
        LabelHeight = 38,
        GapAcross = 2,
        GapDown = 0,
        Padding = 2,
    };

    /// <summary>Sixty-five labels of 38 x 21 mm on A4; squares of four dots at 203 dpi.</summary>
    public static LabelSheet Small { get; } = new()
    {
        Name = "small",
        Symbol = LabelSymbol.DataMatrix,
        Module = 0.5,
        PageWidth = 210,
        PageHeight = 297,
        MarginLeft = 5,
        MarginTop = 12,
        Columns = 5,
        Rows = 13,
        LabelWidth = 38,
        LabelHeight = 21,
        GapAcross = 2.5,
        GapDown = 0,
        Padding = 1.5,
    };
}
