namespace LabPipeline.Intake.Text;

/// <summary>Why a text is not a number in the declared format.</summary>
public enum NumberFault
{
    None,
    NotANumber,

    /// <summary>A point where the comma is declared, or the other way round: the case that must never be guessed.</summary>
    WrongMark,
    BadGrouping,
    ExponentNotAllowed,
    TooManyDigits,
    TooManyDecimals,
    TooLarge,
}
