namespace LabPipeline.Warehouse.Plan;

/// <summary>A day on which samples leave storage, with the local days, both included, within which their readings count as on time.</summary>
public sealed record TrialPull(int Number, DateOnly DueOn, DateOnly OpensOn, DateOnly ClosesOn);
