namespace LabPipeline.Quality.Rules;

/// <summary>One quality rule: pure, no clock, no I/O. It throws or says so when it cannot judge; it never passes in silence.</summary>
/// <typeparam name="TEvidence">What it looks at.</typeparam>
public interface IRule<in TEvidence>
    where TEvidence : IEvidence
{
    /// <summary>Stable name, at most 64 characters; part of every fingerprint.</summary>
    string Name { get; }

    IEnumerable<Finding> Evaluate(TEvidence evidence);
}
