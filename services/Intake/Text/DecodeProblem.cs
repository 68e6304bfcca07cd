namespace LabPipeline.Intake.Text;

/// <summary>Why bytes are not text in the declared encoding.</summary>
public enum DecodeProblem
{
    None,
    InvalidBytes,

    /// <summary>The stream ends inside a character.</summary>
    CutCharacter,

    /// <summary>U+0000: never text, nearly always a wrong encoding or a damaged file.</summary>
    NullCharacter,

    /// <summary>U+FFFD in the file itself: an earlier program already lost the character.</summary>
    ReplacementCharacter,
    MarkContradictsEncoding,
    MarkMissing,
}
