namespace LabPipeline.Intake.Text;

/// <summary>The encodings a profile may declare.</summary>
public enum TextEncoding
{
    /// <summary>With or without byte order mark.</summary>
    Utf8,

    /// <summary>The byte order mark is required and says which way.</summary>
    Utf16,
    Utf16LittleEndian,
    Utf16BigEndian,

    /// <summary>ISO/IEC 8859-1; the control bytes 80 to 9F are refused, since they nearly always mean windows-1252.</summary>
    Latin1,
    Windows1252,
}
