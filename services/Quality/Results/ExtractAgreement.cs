using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Results;

/// <summary>How the extracts of a sample compare, and what the sample's result rests on.</summary>
public sealed record ExtractAgreement
{
    public required Quantity Quantity { get; init; }

    /// <summary>Test results in the order they were obtained.</summary>
    public required IReadOnlyList<ExtractResult> Extracts { get; init; }

    public required AgreementOutcome Outcome { get; init; }

    public required RepeatabilityModel Repeatability { get; init; }

    /// <summary>s_r at the level of the results.</summary>
    public decimal RepeatabilitySd { get; init; }

    /// <summary>Test results compared last.</summary>
    public int Compared { get; init; }

    /// <summary>Largest minus smallest of them; where a result is known only as an interval, the least the difference can be.</summary>
    public decimal Range { get; init; }

    /// <summary>What the range was held against; equal agrees.</summary>
    public decimal CriticalRange { get; init; }

    public int MoreNeeded { get; init; }

    /// <summary>Why there is no judgement; empty when there is one.</summary>
    public string WhyNot { get; init; } = "";

    public bool Disagrees => Outcome is AgreementOutcome.Open or AgreementOutcome.Median or AgreementOutcome.Unresolved;
}
