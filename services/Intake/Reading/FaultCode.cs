namespace LabPipeline.Intake.Reading;

/// <summary>Stable names of faults, as stored and counted. Their words are in <see cref="FaultCatalogue"/>.</summary>
public static class FaultCode
{
    public const string EmptyFile = "intake.empty-file";
    public const string HeaderOnly = "intake.header-only";
    public const string HeaderMissing = "intake.header-missing";
    public const string Undecodable = "intake.undecodable";
    public const string CutCharacter = "intake.cut-character";
    public const string NullCharacter = "intake.null-character";
    public const string ReplacementCharacter = "intake.replacement-character";
    public const string MarkContradictsEncoding = "intake.mark-contradicts-encoding";
    public const string MarkMissing = "intake.mark-missing";
    public const string LineTooLong = "intake.line-too-long";
    public const string CellTooLong = "intake.cell-too-long";
    public const string KeyTooLong = "intake.key-too-long";
    public const string TooManyColumns = "intake.too-many-columns";
    public const string UnclosedQuote = "intake.unclosed-quote";
    public const string MisplacedQuote = "intake.misplaced-quote";
    public const string LastLineCut = "intake.last-line-cut";
    public const string TrailerMissing = "intake.trailer-missing";
    public const string TextAfterTrailer = "intake.text-after-trailer";
    public const string RaggedRow = "intake.ragged-row";
    public const string TextBetweenFields = "intake.text-between-fields";
    public const string MissingColumn = "intake.missing-column";
    public const string UnknownColumn = "intake.unknown-column";
    public const string DuplicateColumn = "intake.duplicate-column";
    public const string KeyFormat = "intake.key-format";
    public const string DuplicateKey = "intake.duplicate-key";
    public const string ColourTextFormat = "intake.colour-text-format";
    public const string ColourTextCount = "intake.colour-text-count";
    public const string MissingCell = "intake.missing-cell";
    public const string MissingValue = "intake.missing-value";
    public const string PlaceholderValue = "intake.placeholder-value";
    public const string NumberFormat = "intake.number-format";
    public const string NumberSize = "intake.number-size";
    public const string CountFormat = "intake.count-format";
    public const string ValueNotPositive = "intake.value-not-positive";
    public const string ValueOutsideLimits = "intake.value-outside-limits";
    public const string UnknownUnit = "intake.unknown-unit";
    public const string UnknownQuantity = "intake.unknown-quantity";
    public const string TimeFormat = "intake.time-format";
    public const string TimeImpossible = "intake.time-impossible";
    public const string TimeSkipped = "intake.time-skipped";
    public const string TimeAmbiguous = "intake.time-ambiguous";
    public const string BarcodeCheck = "intake.barcode-check";
    public const string BarcodeFormat = "intake.barcode-format";
    public const string BarcodeHalf = "intake.barcode-half";
}
