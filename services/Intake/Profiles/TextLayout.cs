namespace LabPipeline.Intake.Profiles;

/// <summary>How the text of a file is divided into rows and columns.</summary>
public enum TextLayout
{
    Delimited,
    FixedWidth,

    /// <summary>One "key = value" a line; a separator line ends a row.</summary>
    KeyValueBlocks,

    /// <summary>Keyword and data-format text of ISO 28178 (CGATS.17).</summary>
    Cgats,
}
