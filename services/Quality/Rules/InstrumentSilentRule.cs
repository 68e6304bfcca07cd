namespace LabPipeline.Quality.Rules;

/// <summary>Samples came to the bench and were measured, but one kind of instrument the plan expects sent nothing of that day.</summary>
public sealed class InstrumentSilentRule : IRule<PullEvidence>
{
    public string Name => "instrument silent";

    public IEnumerable<Finding> Evaluate(PullEvidence evidence)
    {
        foreach (var silent in SilentKind.FindAll(evidence))
        {
            var expected = evidence.Expected.Where(expectation => expectation.Quantity.Kind == silent.Kind).Select(expectation => expectation.Quantity.Name).ToList();
            yield return Findings.Of(
                this, evidence, FindingLevel.Hold, $"{silent.Name} {NumberText.Of(silent.Day)}",
                $"{evidence.Title}: {NumberText.Of(silent.Samples.Count)} samples were on the bench on {NumberText.Of(silent.Day)} and no {silent.Name} sent anything of them: "
                    + $"{PlotList.ByBay(silent.Samples)}.",
                $"Export the run again and see that the file reaches the drop folder ({NumberText.List(expected)} expected); look at the cable, the share and the refused files.",
                new FactSheet().Add("day", silent.Day).Add("silent", silent.Name).Add("expected", string.Join(", ", expected)).Add("plots", PlotList.ByBay(silent.Samples)));
        }
    }
}
