using LabPipeline.Science.Colour;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Colour;

/// <summary>Spectra to X, Y, Z against the B_ tables: CIE data, plain sums, and ASTM E308 practice with E2022 weights (computed with an independent library).</summary>
public sealed class SpectralWeightsTests
{
    private static readonly ReferenceTable Curves = ReferenceTable.Load("B_spectra_5nm.csv");

    [Fact]
    public void PlainSum_OnEveryRow_AgreesToSixDecimals()
    {
        foreach (var row in ReferenceTable.Load("B_spectra_xyz_lab.csv").Rows)
        {
            var (first, last) = Range(row.Text("range_nm"));
            var step = row.Count("step_nm");

            var xyz = SpectralWeights.PlainSum(Light(row), Seen(row), first, last, step).Apply(Curve(row.Text("spectrum"), first, last, step));

            AssertXyz(row, xyz, 1e-6);
            AssertLab(row, Cielab.From(xyz), "_star_white_same_sum", 2e-6);
            AssertLab(row, Cielab.From(xyz.RelativeTo(ViewingCondition.Of(Light(row), Seen(row)))), "_star_white_CIE15", 2e-6);
            AssertLab(row, HunterLab.From(xyz, HunterScale.Tabulated(Light(row), Seen(row))), 2e-6);
        }
    }

    [Fact]
    public void E2022_OnEveryRow_AgreesWithEndsFolded()
    {
        foreach (var row in ReferenceTable.Load("B_spectra_E308_10nm.csv").Rows)
        {
            var (first, last) = Range(row.Text("range_nm_ends_folded"));

            var xyz = SpectralWeights.E2022(Light(row), Seen(row), 10).Apply(Curve(row.Text("spectrum"), first, last, 10));

            // The weights carry six decimals; 43 of them leave up to 1e-5 in a sum, and a* and b* stretch it fivefold near black.
            AssertXyz(row, xyz, 1e-5);
            Assert.Equal(row.Number("Xn"), xyz.Condition.Xn, 2e-5);
            Assert.Equal(row.Number("Yn"), xyz.Condition.Yn, 2e-5);
            Assert.Equal(row.Number("Zn"), xyz.Condition.Zn, 2e-5);
            AssertLab(row, Cielab.From(xyz), "_star", 5e-5);
            AssertLab(row, HunterLab.From(xyz, HunterScale.Tabulated(Light(row), Seen(row))), 5e-5);
        }
    }

