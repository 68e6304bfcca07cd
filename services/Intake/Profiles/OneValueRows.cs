namespace LabPipeline.Intake.Profiles;

/// <summary>One value a row, with a column that names its quantity.</summary>
/// <remarks>
/// <c>Map</c>: by the text in the quantity column, compared exactly.
/// <c>Ignored</c>: texts in the quantity column whose rows are counted and left unread.
/// </remarks>
public sealed record OneValueRows(string QuantityColumn, IReadOnlyDictionary<string, QuantityRule> Map, IReadOnlyList<string> Ignored);
