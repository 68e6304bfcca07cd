namespace LabPipeline.Intake.Profiles;

/// <summary>How it is known that a file was written to its end.</summary>
public enum Completeness
{
    /// <summary>Written elsewhere and renamed into the folder.</summary>
    RenamedIn,

    /// <summary>A second file named after the first says so.</summary>
    DoneFile,

    /// <summary>Every line ends with a line end, and the file keeps quiet for a while.</summary>
    FinalNewline,

    /// <summary>The last line begins with a declared text.</summary>
    Trailer,
}
