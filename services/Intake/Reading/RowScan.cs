namespace LabPipeline.Intake.Reading;

/// <summary>What a look at the characters ahead gave.</summary>
internal enum RowScan
{
    Row,

    /// <summary>The row does not end within the characters decoded so far.</summary>
    More,

    /// <summary>As <see cref="More"/>, and it ends inside a quoted cell.</summary>
    OpenQuote,
    UnclosedQuote,
    MisplacedQuote,
    TooManyColumns,
}
