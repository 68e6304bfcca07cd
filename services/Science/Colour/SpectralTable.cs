using System.Globalization;

namespace LabPipeline.Science.Colour;

/// <summary>Columns of numbers at equally spaced wavelengths.</summary>
internal sealed class SpectralTable
{
    private readonly double[][] _rows;

    private SpectralTable(int firstNm, int stepNm, double[][] rows)
    {
        FirstNm = firstNm;
        StepNm = stepNm;
        _rows = rows;
    }

    public int FirstNm { get; }

    public int StepNm { get; }

    public int LastNm => FirstNm + ((_rows.Length - 1) * StepNm);

    /// <summary>Reads lines of a wavelength and its numbers, in ascending order and equally spaced.</summary>
    public static SpectralTable Parse(string text)
    {
        var lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(line => line.Split(' ').Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray())
            .ToArray();
        return new((int)lines[0][0], (int)(lines[1][0] - lines[0][0]), [.. lines.Select(line => line[1..])]);
    }

    public double At(int wavelengthNm, int column) => _rows[(wavelengthNm - FirstNm) / StepNm][column];

    /// <summary>Value at a wavelength between the tabulated ones, on a straight line.</summary>
    public double Linear(int wavelengthNm, int column)
    {
        var lower = Math.Min((wavelengthNm - FirstNm) / StepNm, _rows.Length - 2);
        var share = ((double)(wavelengthNm - FirstNm) / StepNm) - lower;
        return _rows[lower][column] + ((_rows[lower + 1][column] - _rows[lower][column]) * share);
    }

    /// <summary>Value at a wavelength between the tabulated ones, by Lagrange interpolation.</summary>
    public double Cubic(int wavelengthNm, int column)
    {
        var (first, coefficients) = LagrangeWeights.At(wavelengthNm - FirstNm, StepNm, _rows.Length);
        return coefficients.Select((coefficient, index) => coefficient * _rows[first + index][column]).Sum();
    }
}
