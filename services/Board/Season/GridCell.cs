namespace LabPipeline.Board.Season;

/// <summary>One plot at one pull: the gravest state among its expected quantities, and which quantities are in it.</summary>
public sealed record GridCell(int PullNo, string Barcode, string State, IReadOnlyList<string> Quantities)
{
    /// <summary>The gravest first.</summary>
    private static readonly IReadOnlyList<string> States = ["missing", "late", "excluded", "expected", "done"];

    /// <param name="rows">The expected quantities of one plot at one pull.</param>
    public static GridCell Of(IReadOnlyList<GridRow> rows)
    {
        var state = States.First(candidate => candidate == States[^1] || rows.Any(row => row.State == candidate));
        return new GridCell(rows[0].PullNo, rows[0].Barcode, state, [.. rows.Where(row => row.State == state).Select(row => row.Quantity)]);
    }
}