    [Theory]
    [InlineData(Illuminant.A, Observer.TenDegree, "A_10deg")]
    [InlineData(Illuminant.C, Observer.TwoDegree, "C_2deg")]
    [InlineData(Illuminant.D65, Observer.TwoDegree, "D65_2deg")]
    [InlineData(Illuminant.D65, Observer.TenDegree, "D65_10deg")]
    public void Weights_OfBothKinds_AreTheTabulatedOnes(Illuminant illuminant, Observer observer, string name)
    {
        var rows = ReferenceTable.Load($"B_weights_10nm_{name}.csv").Rows;
        var plain = SpectralWeights.PlainSum(illuminant, observer, 380, 780, 10);
        var interpolated = SpectralWeights.E2022(illuminant, observer, 10);
        var computed = SpectralWeights.FromFiveNanometreFunctions(illuminant, observer, 10);
        foreach (var row in rows)
        {
            var nm = row.Count("wavelength_nm");
            AssertWeights(row, "plain", plain, nm, 6e-7);
            AssertWeights(row, "E2022", interpolated, nm, 0);
            // From 5 nm functions brought to 1 nm: at most 0.008 in weights up to 20, and neighbours make up for each other.
            AssertWeights(row, "E2022", computed, nm, 0.008);
        }

        Assert.Equal(100, plain.Y.Sum(), 1e-9);
        Assert.Equal(100, interpolated.Y.Sum(), 1e-4);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    public void PlainSum_OfTheCieTables_GivesTheSameWeights(int step)
    {
        var eyes = ReferenceTable.Load($"B_cmf_{step}nm.csv").Rows.ToDictionary(row => row.Count("wavelength_nm"));
        var lights = ReferenceTable.Load($"B_illuminants_{step}nm.csv").Rows;
        foreach (var illuminant in new[] { Illuminant.A, Illuminant.C, Illuminant.D65, Illuminant.D50 })
        {
            foreach (var (observer, ending) in new[] { (Observer.TwoDegree, "_2deg_CIE1931"), (Observer.TenDegree, "_10deg_CIE1964") })
            {
                var weights = SpectralWeights.PlainSum(illuminant, observer, 360, 780, step);
                var k = 100 / lights.Sum(row => Product(row, "ybar"));
                foreach (var (row, index) in lights.Select((row, index) => (row, index)))
                {
                    Assert.Equal(k * Product(row, "xbar"), weights.X[index], 1e-8);
                    Assert.Equal(k * Product(row, "ybar"), weights.Y[index], 1e-8);
                    Assert.Equal(k * Product(row, "zbar"), weights.Z[index], 1e-8);
                }

                double Product(ReferenceRow row, string column) =>
                    row.Number(illuminant.ToString()) * eyes[row.Count("wavelength_nm")].Number(column + ending);
            }
        }
    }

    [Fact]
    public void PlainSum_OfThePerfectDiffuser_GivesTheComputedWhites()
    {
        var listed = ReferenceTable.Load("B_white_points.csv").Rows
            .Where(row => row.Text("source").StartsWith("computed", StringComparison.Ordinal) && row.Text("illuminant") != "D75");
        foreach (var row in listed)
        {
            var step = row.Text("source").Contains("at 5 nm", StringComparison.Ordinal) ? 5 : 10;
            var white = SpectralWeights.PlainSum(Light(row), Seen(row), 380, 780, step).Condition;

            Assert.Equal(row.Number("Xn"), white.Xn, 0.00006);
            Assert.Equal(row.Number("Zn"), white.Zn, 0.00006);
        }
    }

    [Theory]
    [InlineData("SD_SAMPLE A/2deg integration 360-780 1 nm", Illuminant.A, Observer.TwoDegree)]
    [InlineData("SD_SAMPLE C/10deg integration 360-780 1 nm", Illuminant.C, Observer.TenDegree)]
    public void PlainSumAt5Nanometres_ComparedWithIntegrationAt1_IsClose(string vector, Illuminant illuminant, Observer observer)
    {
        var row = ReferenceTable.Load("B_library_test_vectors.csv").Find("case", vector);

        var xyz = SpectralWeights.PlainSum(illuminant, observer, 380, 780, 5).Apply(Curve("E308-style sample (colour 0.4.6 test SD_SAMPLE)", 380, 780, 5));

        // The curve drops to 0 outside 400 to 700 nm: its edges are integrated as ramps of 1 nm there, of 5 nm here. Hence 0.05, not 0.001.
        AssertXyz(row, xyz, 0.05);
    }

    [Theory]
    [InlineData("SD_SAMPLE A/2deg E308 10 nm 400-700 (E308 end-band folding)", 400, 700, 0.005)]
    public void E2022_OnAConditionWithoutTable_AgreesWithTheLibrary(string vector, int first, int last, double tolerance)
    {
        var row = ReferenceTable.Load("B_library_test_vectors.csv").Find("case", vector);

        var xyz = SpectralWeights.E2022(Illuminant.A, Observer.TwoDegree, 10).Apply(Curve("E308-style sample (colour 0.4.6 test SD_SAMPLE)", first, last, 10));

        // Weights computed from the 5 nm functions instead of the 1 nm ones.
        AssertXyz(row, xyz, tolerance);
    }

    [Theory]
    [InlineData("synthetic light chip")]
    [InlineData("synthetic medium chip")]
    [InlineData("synthetic dark chip")]
    public void E2022_OnAChipEvery20Nanometres_AgreesWithThe5NanometreSum(string chip)
    {
        var fine = SpectralWeights.PlainSum(Illuminant.D65, Observer.TenDegree, 380, 780, 5).Apply(Curve(chip, 380, 780, 5));

        var coarse = SpectralWeights.E2022(Illuminant.D65, Observer.TenDegree, 20).Apply(Curve(chip, 400, 700, 20));

        // No published value: on a smooth curve both must come to the same colour within what a chip meter repeats.
        var (left, right) = (Cielab.From(fine), Cielab.From(coarse));
        Assert.Equal(left.L, right.L, 0.02);
        Assert.Equal(left.A, right.A, 0.05);
        Assert.Equal(left.B, right.B, 0.05);
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        var weights = SpectralWeights.E2022(Illuminant.D65, Observer.TenDegree, 10);
        Assert.Contains("400 to 700", Assert.Throws<ArgumentException>(() => weights.Apply(Flat(410, 10, 40))).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => weights.Apply(Flat(400, 20, 16)));
        Assert.Throws<ArgumentException>(() => weights.Apply(Flat(395, 10, 40)));
        Assert.Throws<ArgumentException>(() => SpectralWeights.E2022(Illuminant.D65, Observer.TenDegree, 5));
        Assert.Throws<ArgumentException>(() => SpectralWeights.E2022(Illuminant.D75, Observer.TenDegree, 10));
        Assert.Throws<ArgumentException>(() => SpectralWeights.PlainSum(Illuminant.D65, Observer.TenDegree, 350, 780, 5));
        Assert.Throws<ArgumentException>(() => new Spectrum(400, 7, [0.1, 0.2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Spectrum(400, 10, [0.1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Spectrum(400, 10, [55, 60]));
        Assert.Throws<ArgumentException>(() => weights.Apply(Flat(400, 10, 31)).RelativeTo(ViewingCondition.Of(Illuminant.C, Observer.TwoDegree)));
    }

    private static Spectrum Flat(int first, int step, int count) => new(first, step, [.. Enumerable.Repeat(0.2, count)]);

    private static Spectrum Curve(string name, int first, int last, int step)
    {
        var rows = Curves.Rows.Where(row => row.Count("wavelength_nm") >= first && row.Count("wavelength_nm") <= last && (row.Count("wavelength_nm") - first) % step == 0);
        return new Spectrum(first, step, [.. rows.Select(row => row.Number(name))]);
    }

    private static (int First, int Last) Range(string text)
    {
        var ends = text.Split('-');
        return (int.Parse(ends[0], System.Globalization.CultureInfo.InvariantCulture), int.Parse(ends[1], System.Globalization.CultureInfo.InvariantCulture));
    }

    private static void AssertWeights(ReferenceRow row, string kind, SpectralWeights weights, int nm, double tolerance)
    {
        if (row.Has("WX_" + kind))
        {
            var index = (nm - weights.FirstNm) / weights.StepNm;
            Assert.Equal(row.Number("WX_" + kind), weights.X[index], tolerance);
            Assert.Equal(row.Number("WY_" + kind), weights.Y[index], tolerance);
            Assert.Equal(row.Number("WZ_" + kind), weights.Z[index], tolerance);
        }
    }

    private static void AssertXyz(ReferenceRow row, Tristimulus xyz, double tolerance)
    {
        Assert.Equal(row.Number("X"), xyz.X, tolerance);
        Assert.Equal(row.Number("Y"), xyz.Y, tolerance);
        Assert.Equal(row.Number("Z"), xyz.Z, tolerance);
    }

    private static void AssertLab(ReferenceRow row, Cielab colour, string ending, double tolerance)
    {
        Assert.Equal(row.Number("L" + ending), colour.L, tolerance);
        Assert.Equal(row.Number("a" + ending), colour.A, tolerance);
        Assert.Equal(row.Number("b" + ending), colour.B, tolerance);
    }

    private static void AssertLab(ReferenceRow row, HunterLab colour, double tolerance)
    {
        Assert.Equal(row.Number("L_hunter"), colour.L, tolerance);
        Assert.Equal(row.Number("a_hunter"), colour.A, tolerance);
        Assert.Equal(row.Number("b_hunter"), colour.B, tolerance);
    }

    private static Illuminant Light(ReferenceRow row) => Enum.Parse<Illuminant>(row.Text("illuminant"));

    private static Observer Seen(ReferenceRow row) => (Observer)row.Count("observer_deg");
}
