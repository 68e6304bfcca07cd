using System.Globalization;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Intake.Keeping;

/// <summary>What an audit looked at and what it found wrong.</summary>
/// <param name="Files">Files of the ledger.</param>
/// <param name="Compared">Those of them whose facts were compared with their lines; older ones have no profile in the archive.</param>
/// <param name="Faults">Each fault with what to do; empty when all is well.</param>
public sealed record AuditReport(int Files, int Compared, IReadOnlyList<string> Faults)
{
    public bool IsClean => Faults.Count == 0;

    /// <summary>Writes it into the change log, from where it becomes an alert or clears one.</summary>
    public Task NoteAsync(WarehouseSession session, string who, DateTimeOffset now)
    {
        var found = IsClean ? "no fault" : string.Create(CultureInfo.InvariantCulture, $"{Faults.Count} faults; the first: {Faults[0]}");
        return ChangeLogStore.AddAsync(session, new Change
        {
            At = now,
            Who = who,
            What = IsClean ? WarehouseAudits.WithoutFault : WarehouseAudits.WithFaults,
            Subject = WarehouseAudits.Subject,
            Why = string.Create(CultureInfo.InvariantCulture, $"{Files} files, {Compared} compared line by line, {found}"),
        });
    }
}
