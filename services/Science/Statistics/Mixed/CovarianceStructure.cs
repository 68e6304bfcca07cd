using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>How the pulls of one plot vary together.</summary>
public abstract class CovarianceStructure
{
    private protected CovarianceStructure(string name) => Name = name;

    public string Name { get; }

    /// <summary>Rows are independent: no repeated pulls.</summary>
    public static CovarianceStructure Independent { get; } = new IndependentStructure();

    /// <summary>One variance, one correlation between any two pulls of a plot (which may be negative): a split-plot in time.</summary>
    public static CovarianceStructure CompoundSymmetry { get; } = new CompoundSymmetryStructure();

    /// <summary>
    /// Correlation phi^(|t - s| / shortest interval), 0 &lt; phi &lt; 1: AR(1) when pulls are evenly spaced, its continuous-time form when they are not.
    /// </summary>
    public static CovarianceStructure Exponential { get; } = new ExponentialStructure();

    /// <summary>A plot variance common to all pulls, plus <see cref="Exponential"/> deviations from pull to pull.</summary>
    public static CovarianceStructure PlotPlusExponential { get; } = new PlotPlusExponentialStructure();

    /// <summary>A variance for every pull and a covariance for every pair: m(m + 1)/2 parameters for m pulls.</summary>
    public static CovarianceStructure Unstructured { get; } = new UnstructuredStructure();

    /// <summary>Free numbers the optimiser moves; the overall variance is profiled out and not among them.</summary>
    internal abstract int ShapeCount(int pulls);

    /// <summary>Where to begin the search; several where the likelihood can have more than one top.</summary>
    internal abstract IReadOnlyList<double[]> Starts(int pulls);

    /// <summary>Covariance between pulls divided by the profiled variance; any real numbers give a valid matrix.</summary>
    internal abstract Matrix Shape(ReadOnlySpan<double> free, PullTimes times);

    internal abstract IReadOnlyList<NaturalParameter> Natural(ReadOnlySpan<double> free, double variance, PullTimes times);

    private protected static Matrix Fill(int size, Func<int, int, double> value)
    {
        var matrix = new Matrix(size, size);
        for (var row = 0; row < size; row++)
        {
            for (var column = 0; column < size; column++)
            {
                matrix[row, column] = value(row, column);
            }
        }

        return matrix;
    }

    private protected static double Logistic(double free) => 1 / (1 + Math.Exp(-free));
}
