namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A dense matrix stored row by row.</summary>
internal sealed class Matrix(int rows, int columns)
{
    private readonly double[] _cells = new double[rows * columns];

    public int Rows => rows;

    public int Columns => columns;

    public double this[int row, int column]
    {
        get => _cells[(row * columns) + column];
        set => _cells[(row * columns) + column] = value;
    }

    public Span<double> Row(int row) => _cells.AsSpan(row * columns, columns);

    public static Matrix FromRows(IReadOnlyList<double[]> source, int columns)
    {
        var matrix = new Matrix(source.Count, columns);
        for (var row = 0; row < source.Count; row++)
        {
            source[row].CopyTo(matrix.Row(row));
        }

        return matrix;
    }

    public double[] Column(int column)
    {
        var values = new double[rows];
        for (var row = 0; row < rows; row++)
        {
            values[row] = this[row, column];
        }

        return values;
    }

    public double[][] AllRows() => [.. Enumerable.Range(0, rows).Select(row => Row(row).ToArray())];

    public Matrix Transposed()
    {
        var result = new Matrix(columns, rows);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                result[column, row] = this[row, column];
            }
        }

        return result;
    }

    public Matrix Times(Matrix right)
    {
        var result = new Matrix(rows, right.Columns);
        for (var row = 0; row < rows; row++)
        {
            VectorKernel.AddCombination(result.Row(row), Row(row), right._cells);
        }

        return result;
    }

    /// <summary>this' * right.</summary>
    public Matrix TransposedTimes(Matrix right)
    {
        var result = new Matrix(columns, right.Columns);
        result.AddTransposedProduct(this, right, 1);
        return result;
    }

    /// <summary>this += scale * left' * right.</summary>
    public void AddTransposedProduct(Matrix left, Matrix right, double scale)
    {
        var turned = left.Transposed();
        for (var row = 0; row < rows; row++)
        {
            var weights = turned.Row(row);
            foreach (ref var weight in weights)
            {
                weight *= scale;
            }

            VectorKernel.AddCombination(Row(row), weights, right._cells);
        }
    }

    public double[] Times(ReadOnlySpan<double> vector)
    {
        var result = new double[rows];
        for (var row = 0; row < rows; row++)
        {
            result[row] = VectorKernel.Dot(Row(row), vector);
        }

        return result;
    }

    /// <summary>The sum of the elementwise products, which is trace(this' * other).</summary>
    public double InnerProduct(Matrix other) => VectorKernel.Dot(_cells, other._cells);

    /// <summary>Whether size and every cell are equal, to the last bit.</summary>
    public bool SameAs(Matrix other) => rows == other.Rows && columns == other.Columns && _cells.AsSpan().SequenceEqual(other._cells);

    public void Add(Matrix other, double scale) => VectorKernel.AddScaled(_cells, scale, other._cells);

    /// <summary>A part of adjoining rows and columns, copied.</summary>
    public Matrix Part(int firstRow, int firstColumn, int height, int width)
    {
        var part = new Matrix(height, width);
        for (var row = 0; row < height; row++)
        {
            Row(firstRow + row).Slice(firstColumn, width).CopyTo(part.Row(row));
        }

        return part;
    }

    /// <summary>The rows and columns at the given places, copied.</summary>
    public Matrix At(int[] rowPlaces, int[] columnPlaces)
    {
        var part = new Matrix(rowPlaces.Length, columnPlaces.Length);
        for (var row = 0; row < rowPlaces.Length; row++)
        {
            var source = Row(rowPlaces[row]);
            var target = part.Row(row);
            for (var column = 0; column < columnPlaces.Length; column++)
            {
                target[column] = source[columnPlaces[column]];
            }
        }

        return part;
    }

    /// <summary>Adds each element of another matrix at its place here.</summary>
    public void AddAt(int[] rowPlaces, int[] columnPlaces, Matrix other, double scale)
    {
        for (var row = 0; row < rowPlaces.Length; row++)
        {
            var target = Row(rowPlaces[row]);
            var source = other.Row(row);
            for (var column = 0; column < columnPlaces.Length; column++)
            {
                target[columnPlaces[column]] += scale * source[column];
            }
        }
    }

    public Matrix Scaled(double factor)
    {
        var result = new Matrix(rows, columns);
        result.Add(this, factor);
        return result;
    }

    /// <summary>left * this * right' for two vectors.</summary>
    public double Form(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var sum = 0.0;
        for (var row = 0; row < rows; row++)
        {
            if (left[row] != 0)
            {
                sum += left[row] * VectorKernel.Dot(Row(row), right);
            }
        }

        return sum;
    }
}
