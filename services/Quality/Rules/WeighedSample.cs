namespace LabPipeline.Quality.Rules;

/// <summary>A sample's specific gravity as one run weighed it.</summary>
/// <remarks>
/// <c>Run</c>: instrument and run.
/// <c>Mates</c>: what makes samples comparable within a pull: clone and treatment.
/// </remarks>
public sealed record WeighedSample(string Barcode, string TrialCode, int PullNo, string Mates, string Run, decimal SpecificGravity)
{
    /// <summary>File its weights came in.</summary>
    public string FileName { get; init; } = "";
}
