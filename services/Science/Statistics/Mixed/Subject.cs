using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>The rows of one plot.</summary>
/// <param name="Rows">Row numbers.</param>
/// <param name="Positions">Position of each row's pull among the distinct times, ascending.</param>
/// <param name="Pattern">Number of the set of positions; plots with equal patterns share a factorisation.</param>
/// <param name="Kind">Number of the pattern and values together; plots of one kind differ only in the columns their values belong to.</param>
/// <param name="Units">Random units these rows belong to.</param>
/// <param name="Effects">Columns of fixed effects that are not zero in these rows.</param>
/// <param name="Values">Those columns of [Z X], rows by columns.</param>
internal sealed record Subject(int[] Rows, int[] Positions, int Pattern, int Kind, int[] Units, int[] Effects, Matrix Values);
