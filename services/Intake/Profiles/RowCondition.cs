namespace LabPipeline.Intake.Profiles;

/// <summary>Recognises rows by one cell, compared exactly (case matters).</summary>
/// <remarks>
/// <c>StartsWith</c>: whether <c>Text</c> is only the beginning of the cell.
/// </remarks>
public sealed record RowCondition(string Column, string Text, bool StartsWith)
{
    public bool Holds(ReadOnlySpan<char> cell) =>
        StartsWith ? cell.StartsWith(Text, StringComparison.Ordinal) : cell.Equals(Text, StringComparison.Ordinal);
}
