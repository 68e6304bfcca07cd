using LabPipeline.Quality.Results;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Quality.Tests.Results;

/// <summary>Every end of the procedure of ISO 5725-6, 5.2.2.2 (from memory), as the result's basis and the alert's advice show it. r = 2.8, 3.3, 3.6 s_r with s_r 0.002.</summary>
public sealed class ProcedureEndTests
{
    private const string Two = "mean of 2, disagreement open";

    [Fact]
    public void Procedure_WithTwoThatDisagree_AsksForOneMore()
    {
        var (basis, finding) = Judge(Sample(0.050m, 0.0562m));

        Assert.Equal(Two, basis);
        Assert.Equal(FindingLevel.Hold, finding!.Level);
        Assert.StartsWith("Extract the sample once more while tissue is fresh", finding.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Procedure_WhenTheThirdAgrees_EndsWithTheMeanOfThreeAndNoAlert()
    {
        // Range 0.0062 <= 3.3 x 0.002 = 0.0066.
        var (basis, finding) = Judge(Sample(0.050m, 0.0562m, 0.053m));

        Assert.Equal("mean of 3", basis);
        Assert.Null(finding);
    }

    [Fact]
    public void Procedure_WhenThreeDisagree_AsksForAFourthAndLetsTheMedianStand()
    {
        // Range 0.0072 > 0.0066.
        var (basis, finding) = Judge(Sample(0.050m, 0.0572m, 0.053m));

        Assert.Equal("median of 3, disagreement open", basis);
        Assert.Contains("until then the median stands", finding!.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Procedure_WhenNoFourthCanBeHad_EndsWithTheMiddleOfThree()
    {
        var (basis, finding) = Judge(Sample(0.050m, 0.0572m, 0.053m).NoMoreExtracts());

        Assert.Equal("median of 3", basis);
        Assert.Equal(FindingLevel.Note, finding!.Level);
        Assert.Contains("The procedure has ended and the median of 3 stands", finding.Advice, StringComparison.Ordinal);
        Assert.Contains("\"glucose procedure\":\"ended with the median of 3\"", finding.Facts.ToJson(), StringComparison.Ordinal);
    }

    [Fact]
    public void Procedure_WhenFourAgree_EndsWithTheirMean()
    {
        // Range 0.0072 = 3.6 x 0.002: equality agrees.
        var (basis, finding) = Judge(Sample(0.050m, 0.0572m, 0.053m, 0.054m));

        Assert.Equal("mean of 4", basis);
        Assert.Null(finding);
    }

    [Fact]
    public void Procedure_WhenFourDisagree_EndsWithTheirMedian()
    {
        var (basis, finding) = Judge(Sample(0.050m, 0.0573m, 0.053m, 0.054m));

        Assert.Equal("median of 4", basis);
        Assert.Contains("The procedure has ended and the median of 4 stands", finding!.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void Procedure_WhenTwoDisagreeAndNoThirdCanBeHad_StaysUnresolvedAndHeld()
    {
        var (basis, finding) = Judge(Sample(0.050m, 0.0562m).NoMoreExtracts());

        Assert.Equal("mean of 2, disagreement unresolved", basis);
        Assert.Equal(FindingLevel.Hold, finding!.Level);
        Assert.Contains("the procedure has no rule for 2", finding.Advice, StringComparison.Ordinal);
    }

    private static SampleBuilder Sample(params decimal[] extracts)
    {
        var sample = new SampleBuilder().Repeatability(QuantityCatalogue.Glucose, 0.002m);
        for (var index = 0; index < extracts.Length; index++)
        {
            sample.Extract(FormattableString.Invariant($"{index + 1}"), extracts[index], 100m, 100m);
        }

        return sample;
    }

    private static (string Basis, Finding? Finding) Judge(SampleBuilder sample) => (
        sample.Result(QuantityCatalogue.Glucose)!.Basis, new DuplicateDisagreementRule().Evaluate(sample.Evidence()).SingleOrDefault());
}
