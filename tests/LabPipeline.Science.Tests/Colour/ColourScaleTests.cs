using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Colour;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Colour;

/// <summary>CIELAB (ISO/CIE 11664-4) and the Hunter scales against B_xyz_to_cielab.csv, B_xyz_to_hunter.csv, B_hunter_coefficients.csv and B_white_points.csv.</summary>
public sealed class ColourScaleTests
{
    [Fact]
    public void Cielab_OnEveryRow_AgreesToOneInAMillion()
    {
        foreach (var row in ReferenceTable.Load("B_xyz_to_cielab.csv").Rows)
        {
            var condition = ViewingCondition.Of(Light(row), Seen(row));
            AssertWhite(row, condition);

            var colour = Cielab.From(new Tristimulus(row.Number("X"), row.Number("Y"), row.Number("Z"), condition));

            // The table gives X, Y, Z to six decimals; values were computed from unrounded inputs where they were.
            Assert.Equal(row.Number("L_star"), colour.L, 1e-6);
            Assert.Equal(row.Number("a_star"), colour.A, 1e-6);
            Assert.Equal(row.Number("b_star"), colour.B, 1e-6);
            Assert.Equal(row.Number("C_star_ab"), colour.Chroma, 1e-6);
            if (colour.Chroma > 1e-6)
            {
                Assert.Equal(row.Number("h_ab_deg"), colour.HueDegrees, 1e-5);
            }
        }
    }

    [Fact]
    public void Hunter_OnEveryRow_AgreesToOneInAMillion()
    {
        foreach (var row in ReferenceTable.Load("B_xyz_to_hunter.csv").Rows)
        {
            var scale = ScaleOf(row);
            if (row.Has("Xn"))
            {
                AssertWhite(row, scale.Condition);
                Assert.Equal(row.Number("Ka"), scale.Ka, 1e-6);
                Assert.Equal(row.Number("Kb"), scale.Kb, 1e-6);
            }

            var colour = HunterLab.From(new Tristimulus(row.Number("X"), row.Number("Y"), row.Number("Z"), scale.Condition), scale);

            Assert.Equal(row.Number("L_hunter"), colour.L, 1e-6);
            Assert.Equal(row.Number("a_hunter"), colour.A, 1e-6);
            Assert.Equal(row.Number("b_hunter"), colour.B, 1e-6);
        }
    }

    [Fact]
    public void HunterCoefficients_OnEveryRow_AgreeInAllForms()
    {
        foreach (var row in ReferenceTable.Load("B_hunter_coefficients.csv").Rows)
        {
            var scale = HunterScale.Tabulated(Light(row), Seen(row));
            AssertWhite(row, scale.Condition);
            Assert.Equal(row.Number("Ka_tabulated"), scale.Ka);
            Assert.Equal(row.Number("Kb_tabulated"), scale.Kb);
            Assert.Equal(row.Number("Ka_sqrt_form"), HunterCoefficients.SquareRootKa(scale.Condition.Xn), 0.00006);
            Assert.Equal(row.Number("Kb_sqrt_form"), HunterCoefficients.SquareRootKb(scale.Condition.Zn), 0.00006);
            Assert.Equal(row.Number("Ka_sum_form"), HunterCoefficients.SumKa(scale.Condition.Xn, 100), 0.00006);
            Assert.Equal(row.Number("Kb_sum_form"), HunterCoefficients.SumKb(100, scale.Condition.Zn), 0.00006);
        }
    }

    [Fact]
    public void WhitePoints_OfEveryPublishedTable_AreTheOnesListed()
    {
        var listed = 0;
        foreach (var row in ReferenceTable.Load("B_white_points.csv").Rows.Where(row => !row.Text("source").StartsWith("computed", StringComparison.Ordinal)))
        {
            var source = row.Text("source") switch
            {
                var text when text.StartsWith("CIE 15", StringComparison.Ordinal) => WhiteSource.Cie15,
                var text when text.StartsWith("ASTM E308", StringComparison.Ordinal) => WhiteSource.AstmE308,
                _ => WhiteSource.Hunter,
            };
            AssertWhite(row, ViewingCondition.Of(Light(row), Seen(row), source));
            listed++;
        }

        Assert.Equal(28, listed);
    }

    [Property]
    public Property Cielab_ThereAndBack_ReturnsXyz() => Prop.ForAll(Samples(), sample =>
    {
        var back = Cielab.From(sample).ToTristimulus();
        return Near(sample, back);
    });

    [Property]
    public Property Hunter_ThereAndBack_ReturnsXyz() => Prop.ForAll(Samples(), sample =>
        Scales(sample.Condition).All(scale => Near(sample, HunterLab.From(sample, scale).ToTristimulus())));

