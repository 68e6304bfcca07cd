namespace LabPipeline.Science.Colour;

/// <summary>Weights that turn a reflectance curve into X, Y, Z for one illuminant, observer and wavelength step.</summary>
/// <remarks>
/// X = sum WX R, likewise Y and Z; the weights of Y sum to 100, so the white is the perfect diffuser summed the same way. Where the curve starts later
/// or ends earlier than the weights, the weights outside are added to those of its first and last wavelength (ASTM E308, folding), that is, the
/// curve is continued level. Sources: ASTM E308-18 practice, ASTM E2022 interpolation.
/// </remarks>
public sealed class SpectralWeights
{
    // ASTM E308 wants 360 to 780 nm and lets instruments stop at 400 and 700 nm.
    private const int LatestFirstNm = 400;
    private const int EarliestLastNm = 700;

    private readonly double[][] _weights;

    private SpectralWeights(Illuminant illuminant, Observer observer, int firstNm, int stepNm, double[][] weights)
    {
        FirstNm = firstNm;
        StepNm = stepNm;
        _weights = weights;
        Condition = ViewingCondition.Summed(illuminant, observer, weights[0].Sum(), weights[1].Sum(), weights[2].Sum());
    }

    /// <summary>First wavelength with a weight, nm.</summary>
    public int FirstNm { get; }

    /// <summary>Step in nm; only curves with the same step can be weighted.</summary>
    public int StepNm { get; }

    /// <summary>Last wavelength with a weight, nm.</summary>
    public int LastNm => FirstNm + ((_weights[0].Length - 1) * StepNm);

    /// <summary>Illuminant, observer and the white that belongs to these weights.</summary>
    public ViewingCondition Condition { get; }

    /// <summary>Weights of X, from <see cref="FirstNm"/> on.</summary>
    public IReadOnlyList<double> X => _weights[0];

    /// <summary>Weights of Y; they sum to 100.</summary>
    public IReadOnlyList<double> Y => _weights[1];

    /// <summary>Weights of Z.</summary>
    public IReadOnlyList<double> Z => _weights[2];

    /// <summary>Plain sums k S x: for curves every 5 nm, or to reproduce programs that sum every 10 nm without interpolation.</summary>
    /// <param name="illuminant">A, C, D50 or D65.</param>
    /// <param name="observer">2° or 10°.</param>
    /// <param name="firstNm">First wavelength of the sum, 360 nm or later, a multiple of 5.</param>
    /// <param name="lastNm">Last wavelength of the sum, 780 nm or earlier.</param>
    /// <param name="stepNm">5 or 10 nm.</param>
    /// <exception cref="ArgumentException">The range or step is not one of these.</exception>
    public static SpectralWeights PlainSum(Illuminant illuminant, Observer observer, int firstNm, int lastNm, int stepNm)
    {
        if (stepNm is not (5 or 10) || firstNm < IlluminantTable.Values.FirstNm || lastNm > IlluminantTable.Values.LastNm
            || firstNm > LatestFirstNm || lastNm < EarliestLastNm || firstNm % 5 != 0 || (lastNm - firstNm) % stepNm != 0)
        {
            throw new ArgumentException(
                $"Found a sum from {firstNm} to {lastNm} nm every {stepNm} nm, expected every 5 or 10 nm within 360 to 780 nm, covering 400 to 700 nm.", nameof(stepNm));
        }

        var products = Products(illuminant, observer, Wavelengths(firstNm, lastNm, stepNm));
        return new(illuminant, observer, firstNm, stepNm, Normalised(products));
    }

    /// <summary>Weights for curves every 10 or 20 nm by the interpolation of ASTM E2022, 360 to 780 nm.</summary>
    /// <remarks>
    /// 10 nm for A/10°, C/2°, D65/2° and D65/10°: from the 1 nm functions. All others are computed from the 5 nm functions.
    /// </remarks>
    /// <exception cref="ArgumentException">The step is not 10 or 20 nm, or the illuminant is D75.</exception>
    public static SpectralWeights E2022(Illuminant illuminant, Observer observer, int stepNm)
    {
        RequireCoarseStep(stepNm);
        return stepNm == 10 && PublishedWeights.Find(illuminant, observer) is { } table
            ? new(illuminant, observer, table.FirstNm, table.StepNm, Columns(table))
            : FromFiveNanometreFunctions(illuminant, observer, stepNm);
    }

