namespace LabPipeline.Warehouse.Plan;

/// <summary>Something of a plan that the warehouse holds otherwise than the document offers it.</summary>
public sealed record PlanDifference(string What, string Stored, string Offered)
{
    public override string ToString() => $"{What}: {Stored} in the warehouse, {Offered} in the document";
}
