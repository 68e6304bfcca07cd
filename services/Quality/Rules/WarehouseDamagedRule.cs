namespace LabPipeline.Quality.Rules;

/// <summary>The warehouse no longer says what the archived files say: no number in it can be trusted until that is mended.</summary>
public sealed class WarehouseDamagedRule : IRule<AuditEvidence>
{
    public string Name => "warehouse damaged";

    public IEnumerable<Finding> Evaluate(AuditEvidence evidence)
    {
        if (evidence.HasFaults)
        {
            yield return Findings.Of(
                this, evidence, FindingLevel.Block, "audit",
                $"{evidence.Title} and the archive differ, seen {NumberText.Invariant($"{evidence.At.UtcDateTime:yyyy-MM-dd HH:mm} UTC")}: {evidence.Found}",
                "'station audit' lists every fault and says what to do about each; 'station rebuild' makes a damaged warehouse whole from a backup and the archive. A clean audit clears this alert.",
                new FactSheet().Add("audit", evidence.Found));
        }
    }
}
