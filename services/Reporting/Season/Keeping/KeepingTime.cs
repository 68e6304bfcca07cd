namespace LabPipeline.Reporting.Season.Keeping;

/// <summary>The day a mean crosses a limit, in days after harvest, with its interval.</summary>
/// <param name="Label">Clone, or treatment combination.</param>
/// <param name="State">Whether it crossed.</param>
/// <param name="Day">The day; null unless crossed.</param>
/// <param name="Earliest">Lower end; null where it lies at or before the first pull, the last day where it lies after the last pull.</param>
/// <param name="Latest">Upper end; null where it lies after the last pull.</param>
/// <param name="FirstDay">Day of the first pull with an estimate.</param>
/// <param name="LastDay">Day of the last one.</param>
/// <param name="CameBack">Whether the mean was within the limit again at a later pull.</param>
internal sealed record KeepingTime(
    string Label, KeepingState State, double? Day, double? Earliest, double? Latest, int FirstDay, int LastDay, bool CameBack);
