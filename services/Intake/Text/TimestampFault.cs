namespace LabPipeline.Intake.Text;

/// <summary>Why a text is not an instant in the declared formats and zone.</summary>
public enum TimestampFault
{
    None,
    NotInFormat,

    /// <summary>Right shape, but no such day or hour: 30 February, 25:00, or a year outside 1900 to 2199.</summary>
    Impossible,

    /// <summary>Local time that never happened: clocks were put forward over it.</summary>
    Skipped,

    /// <summary>Local time that happened twice: clocks were put back over it.</summary>
    Ambiguous,
}
