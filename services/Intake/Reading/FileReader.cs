using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Turns the bytes of a file into readings by its profile, in one pass and bounded memory.</summary>
public static class FileReader
{
    /// <summary>Reads <paramref name="bytes"/> to the end or to the first place nothing can be read after.</summary>
    /// <remarks>Faults in the file are in the outcome; exceptions are failures of the stream or the sink.</remarks>
    public static ReadOutcome Read(
        Profile profile, Stream bytes, string fileName, IReadingSink sink, ReadLimits limits, CancellationToken cancellationToken) =>
        throw new NotSupportedException(fileName);
}
