namespace LabPipeline.Quality.Rules;

/// <summary>A file stays in its drop folder, incomplete or unreadable, longer than an instrument takes to write one.</summary>
public sealed class HeldFileRule(RuleLimits limits) : IRule<HeldFileEvidence>
{
    public string Name => "file held";

    public IEnumerable<Finding> Evaluate(HeldFileEvidence evidence)
    {
        if (evidence.Now - evidence.FirstSeenAt <= TimeSpan.FromMinutes(limits.HeldFileMinutes))
        {
            yield break;
        }

        yield return Findings.Of(
            this, evidence, FindingLevel.Hold, "file",
            $"{evidence.Title} has waited more than {NumberText.Of(limits.HeldFileMinutes)} minutes and is not read: {evidence.Reason}",
            "See whether the instrument still writes it or another program holds it open; export it again when its end is missing.",
            new FactSheet().Add("folder", evidence.Folder).Add("file", evidence.Name).Add("reason code", evidence.ReasonCode).Add("reason", evidence.Reason)
                .Add("first seen", NumberText.Invariant($"{evidence.FirstSeenAt.UtcDateTime:yyyy-MM-dd HH:mm} UTC")));
    }
}
