namespace LabPipeline.Science.Barcodes;

/// <summary>Why a scanned or typed text is no sample barcode.</summary>
public enum BarcodeRefusal
{
    /// <summary>It is one.</summary>
    None = 0,

    /// <summary>Nothing was left after the scanner's line end, tabs and spaces were taken off.</summary>
    Empty = 1,

    /// <summary>Shorter or longer than a sample barcode can be.</summary>
    Length = 2,

    /// <summary>Holds a character outside A-Z and 0-9.</summary>
    Character = 3,

    /// <summary>Holds I, O or Q before the check character; our payloads never do, because they are read as 1 and 0.</summary>
    AmbiguousLetter = 4,

    /// <summary>The check character does not belong to the rest: a character is wrong, missing, or two were swapped.</summary>
    CheckCharacter = 5,
}
