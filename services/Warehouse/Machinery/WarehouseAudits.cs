namespace LabPipeline.Warehouse.Machinery;

/// <summary>How the change log tells what the audits of the warehouse found.</summary>
public static class WarehouseAudits
{
    /// <summary>Subject of every line about keeping the warehouse.</summary>
    public const string Subject = "warehouse";

    public const string WithoutFault = "warehouse audited";

    public const string WithFaults = "warehouse audit found faults";

    /// <summary>The newest audit; null when there was none.</summary>
    public static async Task<Change?> LastAsync(WarehouseSession session) =>
        (await ChangeLogStore.ListAsync(session, Subject).ConfigureAwait(false)).LastOrDefault(change => change.What is WithoutFault or WithFaults);
}