    [Property]
    public Property Hunter_ByWayOfCielab_IsTheSameColour() => Prop.ForAll(Samples(), sample =>
    {
        var scale = HunterScale.SquareRoot(sample.Condition);
        var direct = HunterLab.From(sample, scale);
        var byWay = HunterLab.From(Cielab.From(sample).ToTristimulus(), scale);
        return Math.Abs(direct.L - byWay.L) + Math.Abs(direct.A - byWay.A) + Math.Abs(direct.B - byWay.B) < 1e-8;
    });

    [Fact]
    public void Colours_WhenConditionsDiffer_AreNotMixed()
    {
        var daylight = new Tristimulus(42, 43, 24, ViewingCondition.Of(Illuminant.D65, Observer.TenDegree));
        var older = HunterScale.Tabulated(Illuminant.C, Observer.TwoDegree);

        Assert.Contains("D65/10°", Assert.Throws<ArgumentException>(() => HunterLab.From(daylight, older)).Message, StringComparison.Ordinal);
        var left = HunterLab.From(daylight, HunterScale.Tabulated(Illuminant.D65, Observer.TenDegree));
        var right = HunterLab.From(daylight, HunterScale.SquareRoot(daylight.Condition));
        Assert.Throws<ArgumentException>(() => HunterLab.Difference(left, right));
        Assert.Equal((0, 0, 0), HunterLab.Difference(left, left));
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        var condition = ViewingCondition.Of(Illuminant.D65, Observer.TenDegree);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tristimulus(double.NaN, 1, 1, condition));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Tristimulus(1, -0.1, 1, condition));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Cielab(50, double.PositiveInfinity, 0, condition));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Cielab(1, -500, 0, condition).ToTristimulus());
        Assert.Throws<ArgumentOutOfRangeException>(() => new HunterLab(0, 1, 0, HunterScale.HandbookC2()).ToTristimulus());
        Assert.Throws<ArgumentException>(() => ViewingCondition.Of(Illuminant.D75, Observer.TenDegree, WhiteSource.AstmE308));
        Assert.Throws<ArgumentException>(() => HunterScale.Sum(ViewingCondition.Of(Illuminant.A, Observer.TenDegree)));
    }

    private static IEnumerable<HunterScale> Scales(ViewingCondition condition) =>
    [
        HunterScale.Tabulated(condition.Illuminant, condition.Observer),
        HunterScale.SquareRoot(condition),
        .. condition.Illuminant == Illuminant.A ? [] : new[] { HunterScale.Sum(condition) },
        .. condition is { Illuminant: Illuminant.C, Observer: Observer.TwoDegree } ? new[] { HunterScale.HandbookC2() } : [],
    ];

    private static Arbitrary<Tristimulus> Samples()
    {
        var conditions = from illuminant in Gen.Elements(Enum.GetValues<Illuminant>())
                         from observer in Gen.Elements(Enum.GetValues<Observer>())
                         select ViewingCondition.Of(illuminant, observer);
        var share = Gen.Choose(0, 10000).Select(value => value / 10000.0);
        return (from condition in conditions
                from x in share
                from y in share
                from z in share
                where y > 0
                select new Tristimulus(x * condition.Xn, y * condition.Yn, z * condition.Zn, condition)).ToArbitrary();
    }

    private static bool Near(Tristimulus left, Tristimulus right) =>
        Math.Abs(left.X - right.X) < 1e-9 && Math.Abs(left.Y - right.Y) < 1e-9 && Math.Abs(left.Z - right.Z) < 1e-9;

    private static HunterScale ScaleOf(ReferenceRow row) => row.Text("coefficient_form") switch
    {
        "tabulated" => HunterScale.Tabulated(Light(row), Seen(row)),
        "sqrt-form K, CIE white" => HunterScale.SquareRoot(ViewingCondition.Of(Light(row), Seen(row))),
        "sum-form K, CIE white" => HunterScale.Sum(ViewingCondition.Of(Light(row), Seen(row))),
        _ => HunterScale.HandbookC2(),
    };

    private static void AssertWhite(ReferenceRow row, ViewingCondition condition)
    {
        Assert.Equal(row.Number("Xn"), condition.Xn);
        Assert.Equal(row.Number("Yn"), condition.Yn);
        Assert.Equal(row.Number("Zn"), condition.Zn);
    }

    private static Illuminant Light(ReferenceRow row) => Enum.Parse<Illuminant>(row.Text("illuminant"));

    private static Observer Seen(ReferenceRow row) => (Observer)row.Count("observer_deg");
}
