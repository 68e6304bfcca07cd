using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>Rows that may share plots and random units with each other and with no row outside.</summary>
internal sealed class RowSet(MixedDesign design, int[] rows, int[] plots, int[] positions)
{
    /// <summary>Their rows of X, estimable columns only.</summary>
    public Matrix FixedRows => Matrix.FromRows([.. rows.Select(row => design.Qr.Select(design.Fixed.Values.Row(row)))], design.FixedColumns);

    /// <summary>ZZ' of a random term: 1 where two rows are in one unit.</summary>
    public Matrix SameUnit(int term) => Fill((first, second) => design.Groups[term][first] == design.Groups[term][second] ? 1 : 0);

    /// <summary>A matrix between pulls, placed on the rows of each plot.</summary>
    public Matrix WithinPlots(Matrix pulls) => Fill((first, second) => plots[first] == plots[second] ? pulls[positions[first], positions[second]] : 0);

    private Matrix Fill(Func<int, int, double> value)
    {
        var matrix = new Matrix(rows.Length, rows.Length);
        for (var row = 0; row < rows.Length; row++)
        {
            for (var column = 0; column < rows.Length; column++)
            {
                matrix[row, column] = value(rows[row], rows[column]);
            }
        }

        return matrix;
    }
}
