namespace LabPipeline.Quality.Rules;

/// <summary>What rules look at: complete for its scope, so that a rule that finds nothing clears what it had found before.</summary>
public interface IEvidence
{
    /// <summary>Name of the evidence as a whole, such as <c>sample:26K70012C</c>.</summary>
    string Scope { get; }

    /// <summary>What it is about, in a fingerprint.</summary>
    string Subject { get; }

    /// <summary>What it is about, at the start of a sentence.</summary>
    string Title { get; }

    string? TrialCode { get; }

    int? PullNo { get; }

    string? Barcode { get; }
}