    /// <summary>X, Y, Z of a curve, relative to the white of <see cref="Condition"/>.</summary>
    /// <exception cref="ArgumentException">The step or grid differs, or the curve does not cover 400 to 700 nm.</exception>
    public Tristimulus Apply(Spectrum spectrum)
    {
        ArgumentNullException.ThrowIfNull(spectrum);
        if (spectrum.StepNm != StepNm || (spectrum.FirstNm - FirstNm) % StepNm != 0)
        {
            throw new ArgumentException(
                $"Found a curve from {spectrum.FirstNm} nm every {spectrum.StepNm} nm, expected one every {StepNm} nm on the grid of {FirstNm} nm.", nameof(spectrum));
        }

        if (spectrum.FirstNm > LatestFirstNm || spectrum.LastNm < EarliestLastNm)
        {
            throw new ArgumentException($"Found a curve from {spectrum.FirstNm} to {spectrum.LastNm} nm, expected at least 400 to 700 nm.", nameof(spectrum));
        }

        return new Tristimulus(Sum(_weights[0], spectrum), Sum(_weights[1], spectrum), Sum(_weights[2], spectrum), Condition);
    }

    /// <summary>E2022 weights from the 5 nm functions brought to 1 nm here, for any condition held; single weights agree with published ones within 0.008.</summary>
    /// <exception cref="ArgumentException">The step is not 10 or 20 nm, or the illuminant is D75.</exception>
    public static SpectralWeights FromFiveNanometreFunctions(Illuminant illuminant, Observer observer, int stepNm)
    {
        RequireCoarseStep(stepNm);
        var (first, last) = (IlluminantTable.Values.FirstNm, IlluminantTable.Values.LastNm);
        var nodes = ((last - first) / stepNm) + 1;
        var weights = Products(illuminant, observer, Wavelengths(first, last, 1)).Select(column => Gather(column, stepNm, nodes)).ToArray();
        return new(illuminant, observer, first, stepNm, Normalised(weights));
    }

    private static void RequireCoarseStep(int stepNm)
    {
        if (stepNm is not (10 or 20))
        {
            throw new ArgumentException($"Found a step of {stepNm} nm, expected 10 or 20 nm; curves every 5 nm take plain sums.", nameof(stepNm));
        }
    }

    // Reading a weight for the nearest wavelength the curve has is the same as folding the weights.
    private double Sum(double[] weights, Spectrum spectrum)
    {
        var offset = (FirstNm - spectrum.FirstNm) / StepNm;
        return Math.Max(0, weights.Select((weight, index) =>
            weight * spectrum.Reflectances[Math.Clamp(index + offset, 0, spectrum.Reflectances.Count - 1)]).Sum());
    }

    private static double[] Gather(double[] products, int share, int nodes)
    {
        var weights = new double[nodes];
        for (var index = 0; index < products.Length; index++)
        {
            var (first, coefficients) = LagrangeWeights.At(index, share, nodes);
            for (var node = 0; node < coefficients.Length; node++)
            {
                weights[first + node] += coefficients[node] * products[index];
            }
        }

        return weights;
    }

    // CIE defines daylights between their 5 nm values as straight lines; the observers are smooth and take the cubic.
    private static double[][] Products(Illuminant illuminant, Observer observer, int[] wavelengths)
    {
        var light = IlluminantTable.Column(illuminant);
        var eye = ObserverTable.FirstColumn(observer);
        return [.. Enumerable.Range(0, 3).Select(axis => wavelengths
            .Select(nm => IlluminantTable.Values.Linear(nm, light) * ObserverTable.Values.Cubic(nm, eye + axis)).ToArray())];
    }

    private static double[][] Normalised(double[][] weights)
    {
        var k = 100 / weights[1].Sum();
        return [.. weights.Select(column => column.Select(weight => k * weight).ToArray())];
    }

    private static double[][] Columns(SpectralTable table) =>
        [.. Enumerable.Range(0, 3).Select(axis => Wavelengths(table.FirstNm, table.LastNm, table.StepNm).Select(nm => table.At(nm, axis)).ToArray())];

    private static int[] Wavelengths(int first, int last, int step) => [.. Enumerable.Range(0, ((last - first) / step) + 1).Select(index => first + (index * step))];
}
