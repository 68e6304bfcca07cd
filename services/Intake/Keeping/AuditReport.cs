namespace LabPipeline.Intake.Keeping;

/// <summary>What an audit looked at and what it found wrong.</summary>
/// <param name="Files">Files of the ledger.</param>
/// <param name="Compared">Those of them whose facts were compared with their lines; older ones have no profile in the archive.</param>
/// <param name="Faults">Each fault with what to do; empty when all is well.</param>
public sealed record AuditReport(int Files, int Compared, IReadOnlyList<string> Faults)
{
    public bool IsClean => Faults.Count == 0;
}
