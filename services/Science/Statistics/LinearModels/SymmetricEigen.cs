namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>
/// Eigenvalues and eigenvectors of a small symmetric matrix by cyclic Jacobi rotations: slow for large matrices, accurate
/// for the few pulls and contrasts it is used on. Golub and Van Loan, Matrix Computations, section 8.5 (from memory).
/// </summary>
internal sealed class SymmetricEigen
{
    private const int SweepLimit = 60;

    private SymmetricEigen(double[] values, Matrix vectors)
    {
        Values = values;
        Vectors = vectors;
    }

    public IReadOnlyList<double> Values { get; }

    /// <summary>One eigenvector a column, in the order of <see cref="Values"/>.</summary>
    public Matrix Vectors { get; }

    public static SymmetricEigen Decompose(Matrix symmetric)
    {
        var size = symmetric.Rows;
        var work = new Matrix(size, size);
        work.Add(symmetric, 1);
        var vectors = new Matrix(size, size);
        for (var index = 0; index < size; index++)
        {
            vectors[index, index] = 1;
        }

        for (var sweep = 0; sweep < SweepLimit && OffDiagonal(work) > 1e-30 * work.InnerProduct(work); sweep++)
        {
            for (var first = 0; first < size; first++)
            {
                for (var second = first + 1; second < size; second++)
                {
                    Rotate(work, vectors, first, second);
                }
            }
        }

        return new SymmetricEigen([.. Enumerable.Range(0, size).Select(index => work[index, index])], vectors);
    }

    private static double OffDiagonal(Matrix work)
    {
        var sum = 0.0;
        for (var row = 0; row < work.Rows; row++)
        {
            for (var column = 0; column < row; column++)
            {
                sum += 2 * work[row, column] * work[row, column];
            }
        }

        return sum;
    }

    private static void Rotate(Matrix work, Matrix vectors, int first, int second)
    {
        if (work[first, second] == 0)
        {
            return;
        }

        var theta = (work[second, second] - work[first, first]) / (2 * work[first, second]);
        var tangent = (theta >= 0 ? 1 : -1) / (Math.Abs(theta) + Math.Sqrt((theta * theta) + 1));
        var cosine = 1 / Math.Sqrt((tangent * tangent) + 1);
        var sine = tangent * cosine;
        for (var index = 0; index < work.Rows; index++)
        {
            (work[index, first], work[index, second]) = Turn(work[index, first], work[index, second], cosine, sine);
            (vectors[index, first], vectors[index, second]) = Turn(vectors[index, first], vectors[index, second], cosine, sine);
        }

        for (var index = 0; index < work.Rows; index++)
        {
            (work[first, index], work[second, index]) = Turn(work[first, index], work[second, index], cosine, sine);
        }
    }

    private static (double First, double Second) Turn(double first, double second, double cosine, double sine) =>
        ((cosine * first) - (sine * second), (sine * first) + (cosine * second));
}
